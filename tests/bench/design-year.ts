// Time of one design-year: what its parts cost (drivers: sun, planes, module; the hours themselves), and a year over a fixed piece of arithmetic in the same run.
//     pnpm run bench            compares that ratio with the one kept in speed.json, and fails where it is more than 15 % higher
//     pnpm run bench --write    keeps this run's
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { readWeather } from '@noonloop/weather-io';
import { compileDrivers } from '../../packages/sim-core/src/year/drivers.ts';
import { requireFinite } from '../../packages/sim-core/src/year/finite.ts';
import { assemble, type Machine } from '../../packages/sim-core/src/year/machine.ts';
import { findNotices } from '../../packages/sim-core/src/year/notices.ts';
import { stepHour } from '../../packages/sim-core/src/year/step.ts';
import { withPanels } from '../examples.ts';
import { fixedArithmetic } from './kernel.ts';
import { type Kernel, openKernel } from './kernel-state.ts';

/** Slower than kept by this is a fault; from run to run and from Node 20 to 24 the ratio moves by up to six hundredths of itself. */
const ALLOWED = 0.15;
const TURNS = 40;
const HOURS = 8760;
/**
 * Year and arithmetic take turns in pieces of two days and a half, less than a millisecond each: so short that of some turns each of them passes without
 * another process between. Of whole years on a busy machine not one does. [h]
 */
const PIECE = 60;
const KEPT = new URL('./speed.json', import.meta.url);

const weather = await readWeather(new URL('../../docs/examples/weather/invented-valley.csv', import.meta.url).pathname);
const design = withPanels(2);

/** Least time of each piece over the turns: whatever disturbs the machine lengthens. [ms] */
const least = new Map<string, number>();
function time<T>(piece: string, task: () => T): T {
  const start = performance.now();
  const answer = task();
  least.set(piece, Math.min(least.get(piece) ?? Number.POSITIVE_INFINITY, performance.now() - start));
  return answer;
}

function turn(machine: Machine, kernel: Kernel): void {
  for (let from = 0; from < HOURS; from += PIECE) {
    const end = Math.min(from + PIECE, HOURS);
    time(`hours from ${from}`, () => {
      for (let hour = from; hour < end; hour++) stepHour(machine, hour);
    });
    time(`arithmetic from ${from}`, () => fixedArithmetic(kernel, from, end));
  }
}

for (let count = 0; count < TURNS; count++) {
  time('drivers', () => compileDrivers(design, weather, 12));
  const machine = time('assembling', () => assemble(design, weather));
  turn(machine, openKernel());
  time('closing', () => {
    requireFinite(machine.columns, 0, HOURS);
    return findNotices(machine);
  });
}

const all = (pieces: string) =>
  [...least].reduce((sum, [piece, took]) => (piece.startsWith(pieces) ? sum + took : sum), 0);
const hours = all('hours');
const year = all('assembling') + hours + all('closing');
const arithmetic = all('arithmetic');
const row = (name: string, took: number) => console.log(`${name.padEnd(24)} ${took.toFixed(1).padStart(7)} ms`);
console.log(`Least of ${TURNS} turns`);
row('one design-year', year);
row('  its drivers', all('drivers'));
row('  its hours', hours);
row('fixed arithmetic', arithmetic);

const ratio = year / arithmetic;
const asked = process.argv.slice(2);
if (asked.includes('--write')) {
  writeFileSync(KEPT, `{ "yearOverFixedArithmetic": ${ratio.toFixed(3)} }\n`);
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
