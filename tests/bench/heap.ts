// What a hundred years leave on the heap of one warm process, after collection: nothing, if the year loop keeps nothing. Run: pnpm run bench:heap
import { setTimeout } from 'node:timers/promises';
import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { simulate } from '@noonloop/sim-core';
import { inventedValley, withPanels } from '../examples.ts';

/** Runs before the first look, so that the engine has compiled what it will. */
const WARM_UP = 30;
const RUNS = 100;
const MOST_BYTES = 1_000_000;

setFlagsFromString('--expose-gc');
const collect: () => void = runInNewContext('gc');
const weather = await inventedValley();
const design = withPanels(2);
const heap = async () => {
  // Buffers of arrays are given back a little after their arrays.
  for (let turn = 0; turn < 5; turn++) {
    collect();
    await setTimeout(50);
  }
  const { heapUsed, arrayBuffers } = process.memoryUsage();
  return heapUsed + arrayBuffers;
};

for (let run = 0; run < WARM_UP; run++) simulate(design, weather);
const before = await heap();
for (let run = 0; run < RUNS; run++) simulate(design, weather);
const grown = (await heap()) - before;
console.log(`${RUNS} years leave ${(grown / 1e6).toFixed(3)} MB on the heap (limit ${MOST_BYTES / 1e6} MB)`);
if (grown > MOST_BYTES) process.exitCode = 1;
