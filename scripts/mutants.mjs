// Changes the year and its physics in small ways, one at a time (an operator, a constant, a condition, a statement left out), and counts which changes the quick tests
// notice. Stryker's instrumenter makes the changes; each is switched on in a process of its own, which runs the tests that reach it, the short ones first, until one fails.
//     pnpm run mutation [changes 60] [minutes 10] [seed: the day] [part of a path, or a file that lists changes: all]
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundle } from './mutants/bundle.mjs';
import { changesOf } from './mutants/changes.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = join(root, 'out/mutants');
const LEAST = 0.5;
/** Tests of a change are run as long as they took no longer than this unchanged. [s] */
const LONGEST = 20;
/** Processor time after which a change is taken to loop for ever: vitest would give up too. [s] */
const ENDLESS = 120;

const [changes = '60', minutes = '10', seed = String(Math.trunc(Date.now() / 86_400_000)), part = ''] =
  process.argv.slice(2);
const listed = part !== '' && existsSync(part) ? new Set(readFileSync(part, 'utf8').trim().split('\n')) : null;

let state = Number(seed) | 0;
/** Mulberry32, public domain. */
function random() {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
}

rmSync(out, { recursive: true, force: true });
mkdirSync(out, { recursive: true });
const all = await changesOf(root, listed === null ? part : '');
const order = [...all.changes];
for (let at = order.length - 1; at > 0; at--) {
  const other = Math.trunc(random() * (at + 1));
  [order[at], order[other]] = [order[other], order[at]];
}
const drawn = listed === null ? order.slice(0, Number(changes)) : order.filter(({ name }) => listed.has(name));
const equivalent = new Set(
  Object.values(JSON.parse(readFileSync(join(root, 'scripts/mutants/equivalent.json'), 'utf8'))).flat(),
);
const chosen = drawn.filter(({ name }) => !equivalent.has(name));
const ids = new Set(chosen.map(({ id }) => id));
const names = await bundle(root, out, all.texts, ids);

const given = {
  ...process.env,
  MUTANTS_COUNT: String(all.changes.length),
  MUTANTS_FILES: String(names.length),
  NODE_COMPILE_CACHE: join(out, 'compiled'),
  NOONLOOP_REFERENCE: join(out, 'reference-runs.json'),
  NOONLOOP_SHARED: process.env.NOONLOOP_SHARED ?? join(root, '../shared'),
};
const judge = join(out, 'judge.mjs');
const asked = join(out, 'reached.jsonl');
const asking = spawnSync(process.execPath, [judge], {
  stdio: ['ignore', 'ignore', 'inherit'],
  env: { ...given, MUTANTS_OUTPUT: asked },
});
if (asking.status !== 0)
  throw new Error(`the tests broke off: ${asking.status}, ${asking.signal}; ${asked} ends where`);

/** Tests by the change that they reach. */
const reaching = new Map(chosen.map(({ id }) => [id, []]));
const [{ always }, ...said] = readFileSync(asked, 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line));
const loads = new Map();
const tests = [];
for (const line of said) {
  if (line.at === undefined) loads.set(line.file, line);
  else tests.push({ ...line, load: loads.get(line.file) });
  const fault = line.at === undefined ? line.fault : line.broken;
  if (fault !== null) console.log(`left out, fails as it is: ${names[line.file]} ${line.name ?? ''}: ${fault}`);
}
const running = tests.filter(({ broken }) => broken === null);
running.sort((one, other) => one.time + one.load.load - other.time - other.load.load);
for (const test of running)
  for (const id of new Set([...always, ...test.load.reached, ...test.reached])) reaching.get(id).push(test);
console.log(
  `${all.changes.length} changes, seed ${seed}; ${running.length} tests, ${(running.reduce((sum, { time }) => sum + time, 0) / 1000).toFixed(0)} s`,
);

/** Runs tests under a change, -1: none. @returns the one that failed, and how; `null`: none. */
function failing(id, list) {
  const path = join(out, 'list.json');
  writeFileSync(path, JSON.stringify(list.map(({ file, at }) => ({ file, at }))));
  const { stdout, status } = spawnSync('sh', ['-c', `ulimit -t ${ENDLESS}; exec "$0" "$1"`, process.execPath, judge], {
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'ignore'],
    env: { ...given, MUTANT: String(id), MUTANTS_OUTPUT: path },
  });
  if (status !== 0) return { fault: `no end, or broken off: ${status}` };
  const by = JSON.parse(stdout);
  return by === null ? null : { test: list.find(({ file, at }) => file === by.file && at === by.at), fault: by.fault };
}

/** Whether a test holds by itself, without the tests before it in its file. */
const alone = new Map();
function holdsAlone(test) {
  if (!alone.has(test)) alone.set(test, failing(-1, [test]) === null);
  return alone.get(test);
}

/** The test that notices a change, null where none does. */
function noticing(id) {
  let list = [];
  const loaded = new Set();
  let seconds = 0;
  for (const test of reaching.get(id)) {
    seconds += (test.time + (loaded.has(test.file) ? 0 : test.load.load)) / 1000;
    if (seconds > LONGEST) break;
    loaded.add(test.file);
    if (alone.get(test) !== false) list.push(test);
  }
  for (;;) {
    const by = failing(id, list);
    if (by === null || by.test === undefined || holdsAlone(by.test)) return by;
    list = list.slice(list.indexOf(by.test) + 1);
  }
}

const table = new Map();
const deadline = Date.now() + Number(minutes) * 60_000;
const stayed = [];
for (const { id, folder, name, line } of chosen) {
  if (Date.now() > deadline) break;
  const row = table.get(folder) ?? { tried: 0, reached: 0, noticed: 0 };
  table.set(folder, row);
  row.tried++;
  if (reaching.get(id).length === 0) {
    writeFileSync(join(out, 'fates.tsv'), `unreached\t${name}\n`, { flag: 'a' });
    continue;
  }
  row.reached++;
  const by = noticing(id);
  writeFileSync(
    join(out, 'fates.tsv'),
    `${by === null ? 'stayed' : `noticed by ${by.test === undefined ? '' : `${names[by.test.file]} ${by.test.name}`}: ${by.fault}`}\t${name}\n`,
    { flag: 'a' },
  );
  if (by === null) stayed.push(`${name}   (line ${line})`);
  else row.noticed++;
}
console.log('folder              tried  reached  noticed');
let [reached, noticed] = [0, 0];
for (const [folder, row] of [...table].sort()) {
  reached += row.reached;
  noticed += row.noticed;
  console.log(
    folder.padEnd(17) + [row.tried, row.reached, row.noticed].map((count) => String(count).padStart(8)).join(''),
  );
}
console.log(
  `${noticed} of ${reached} noticed (${((100 * noticed) / Math.max(reached, 1)).toFixed(0)} %); ${drawn.length - chosen.length} left out as equivalent; not noticed:`,
);
for (const name of stayed) console.log(`  ${name}`);
if (noticed < LEAST * reached) {
  console.error(`less than ${100 * LEAST} % noticed`);
  process.exitCode = 1;
}
