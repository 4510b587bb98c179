import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { defineSystem } from '@noonloop/sim-core';
import { readResults } from '@noonloop/sim-core/node';
import { expect, it } from 'vitest';
import { command, ownFolder } from './command.ts';

// Files that version 0.1 wrote, kept as they were. Requirement: docs/guides/migration.md says that they are read on.

const old = (name: string): string => fileURLToPath(new URL(`written-by-0.1/${name}`, import.meta.url));
const folder = ownFolder();

it('a draft and a design with every default are read as for a run [requirement]', async () => {
  const { exit, out } = await command(['fill-in', old('design.json'), '--format', 'json']);
  expect(exit).toBe(0);
  expect(defineSystem(JSON.parse(out))).toEqual(defineSystem(JSON.parse(readFileSync(old('design.json'), 'utf8'))));
  const draft = await command(['fill-in', old('house.yaml'), '--format', 'json']);
  expect(draft.exit).toBe(0);
  const filled = defineSystem(JSON.parse(draft.out));
  expect([filled.name, filled.array.panels, filled.tank.volume]).toEqual(['my house', 2, 0.3]); // as the file says
  const { tank, array } = defineSystem(JSON.parse(readFileSync(old('design.json'), 'utf8')));
  expect([tank.volume, array.panels]).toEqual([0.3, 2]);
});

it('rows of a study are read and put together [requirement]', async () => {
  const rows = [];
  for await (const row of await readResults(old('tanks.jsonl'))) rows.push(row);
  expect(rows.map(({ inputs }) => inputs['tank.volume'])).toEqual(['200 L', '300 L']);
  expect(rows.every(({ measures }) => measures.fuelSaved! > 9e9)).toBe(true);
  const { exit } = await command(['merge', old('tanks.jsonl'), '--keep', join(folder, 'whole.jsonl')]);
  expect(exit).toBe(0);
});
