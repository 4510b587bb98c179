// The JSON Schema of a kind of settings file.

import { nearest } from '../../nearest.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { deliver, targetOf } from '../output.ts';
import { KIND_NAMES, type KindName, publishedSchema } from '../settings/kinds.ts';
import { outputOptions, type Word } from '../word.ts';

/** Hands out a schema. */
export const schema: Word = {
  usage: 'schema [kind]',
  summary: 'the JSON Schema of a kind of file, for editors',
  description: `Hands out the JSON Schema by which an editor explains and completes a file. Kinds: ${KIND_NAMES.join(', ')}. Without a kind: a design.`,
  example: 'noonloop schema design --out design-1.json',
  options: outputOptions,
  run: async ({ files, options, terminal }) => {
    const target = targetOf(options.out, options.force);
    if (target !== null) await checkTarget(target);
    const kind = files[0] ?? 'design';
    if (!KIND_NAMES.includes(kind as KindName)) {
      const near = nearest(kind, KIND_NAMES);
      const hint = near === null ? '' : ` Did you mean ${near}?`;
      const words = `found the kind "${kind.slice(0, 40)}", expected one of ${KIND_NAMES.join(', ')}.${hint}`;
      throw new Refusal(EXIT.usage, [words]);
    }
    await deliver(await publishedSchema(kind as KindName), target, terminal, options.quiet === true);
    return undefined;
  },
};
