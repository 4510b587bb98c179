// Years of random designs in random weather, each looked at for what must hold of any of them. Run:
//     tsx --conditions=@noonloop/source tests/bench/random-designs.ts [count] [seed] [steps an hour]
import { defineSystem, simulate } from '@noonloop/sim-core';
import fc from 'fast-check';
import { inventedValley } from '../examples.ts';
import { changeWeather, designs, weatherChanges } from '../property/designs.ts';
import { violations } from '../property/invariants.ts';

/** Designs drawn at a time. */
const BATCH = 500;
const [count = 1000, seed = 1, stepsPerHour = 4] = process.argv.slice(2).map(Number);
const weather = await inventedValley();
const started = performance.now();
const worst = new Map<string, number>();
let run = 0;
let failed = 0;

for (let batch = 0; run < count; batch++) {
  const numRuns = Math.min(BATCH, count - run);
  for (const [input, change] of fc.sample(fc.tuple(designs, weatherChanges), { seed: seed * 1e6 + batch, numRuns })) {
    const year = changeWeather(weather, change);
    const where = `seed ${seed}, run ${run++}`;
    let found: string[];
    try {
      const result = simulate(defineSystem(input), year, { stepsPerHour });
      found = violations(result, year);
      for (const [part, { worstRelative }] of Object.entries(result.balance))
        worst.set(part, Math.max(worst.get(part) ?? 0, worstRelative));
    } catch (error) {
      found = [String(error)];
    }
    if (found.length === 0) continue;
    failed++;
    if (failed <= 20) console.log(`${where}: ${found.join('; ')}\n  ${JSON.stringify({ input, change })}`);
  }
  const minutes = ((performance.now() - started) / 60_000).toFixed(1);
  console.log(`${run} years in ${minutes} min, ${failed} with a violation`);
}
const parts = [...worst].map(([part, relative]) => `${part} ${relative.toExponential(1)}`).join(', ');
console.log(`steps an hour ${stepsPerHour}; worst balance of any hour: ${parts}`);
if (failed > 0) process.exitCode = 1;
