/**
 * Numbers of short years as they were, to nine digits. They are no truth: each may be as wrong as the code that made it, and they say only *that* something has changed.
 * What is right is held by the tests of formulas, by the explicit model (tests/reference-model) and by the tables of tests/validation, most of which a small slip in a
 * rarely used branch passes within its tolerance. Whoever means a change renews them, and reads in the difference which designs it touches:
 *
 *     NOONLOOP_KEEP=1 npx vitest run tests/sim-core/year/kept
 */
import { writeFileSync } from 'node:fs';
import { defineSystem, type OwnState, type StepOptions, type SystemInput } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { closeBalance } from '../../../../packages/sim-core/src/year/balance.ts';
import { ownColumns } from '../../../../packages/sim-core/src/year/columns.ts';
import { groupYears } from '../../../../packages/sim-core/src/year/groups.ts';
import { loopYear } from '../../../../packages/sim-core/src/year/loop-year.ts';
import { assemble } from '../../../../packages/sim-core/src/year/machine.ts';
import { findNotices } from '../../../../packages/sim-core/src/year/notices.ts';
import { openRecorder } from '../../../../packages/sim-core/src/year/recorder.ts';
import { stepHour } from '../../../../packages/sim-core/src/year/step.ts';
import { HOURS, tenDays } from '../../../reference-model/days.ts';
import { KEPT } from './designs.ts';
import kept from './kept.json' with { type: 'json' };

/** Of what is kept: rounding of another engine or order of sums is less by some digits, a change of a model more. */
const SAME = 1e-9;

/** The ten days of the explicit model, with the columns that they leave out. */
function fullDays(): WeatherYear {
  const days = tenDays();
  const of = (value: (hour: number) => number) => Float64Array.from({ length: 8760 }, (_, hour) => value(hour));
  const { dryBulb } = days.columns;
  return {
    ...days,
    columns: {
      ...days.columns,
      relativeHumidity: of((hour) => 60 + 20 * Math.cos(hour / 9)),
      pressure: of((hour) => 97_500 + 800 * Math.sin(hour / 40)),
      cloudCover: of((hour) => 0.5 + 0.5 * Math.sin(hour / 13)),
      albedo: of(() => 0.25),
      snowDepth: of((hour) => (dryBulb[hour]! < 0 ? 0.1 : 0)),
    },
  };
}
const weathers = [tenDays(), fullDays()];

const WEIGHTS = Float64Array.from({ length: 8760 }, (_, at) => 1 + 0.5 * Math.sin(at));
/** A sum in which every hour has a weight of its own, so that hours that change places are seen. */
const weighed = (column: ArrayLike<number>): number => {
  let sum = 0;
  for (let at = 0; at < column.length; at++) sum += column[at]! * WEIGHTS[at]!;
  return sum;
};

/** A gain that the air lessens, and a pump that rests at noon. */
const OWN = {
  own: {
    gain: (absorbed: number, { ambient }: OwnState) => absorbed * (1 - ambient / 400),
    wants: (wanted: boolean, { hour }: OwnState) => wanted && hour % 24 !== 12,
  },
  stepsPerHour: 7,
  collectorNodes: 3,
  pipeNodes: 2,
};

type Tree = { readonly [name: string]: unknown };

/** All numbers of a tree by their paths. */
const numbersOf = (tree: Tree, path = ''): [string, number][] =>
  Object.entries(tree).flatMap(([name, value]): [string, number][] =>
    typeof value === 'number'
      ? [[`${path}${name}`, value]]
      : typeof value === 'object' && value !== null
        ? numbersOf(value as Tree, `${path}${name}.`)
        : [],
  );

/** Arrays of the last run's columns, to be used anew. */
let spare: Float64Array[] = [];

/** What ten days of a design come to. */
function numbersOf10Days(input: SystemInput, weather: WeatherYear, options: StepOptions): Record<string, number> {
  const machine = assemble(defineSystem(input), weather, options, spare);
  const recorder = openRecorder('01-05..01-06', machine.stepping.stepsPerHour);
  for (let hour = 0; hour < HOURS; hour++) stepHour(machine, hour, recorder);
  const { columns, books, loop, second, tank } = machine;
  const notices = findNotices(machine).map(({ code, ...rest }) => ({ [code]: 1, ...rest }));
  const balance = Object.entries(books.balance).map(([part, keeper]) => {
    const { in: income, out, stored } = closeBalance(keeper);
    return [part, { in: income, out, stored }];
  });
  const sums = [
    ...Object.entries(columns),
    ...Object.entries(recorder.columns).map(([name, column]) => [`steps.${name}`, column] as const),
    ...Object.entries(second?.columns ?? {}).map(([name, column]) => [`second.${name}`, column] as const),
    ['tankNodes', tank.temperature] as const,
    ['absorber', loop.circuit.absorber] as const,
  ].map(([name, column]): [string, number] => [name, weighed(column)]);
  const trees = {
    notices,
    balance: Object.fromEntries(balance),
    loop: loopYear(machine),
    groups: groupYears(machine),
    peakOfFirst: second?.peakOfFirst ?? 0,
    stagnationLimit: loop.stagnationLimit,
  };
  spare = ownColumns(columns);
  return Object.fromEntries(
    [...sums, ...numbersOf(trees)]
      .filter(([, value]) => value !== 0 && Number.isFinite(value))
      .map(([name, value]) => [name, Number(value.toPrecision(12))]),
  );
}

const runs = Object.entries(KEPT).map(([name, input], at) => ({
  name,
  numbers: () => numbersOf10Days(input, weathers[at % 2]!, name.endsWith('own step') ? OWN : {}),
}));

if (process.env.NOONLOOP_KEEP !== undefined) {
  const text = JSON.stringify(Object.fromEntries(runs.map(({ name, numbers }) => [name, numbers()])), null, 2);
  writeFileSync(new URL('kept.json', import.meta.url), `${text}\n`);
}

describe('ten days of a year as they were [requirement: a change that nobody meant is seen; no truth, see the head of this file]', () => {
  it.skipIf(process.env.NOONLOOP_KEEP !== undefined).each(runs)('$name', ({ name, numbers }) => {
    const [now, before] = [numbers(), (kept as Record<string, Record<string, number>>)[name]!];
    const changed = [...new Set([...Object.keys(now), ...Object.keys(before)])].filter(
      (key) => !(Math.abs((now[key] ?? 0) - (before[key] ?? 0)) <= SAME * Math.abs(before[key] ?? 0)),
    );
    expect(changed.map((key) => `${key}: ${before[key]} is now ${now[key]}`)).toEqual([]);
  });
});
