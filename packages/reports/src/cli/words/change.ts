// A design with some of its fields changed; comments and order stay.
import type { SystemInput } from '@noonloop/sim-core';
import { parse } from 'yaml';
import { changedDesign, type FieldChange } from '../design-text.ts';
import { writtenDesign } from '../designs.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import { checkTarget } from '../files.ts';
import { deliver, targetOf } from '../output.ts';
import { checked } from '../settings/check.ts';
import { parseSettings } from '../settings-file.ts';
import { outputOptions, type Word } from '../word.ts';

/** Writes another design from one. */
export const change: Word = {
  usage: 'change <design> <fields...>',
  summary: 'another design from one, some fields changed',
  description:
    'Writes a design with some fields changed, such as array.panels=3 or "tank.volume=80 gal"; nothing after the = takes a field away. Comments and order stay as they were.',
  example: 'noonloop change house.yaml array.panels=3 "name=three panels" --out three.yaml',
  options: outputOptions,
  run: async ({ files, options, terminal }) => {
    const [file, ...fields] = files;
    const target = targetOf(options.out, options.force);
    if (target !== null) await checkTarget(target);
    const changes = fields.map(changeOf);
    const { input } = await writtenDesign(file!);
    const text = await changedDesign(file!, input, changes);
    const { defineSystem } = await import('../core.ts');
    // What is written is a design: faults are told by their place in it.
    await checked(parseSettings(text, `${file} as changed`), 'design', (all) =>
      defineSystem(all as unknown as SystemInput),
    );
    await deliver(text, target, terminal, options.quiet === true);
    return undefined;
  },
};

function changeOf(field: string): FieldChange {
  const parts = /^([A-Za-z0-9]+(?:\.[A-Za-z0-9]+)*)=(.*)$/s.exec(field);
  if (parts === null)
    throw new Refusal(EXIT.usage, [
      `found "${field.slice(0, 60)}", expected a place and a value such as array.panels=3 or "tank.volume=80 gal".`,
    ]);
  return { path: parts[1]!, value: parts[2] === '' ? undefined : readValue(parts[2]!, field) };
}

function readValue(text: string, field: string): unknown {
  try {
    return parse(text, { schema: 'core' });
  } catch {
    throw new Refusal(EXIT.usage, [`found "${field.slice(0, 60)}", expected a number, a text, or a list in [ ].`]);
  }
}
