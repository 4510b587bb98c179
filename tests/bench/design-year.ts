// Time of one design-year: what its parts cost (drivers: sun, planes, module; the hours themselves), and the whole over a fixed piece of arithmetic in the same run.
//     pnpm run bench            compares that ratio with the one kept in speed.json, and fails where it is more than 15 % higher
//     pnpm run bench --write    keeps this run's
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { readWeather } from '@noonloop/weather-io';
import { compileDrivers } from '../../packages/sim-core/src/year/drivers.ts';
import { assemble } from '../../packages/sim-core/src/year/machine.ts';
import { simulate } from '../../packages/sim-core/src/year/simulate.ts';
import { stepHour } from '../../packages/sim-core/src/year/step.ts';
import { withPanels } from '../examples.ts';
import { fixedArithmetic } from './kernel.ts';

/** Slower than kept by this is a fault; between runs of one machine the ratio moves by some hundredths. */
const ALLOWED = 0.15;
const TURNS = 40;
const KEPT = new URL('./speed.json', import.meta.url);

const weather = await readWeather(new URL('../../docs/examples/weather/invented-valley.csv', import.meta.url).pathname);
const design = withPanels(2);
const machine = assemble(design, weather);

const tasks = {
  'one design-year': () => simulate(design, weather),
  '  its drivers': () => compileDrivers(design, weather, 12),
  '  its hours': () => {
    for (let hour = 0; hour < 8760; hour++) stepHour(machine, hour);
  },
  'fixed arithmetic': fixedArithmetic,
} as const;

/** Least time of each in turns: whatever disturbs the machine lengthens, and a turn holds all of them. [ms] */
const least = new Map<string, number>();
for (let turn = 0; turn < TURNS; turn++) {
  for (const [name, task] of Object.entries(tasks)) {
    const start = performance.now();
    task();
    const took = performance.now() - start;
    least.set(name, Math.min(least.get(name) ?? Number.POSITIVE_INFINITY, took));
  }
}
for (const [name, time] of least)
  console.log(`${name.padEnd(18)} ${time.toFixed(1).padStart(7)} ms, least of ${TURNS}`);

const ratio = least.get('one design-year')! / least.get('fixed arithmetic')!;
const asked = process.argv.slice(2);
if (asked.includes('--write')) {
  writeFileSync(KEPT, `${JSON.stringify({ yearOverFixedArithmetic: Number(ratio.toFixed(3)) })}\n`);
  console.log(`year over fixed arithmetic ${ratio.toFixed(3)}: kept`);
} else if (!existsSync(KEPT)) {
  console.log(`year over fixed arithmetic ${ratio.toFixed(3)}; none is kept yet: pnpm run bench --write`);
} else {
  const { yearOverFixedArithmetic: kept } = JSON.parse(readFileSync(KEPT, 'utf8')) as {
    yearOverFixedArithmetic: number;
  };
  const change = ratio / kept - 1;
  console.log(
    `year over fixed arithmetic ${ratio.toFixed(3)}, kept ${kept}: ${change < 0 ? '' : '+'}${(100 * change).toFixed(1)} %`,
  );
  if (change > ALLOWED) {
    console.error(
      `A year takes ${(100 * change).toFixed(0)} % more of this machine than it did; at most ${100 * ALLOWED} % are let pass. Find what costs it.`,
    );
    process.exitCode = 1;
  }
}
