// Memory of a sweep: peak resident set of the whole process, threads included, after 500 designs and after 10,000.
// Designs are stepped coarsely (one step an hour, four tank nodes): what is kept of each does not depend on it.
import { sweep } from '@noonloop/sim-core';
import { startPool } from '@noonloop/sim-core/node';
import { inventedValley, plainInput } from '../examples.ts';

const count = Number(process.argv[2] ?? 10_000);
const weather = await inventedValley();
const tilts = Array.from({ length: 50 }, (_, at) => 15 + at);
const volumes = Array.from({ length: Math.ceil(count / 50) }, (_, at) => 0.15 + 0.0005 * at);
const study = sweep(
  { ...plainInput, tank: { volume: 0.3, nodes: 4 } },
  { 'array.tilt': tilts, 'tank.volume': volumes },
  weather,
  { steps: { stepsPerHour: 1, collectorNodes: 1 } },
);
const pool = startPool({ workers: 2 });
const peak_MB = (): number => process.resourceUsage().maxRSS / 1024;
let first_MB = 0;
for await (const { index } of study.run({ runner: pool })) {
  const done = index + 1;
  if (done === 500) first_MB = peak_MB();
  if (done === 500 || done % 1000 === 0)
    console.log(`${String(done).padStart(6)} designs: peak ${peak_MB().toFixed(0)} MB`);
}
await pool.close();
const ratio = peak_MB() / first_MB;
console.log(`${study.total} designs over 500: ${ratio.toFixed(3)}, wanted at most 1.2`);
if (!(ratio <= 1.2)) process.exitCode = 1;
