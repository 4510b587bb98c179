// A design with every default written out.
import { formatDesignValue } from '../../quantities.ts';
import { designOf } from '../designs.ts';
import { sentences, wordyTable } from '../sheet/model.ts';
import { yamlLines } from '../sheet/yaml-lines.ts';
import type { Word } from '../word.ts';

/** The whole design. */
export const fillIn: Word = {
  usage: 'fill-in <design>',
  summary: 'a design with every default written out',
  description:
    'Writes a design with every default filled in, as a run uses it; the file runs again with the same bits. As text: each default with its source.',
  example: 'noonloop fill-in house.yaml --out whole.yaml',
  formats: ['yaml'],
  run: async ({ files, units }) => {
    const design = await designOf(files[0]!);
    return {
      sheet: {
        title: design.name,
        blocks: [
          sentences(`${design.assumptions.length} values were not given and took a default.`),
          wordyTable(
            'defaults',
            [{ label: 'field' }, { label: 'value' }, { label: 'source' }],
            design.assumptions.map(({ path, value, unit, source }) => [
              path,
              formatDesignValue(value, unit, path, units),
              source,
            ]),
          ),
        ],
      },
      data: design,
      formats: { yaml: () => yamlLines(design) },
    };
  },
};
