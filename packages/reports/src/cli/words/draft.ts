// A settings file of any kind to fill in.

import { nearest } from '../../nearest.ts';
import { DRAFTS, TABLES } from '../drafts/index.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { deliver, targetOf } from '../output.ts';
import { STUDIES } from '../study/names.ts';
import { outputOptions, unitsOption, type Word } from '../word.ts';

const NAMES = [...Object.keys(DRAFTS), ...Object.keys(TABLES)];

/** Hands out a file to fill in. */
export const draft: Word = {
  usage: 'draft [kind]',
  summary: 'a file to fill in: a design, or any other kind',
  description: `Hands out a file with invented numbers to fill in. Kinds: ${NAMES.join(', ')}. Without a kind: a design.`,
  example: 'noonloop draft design --units us --out house.yaml',
  options: (command) => unitsOption(outputOptions(command)),
  run: async ({ files, options, units, terminal }) => {
    const target = targetOf(options.out, options.force);
    if (target !== null) await checkTarget(target);
    const asked = files[0] ?? 'design';
    // The draft of a study shows each kind.
    const kind = STUDIES.some((name) => name === asked) ? 'study' : asked;
    await deliver(textOf(kind, units), target, terminal, options.quiet === true);
    return undefined;
  },
};

function textOf(kind: string, units: 'metric' | 'us'): string {
  const texts = DRAFTS[kind as keyof typeof DRAFTS] as readonly [string, string] | undefined;
  if (Object.hasOwn(DRAFTS, kind) && texts !== undefined) return `${heading(kind)}${texts[units === 'us' ? 1 : 0]}`;
  if (Object.hasOwn(TABLES, kind)) return TABLES[kind as keyof typeof TABLES];
  const near = nearest(kind, NAMES);
  const hint = near === null ? '' : ` Did you mean ${near}?`;
  throw new Refusal(EXIT.usage, [`found the kind "${kind.slice(0, 40)}", expected one of ${NAMES.join(', ')}.${hint}`]);
}

const heading = (kind: string): string =>
  `# "noonloop schema ${kind} --out ${kind}-1.json" writes the schema by which an editor explains and completes this file:\n# yaml-language-server: $schema=./${kind}-1.json\n`;
