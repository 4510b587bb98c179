// The command says how sure it is as the library does, to the letter: thirty quick years each.
import { readFileSync } from 'node:fs';
import { renderText } from '@noonloop/reports';
import { bands, defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { expect, it } from 'vitest';
import { parse } from 'yaml';
import { inventedValley } from '../../examples.ts';
import { command, example } from './command.ts';

it('run --how-sure prints the ranges of the library [requirement]', async () => {
  const two = example('design-files/two-panels.yaml');
  const input = parse(readFileSync(two, 'utf8')) as SystemInput;
  const year = await inventedValley();
  const sure = await bands(input, year, { oneYear: false }).outcome();
  const expected = renderText(simulate(defineSystem(input), year), { width: 80, bands: sure });
  const { exit, out } = await command(['run', two, '--weather', example('weather/invented-valley.csv'), '--how-sure']);
  expect(exit).toBe(0);
  expect(out.trimEnd()).toBe(expected.trimEnd());
});
