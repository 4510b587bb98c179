// Random designs in random weather, each run looked at for what must hold of any of them. Run:
//     pnpm run designs [count] [seed] [days] [steps an hour]
// A run of 365 days is a year with a plane and a weather of its own. Shorter ones begin anywhere in the year; to spare the sun's path and the
// light on the plane, which cost more than a fortnight's hours, they come in families of designs that share roof and weather.
import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import fc from 'fast-check';
import { stepsFor } from '../../packages/sim-core/src/physics/sun/track.ts';
import { inventedValley } from '../examples.ts';
import { designs } from '../property/designs.ts';
import { violations } from '../property/invariants.ts';
import { liveSpan } from '../property/span.ts';
import { changeWeather, weatherChanges } from '../property/weathers.ts';

const FAMILY = 100;
const YEAR = 365;
/** Designs drawn at a time. */
const BATCH = 500;
/** Runs with a finding that are printed. */
const PRINTED = 20;

const [count = 1000, seed = 1, days = YEAR, askedSteps = 0] = process.argv.slice(2).map(Number);
/** As asked, or where the weather has light of its own the next multiple of that. */
const stepsIn = (year: WeatherYear) => (askedSteps > 0 ? stepsFor(year, askedSteps) : undefined);
const weather = await inventedValley();
const started = performance.now();
const worst = new Map<string, number>();
const starts = fc.integer({ min: 0, max: 24 * (YEAR - days) });

type Family = readonly [SystemInput, Parameters<typeof changeWeather>[1]];

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

function live(input: SystemInput, year: WeatherYear, from: number) {
  const design = defineSystem(input);
  const stepsPerHour = stepsIn(year);
  if (days < YEAR) return liveSpan(design, year, from, from + 24 * days, stepsPerHour);
  return simulate(design, year, stepsPerHour === undefined ? {} : { stepsPerHour });
}

let run = 0;
let failed = 0;
let family: Family | null = null;
let year = weather;
for (let batch = 0; run < count; batch++) {
  const numRuns = Math.min(BATCH, count - run);
  for (const [drawn, change, from] of fc.sample(fc.tuple(designs, weatherChanges, starts), {
    seed: seed * 1e6 + batch,
    numRuns,
  })) {
    if (family === null || days >= YEAR || run % FAMILY === 0) {
      family = [drawn, change];
      year = changeWeather(weather, change);
    }
    const input = onRoofOf(family, drawn);
    const where = `seed ${seed}, run ${run++}`;
    let found: string[];
    try {
      const result = live(input, year, from);
      found = violations(result, year);
      for (const [part, { worstRelative }] of Object.entries(result.balance))
        worst.set(part, Math.max(worst.get(part) ?? 0, worstRelative));
    } catch (error) {
      found = [String(error)];
    }
    if (found.length === 0) continue;
    failed++;
    if (failed <= PRINTED)
      console.log(`${where}: ${found.join('; ')}\n  ${JSON.stringify({ input, change: family[1], from, days })}`);
  }
  const minutes = ((performance.now() - started) / 60_000).toFixed(1);
  console.log(`${run} runs of ${days} days in ${minutes} min, ${failed} with a violation`);
}
const parts = [...worst].map(([part, relative]) => `${part} ${relative.toExponential(1)}`).join(', ');
console.log(
  `steps an hour ${askedSteps > 0 ? askedSteps : 'as the design has them'}; worst balance of any hour: ${parts}`,
);
if (failed > 0) process.exitCode = 1;
