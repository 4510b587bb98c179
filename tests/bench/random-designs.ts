// Random designs in random weather, each run looked at for what must hold of any of them. Run:
//     pnpm run designs [count] [seed] [days] [steps an hour] [log]
//     pnpm run designs --write LOG…      sums the logs into the table of docs/theory/robustness.md
// Steps: 0 as a design has them, or a list such as 0,4,0,2 that families take in turn. A log gets a line for each 500 runs.
// A run of 365 days is a year with a plane and a weather of its own. Shorter ones begin anywhere in the year; to spare the sun's path and the
// light on the plane, which cost more than a fortnight's hours, they come in families of designs that share roof, weather and days, and the
// rest of the year is dark.
import { appendFileSync, readFileSync, writeFileSync } from 'node:fs';
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import fc from 'fast-check';
import { stepsFor } from '../../packages/sim-core/src/physics/sun/track.ts';
import { inventedValley } from '../examples.ts';
import type { Hours } from '../property/bounds.ts';
import { designs } from '../property/designs.ts';
import { allClose, type Looks, note, violations } from '../property/invariants.ts';
import { type Chunk, looksTable } from '../property/looks.ts';
import { type Lived, liveSpan } from '../property/span.ts';
import { changeWeather, weatherChanges } from '../property/weathers.ts';
import { put } from './page-tables.ts';

const FAMILY = 100;
const YEAR = 365;
/** Designs drawn at a time. */
const BATCH = 500;
/** Runs with a finding that are printed. */
const PRINTED = 20;
const PAGE = 'docs/theory/robustness.md';

type Family = readonly [SystemInput, Parameters<typeof changeWeather>[1], number];

/** The collectors of one design on the roof of another; where something near shades that roof, of the same size. */
function onRoofOf([roof]: Family, own: SystemInput): SystemInput {
  const { panels, inSeries, collector, groups: ownGroups = [] } = own.array;
  const { groups: planes = [], obstacle } = roof.array;
  const size = obstacle == null ? { panels, inSeries } : {};
  const kind = obstacle == null ? collector : { ...collector, area: roof.array.collector.area };
  const groups = ownGroups.map((group, at) => {
    const { azimuth, lightShare, obstacle, tilt } =
      planes.length === 0 ? { lightShare: 1 } : planes[at % planes.length]!;
    return { ...group, azimuth, lightShare, obstacle, tilt };
  });
  const { azimuth, tilt } = roof.pv ?? {};
  return { ...own, array: { ...roof.array, ...size, collector: kind, groups }, pv: { ...own.pv, azimuth, tilt } };
}

/** What is live: a fortnight, or a year and, where its books did not close to the law's share, the same hour by hour. */
function look(input: SystemInput, year: WeatherYear, hours: Hours, asked: number, looks: Looks): string[] {
  const design = defineSystem(input);
  // As asked, or where the weather has light of its own the next multiple of that.
  const stepsPerHour = asked > 0 ? stepsFor(year, asked) : undefined;
  try {
    const span = (): Lived => liveSpan(design, year, hours.from, hours.to, stepsPerHour);
    const isYear = hours.to - hours.from === 24 * YEAR;
    const lived = isYear ? simulate(design, year, stepsPerHour === undefined ? {} : { stepsPerHour }) : span();
    const found = violations(isYear && !allClose(lived) ? span() : lived, year, hours, looks);
    note(looks, 'accepted', 1);
    return found;
  } catch (error) {
    note(looks, 'accepted', 1, true);
    return [String(error)];
  }
}

async function run(count: number, seed: number, days: number, steps: readonly number[], log: string | undefined) {
  const weather = await inventedValley();
  const started = performance.now();
  const starts = fc.integer({ min: 0, max: 24 * (YEAR - days) });
  const drawn = fc.tuple(designs, weatherChanges, starts);
  let done = 0;
  let failed = 0;
  let families = 0;
  let family: Family | null = null;
  let year = weather;
  for (let batch = 0; done < count; batch++) {
    const looks: Looks = new Map();
    const numRuns = Math.min(BATCH, count - done);
    for (const [input, change, from] of fc.sample(drawn, { seed: seed * 1e6 + batch, numRuns })) {
      if (family === null || days >= YEAR || done % FAMILY === 0) {
        family = [input, change, from];
        families++;
        year = changeWeather(weather, change, days < YEAR ? { from, to: from + 24 * days } : undefined);
      }
      const [, ofFamily, begin] = family;
      const own = onRoofOf(family, input);
      const asked = steps[(families - 1) % steps.length]!;
      const where = `seed ${seed}, run ${done++}, ${asked} steps an hour`;
      const found = look(own, year, { from: begin, to: begin + 24 * days }, asked, looks);
      if (found.length === 0) continue;
      failed++;
      if (failed <= PRINTED)
        console.log(
          `${where}: ${found.join('; ')}\n  ${JSON.stringify({ input: own, change: ofFamily, from: begin, days })}`,
        );
    }
    if (log !== undefined) {
      const chunk: Chunk = { seed, days, steps: steps.join(), runs: numRuns, looks: [...looks] };
      appendFileSync(log, `${JSON.stringify(chunk)}\n`);
    }
    const minutes = ((performance.now() - started) / 60_000).toFixed(1);
    console.log(`${done} runs of ${days} days in ${minutes} min, ${failed} with a violation`);
    if (log === undefined)
      console.log(looksTable([{ seed, days, steps: steps.join(), runs: numRuns, looks: [...looks] }]));
  }
  if (failed > 0) process.exitCode = 1;
}

const [first, ...others] = process.argv.slice(2);
if (first === '--write') {
  const lines = others.flatMap((log) => readFileSync(log, 'utf8').trim().split('\n'));
  const chunks = lines.map((line) => JSON.parse(line) as Chunk);
  writeFileSync(PAGE, put(readFileSync(PAGE, 'utf8'), 'looks', looksTable(chunks)));
} else {
  const [seed = '1', days = `${YEAR}`, steps = '0', log] = others;
  await run(Number(first ?? 1000), Number(seed), Number(days), steps.split(',').map(Number), log);
}
