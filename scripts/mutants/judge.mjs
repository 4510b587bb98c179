// Asks which tests reach which changes (MUTANT unset), or runs tests under one change until one fails.
import { appendFileSync, readFileSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { begin, gathered, named, tidy } from 'vitest';

/** Turns through a change in one test from which it is taken to loop for ever. */
const MOST_TURNS = 2e7;

const { MUTANT, MUTANTS_COUNT, MUTANTS_FILES, MUTANTS_OUTPUT } = process.env;
let turns = 0;
globalThis.__mutant = Number(MUTANT ?? -1);
globalThis.__reached = new Uint8Array(Number(MUTANTS_COUNT));
globalThis.__turn = () => {
  if (++turns > MOST_TURNS) throw new Error('turns without an end');
  return true;
};
const reachedNow = () => {
  const list = [];
  for (let id = 0; id < __reached.length; id++) if (__reached[id] === 1) list.push(id);
  __reached.fill(0);
  return list;
};
/** A file of the bundle. */
const beside = (name) => import(new URL(`${name}.mjs`, import.meta.url).href);
async function testsOf(file) {
  begin();
  await beside(`test-${file}`);
  await named();
  return [...gathered];
}
async function fails(run) {
  turns = 0;
  try {
    await run();
    return null;
  } catch (error) {
    return String(error?.message ?? error)
      .split('\n')[0]
      .slice(0, 200);
  }
}

/** Of the processor. [ms] */
const since = (start) => {
  const { user, system } = process.cpuUsage(start);
  return (user + system) / 1000;
};
async function ask() {
  const say = (line) => appendFileSync(MUTANTS_OUTPUT, `${JSON.stringify(line)}\n`);
  globalThis.__asking = true;
  await beside('sources');
  say({ always: reachedNow() });
  for (let file = 0; file < Number(MUTANTS_FILES); file++) {
    let start = process.cpuUsage();
    let tests = [];
    const fault = await fails(async () => {
      tests = await testsOf(file);
    });
    say({ file, load: since(start), reached: reachedNow(), fault });
    for (const [at, { name, run }] of tests.entries()) {
      start = process.cpuUsage();
      const broken = await fails(run);
      say({ file, at, name, time: since(start), reached: reachedNow(), broken });
    }
  }
  await tidy();
}

/** Processor time of a test, beyond ten times what it took unchanged, after which a change is taken to loop for ever. [ms] */
const ENDLESS = 3000;
/** Breaks off a process whose test does not end: from a thread of its own, for the test's keeps everything to itself. */
function watched() {
  const span = new Float64Array(new SharedArrayBuffer(16));
  const code = `const { workerData: span } = require('node:worker_threads');
    setInterval(() => {
      const { user, system } = process.cpuUsage();
      if ((user + system) / 1000 - span[0] > span[1]) process.kill(process.pid, 'SIGKILL');
    }, 200);`;
  new Worker(code, { eval: true, workerData: span }).unref();
  return (time) => {
    span[0] = since({ user: 0, system: 0 });
    span[1] = ENDLESS + 10 * time;
  };
}

/** The first of the tests that fails, or none. */
async function judge(list) {
  const loaded = new Map();
  const begins = watched();
  for (const { file, at, time } of list) {
    begins(time);
    const fault = await fails(async () => {
      if (!loaded.has(file)) loaded.set(file, await testsOf(file));
      await loaded.get(file)[at].run();
    });
    if (fault !== null) return { file, at, fault };
  }
  return null;
}

if (MUTANT === undefined) await ask();
else {
  const by = await judge(JSON.parse(readFileSync(MUTANTS_OUTPUT, 'utf8')));
  await tidy();
  process.stdout.write(JSON.stringify(by));
  process.exit(0);
}
