// Runs the gathered tests under each mutant, in one process: the quick ones first, until one fails.
import { appendFileSync } from 'node:fs';
import { gathered } from 'vitest';

/** Passes through a mutant in one test from which it is taken to loop for ever. */
const MOST_PASSES = 2e7;

const { MUTANTS_DEADLINE, MUTANTS_LIST, MUTANTS_OUTPUT } = process.env;
globalThis.__stryker__ ??= {};
const stryker = globalThis.__stryker__;
const say = (line) => appendFileSync(MUTANTS_OUTPUT, `${JSON.stringify(line)}\n`);

async function fails(test) {
  try {
    await test.run();
    return null;
  } catch (error) {
    return String(error?.message ?? error)
      .split('\n')[0]
      .slice(0, 200);
  }
}

const tests = [];
for (const test of gathered) {
  const start = performance.now();
  const fault = await fails(test);
  if (fault === null) tests.push({ ...test, time: performance.now() - start });
  else say({ broken: test.name, fault });
}
tests.sort((one, other) => one.time - other.time);
say({ tests: tests.length });

for (const id of MUTANTS_LIST.split(',')) {
  if (Date.now() > Number(MUTANTS_DEADLINE)) break;
  let passes = 0;
  let by = null;
  for (const test of tests) {
    stryker.activeMutant = id;
    stryker.hitCount = 0;
    stryker.hitLimit = MOST_PASSES;
    const fault = await fails(test);
    stryker.activeMutant = undefined;
    passes += stryker.hitCount;
    if (fault === null) continue;
    by = `${test.name}: ${fault}`;
    break;
  }
  say(by !== null ? { id, fate: 'noticed', by } : { id, fate: passes > 0 ? 'not noticed' : 'not reached' });
}
// What a mutant left behind in a memory of the module would have judged those after it.
let poisoned = 0;
for (const test of tests) if ((await fails(test)) !== null) poisoned++;
say({ poisoned });
