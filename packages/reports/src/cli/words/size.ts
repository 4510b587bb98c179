// From a household to a list of parts, each number with its working, and a design with them filled in.

import type { ArraySizing, SystemInput } from '@noonloop/sim-core';
import { capital } from '../../answer/words.ts';
import { converted, digits, unitIn } from '../../shown-units.ts';
import { adviceInWords } from '../../words/advice.ts';
import { changedDesign, changedInput, type FieldChange } from '../design-text.ts';
import { writtenDesign } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { blaming } from '../in-words.ts';
import { checked } from '../settings/check.ts';
import { readSettings, type Settings } from '../settings-file.ts';
import { type Block, cautionBlocks, heading, sentences, table } from '../sheet/model.ts';
import type { Part, SizedPart } from '../size-parts.ts';
import { weatherOf } from '../weather.ts';
import { type Word, weatherOptions } from '../word.ts';

interface SizeOptions {
  readonly parts?: string;
  readonly limits?: string;
  readonly designOut?: string;
}

/** Sizes what is asked for, in order. */
export const size: Word<SizeOptions> = {
  usage: 'size <design>',
  summary: 'how many panels, which tank, pump, pipe, coil, vessel, how much glycol',
  description:
    'Sizes panels, tank, glycol, pipe and insulation, coil, pump with its module, vessel and pressures, each from the ones before, with a working that can be checked by hand; writes a design with the sizes filled in.',
  example: 'noonloop size house.yaml --weather town.csv --design-out sized.yaml',
  formats: [],
  needs: ['weather'],
  writes: ['design-out'],
  options: (command) =>
    weatherOptions(command)
      .option('--parts <list>', 'which, such as panels,tank,vessel (default: all; order is theirs)')
      .option('--limits <file>', 'YAML or JSON with what the parts are to keep')
      .option('--design-out <file>', 'write the design with the sizes filled in; - for standard output'),
  run: async ({ files, options, units, progress }) => {
    const { PARTS, partsOf, SIZE } = await import('../size-parts.ts');
    const { defineSystem } = await import('../core.ts');
    const { input, design } = await writtenDesign(files[0]!);
    const parts = partsAsked(options.parts, PARTS, partsOf(design));
    const limitsFile = options.limits === undefined ? null : await readSettings(options.limits);
    const limits =
      limitsFile === null
        ? {}
        : ((await checked(limitsFile, 'sizing', (fields) => fields)) as Partial<Record<Part, Record<string, unknown>>>);
    await progress.show('reading the weather');
    const weather = await weatherOf(options.weather!, options);
    const sized: [Part, SizedPart][] = [];
    const changes: FieldChange[] = [];
    let bestDay: number | null = null;
    for (const part of parts) {
      const now = defineSystem(changedInput(input, changes));
      const found = await blamingPart(limitsFile, part, () =>
        SIZE[part]({ design: now, weather, limits: limits[part] ?? {}, bestDay, units }),
      );
      if (part === 'panels') ({ bestDay } = found.data as ArraySizing);
      changes.push(...found.changes);
      sized.push([part, found]);
    }
    return {
      sheet: { title: `Sizes for ${design.name}`, blocks: blocks(sized, units) },
      data: Object.fromEntries(sized.map(([part, { data }]) => [part, data])),
      ...(options.designOut === undefined
        ? {}
        : {
            files: [
              {
                option: 'design-out',
                text: await changedDesign(files[0]!, input as SystemInput, changes, `${design.name}, sized`),
              },
            ],
          }),
    };
  },
};

function partsAsked(text: string | undefined, all: readonly Part[], possible: readonly Part[]): readonly Part[] {
  if (text === undefined) return possible;
  const asked = text.split(/[,\s]+/).filter((part) => part !== '');
  const wrong = asked.filter((part) => !all.includes(part as Part));
  if (wrong.length > 0 || asked.length === 0)
    throw new Refusal(EXIT.usage, [`--parts: found "${wrong.join(', ')}", expected some of ${all.join(', ')}.`]);
  return all.filter((part) => asked.includes(part));
}

/** Faults of a part's limits stand under the name of the part. */
async function blamingPart(settings: Settings | null, part: Part, work: () => SizedPart): Promise<SizedPart> {
  if (settings === null) return work();
  return blaming({ ...settings, lineOf: (field) => settings.lineOf(`${part}.${field}`) }, work);
}

function blocks(sized: readonly [Part, SizedPart][], units: 'metric' | 'us'): Block[] {
  const rows = sized.flatMap(([, { sizes }]) =>
    sizes.map(([name, value, unit]) => [
      name,
      value === null ? '–' : digits(converted(value, unit, units)),
      unitIn(unit, units).symbol,
    ]),
  );
  return [
    table('parts', [{ label: 'part' }, { label: 'size' }, { label: 'unit' }], rows),
    sentences('Each line of a working can be checked by hand; each number wears its unit.'),
    ...sized.flatMap(([part, { words, steps, notes, cautions }]): Block[] => [
      heading(capital(part)),
      sentences(`${capital(words)}.`),
      { kind: 'working', title: 'Working', steps },
      ...(notes.length === 0 ? [] : [{ kind: 'list' as const, items: adviceInWords(notes, units) }]),
      ...cautionBlocks(adviceInWords(cautions, units)),
    ]),
    ...cautionBlocks([
      'Sizes are a start, not a permit: the local code and licensed trades decide on pressure, gas, mains electricity and roofs. Look at stagnation and the hottest tank with "noonloop run".',
    ]),
  ];
}
