// Changes the year and its physics in small ways, one at a time (an operator, a constant, a condition, a statement left out), and counts which changes the quick tests
// notice. Stryker's instrumenter makes the changes; each is switched on in a process of its own, which runs the tests that reach it, the short ones first, until one fails.
// What changes nothing that anybody could see stands with its reason in mutants/equivalent.json and is left out.
//     pnpm run mutation [changes 60] [minutes 10] [seed: the day] [part of a path, or a file that lists changes: all] [--apart] [--write]
// --apart: where numbers kept as they were notice a change first, asks whether other tests do too. --write: puts the table into docs/theory/robustness.md.
import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundle } from './mutants/bundle.mjs';
import { changesOf } from './mutants/changes.mjs';
import { writeSample } from './mutants/page.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = join(root, 'out/mutants');
/**
 * Share noticed of a sample that holds changes which change nothing and are not listed yet: 511 of 603 in the samples of docs/theory/robustness.md.
 */
const AS_A_RULE = 511 / 603;
/** A sample scatters by √(p (1 − p)/n). Three times that below the rule it is the tests, not the draw. */
const leastOf = (reached) => AS_A_RULE - 3 * Math.sqrt((AS_A_RULE * (1 - AS_A_RULE)) / Math.max(reached, 1));
/** Tests of a change are run as long as they took no longer than this unchanged. [s] */
const LONGEST = 20;

const flags = process.argv.slice(2).filter((word) => word.startsWith('--'));
const [changes = '60', minutes = '10', seed = String(Math.trunc(Date.now() / 86_400_000)), part = ''] = process.argv
  .slice(2)
  .filter((word) => !word.startsWith('--'));
/** Numbers that say only that something has changed, not that it was right. */
const KEPT = 'sim-core/year/kept/kept.test.ts';
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
const known = new Set(all.changes.map(({ name }) => name));
if (part === '')
  for (const name of equivalent) if (!known.has(name)) console.log(`no longer there, but in equivalent.json: ${name}`);
const chosen = drawn.filter(({ name }) => !equivalent.has(name));
const ids = new Set(chosen.map(({ id }) => id));
const names = await bundle(root, out, all.texts, ids);

const given = {
  ...process.env,
  MUTANTS_COUNT: String(all.changes.length === 0 ? 0 : all.changes.at(-1).id + 1),
  MUTANTS_FILES: String(names.length),
  NODE_COMPILE_CACHE: join(out, 'compiled'),
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
/** The kept numbers notice most, so they come first. */
const cost = ({ file, time, load }) => (time + load.load) / (names[file] === KEPT ? 10 : 1);
running.sort((one, other) => cost(one) - cost(other));
for (const test of running)
  for (const id of new Set([...always, ...test.load.reached, ...test.reached])) reaching.get(id).push(test);
console.log(
  `${all.changes.length} changes, seed ${seed}; ${running.length} tests, ${(running.reduce((sum, { time }) => sum + time, 0) / 1000).toFixed(0)} s`,
);

let calls = 0;
/** Runs tests under a change, -1: none. @returns the one that failed, and how; `null`: none. */
async function failing(id, list) {
  const path = join(out, `list-${++calls}.json`);
  writeFileSync(path, JSON.stringify(list.map(({ file, at, time, load }) => ({ file, at, time: time + load.load }))));
  const run = spawn(process.execPath, [judge], {
    stdio: ['ignore', 'pipe', 'ignore'],
    env: { ...given, MUTANT: String(id), MUTANTS_OUTPUT: path },
  });
  let said = '';
  run.stdout.setEncoding('utf8').on('data', (text) => {
    said += text;
  });
  const [status, signal] = await once(run, 'close');
  if (status !== 0) return { fault: `no end, or broken off: ${signal ?? status}` };
  const by = JSON.parse(said);
  return by === null ? null : { test: list.find(({ file, at }) => file === by.file && at === by.at), fault: by.fault };
}

/** Whether a test holds by itself, without the tests before it in its file. */
const alone = new Map();
async function holdsAlone(test) {
  if (!alone.has(test)) alone.set(test, (await failing(-1, [test])) === null);
  return alone.get(test);
}

/** Tests that reach a change, as many as the time allows. */
function within(seconds, tests) {
  const loaded = new Set();
  let left = seconds;
  return tests.filter((test) => {
    left -= (test.time + (loaded.has(test.file) ? 0 : test.load.load)) / 1000;
    loaded.add(test.file);
    return left >= 0 && alone.get(test) !== false;
  });
}

/** The first test that notices a change, and how; `null` where none does. */
async function noticing(id, tests) {
  let list = tests;
  while (list.length > 0) {
    const by = await failing(id, list);
    if (by === null || by.test === undefined || (await holdsAlone(by.test))) return by;
    list = list.slice(list.indexOf(by.test) + 1);
  }
  return null;
}

const table = new Map();
const rowOf = (folder) => {
  const row = table.get(folder) ?? { tried: 0, equivalent: 0, reached: 0, noticed: 0, kept: 0 };
  table.set(folder, row);
  return row;
};
const stayed = [];
const told = (fate, name) => writeFileSync(join(out, 'fates.tsv'), `${fate}\t${name}\n`, { flag: 'a' });
/** What becomes of one change. */
async function judged({ id, folder, name, line }) {
  const row = rowOf(folder);
  row.tried++;
  if (!ids.has(id)) {
    row.equivalent++;
    return 'equivalent';
  }
  const tests = reaching.get(id);
  if (tests.length === 0) return 'not reached';
  row.reached++;
  const by = await noticing(id, within(LONGEST, tests));
  if (by === null) {
    stayed.push(`${name}   (line ${line})`);
    return 'not noticed';
  }
  row.noticed++;
  const where = by.test === undefined ? '' : names[by.test.file];
  if (where !== KEPT) return `noticed by ${where} ${by.test?.name}: ${by.fault}`;
  const others = tests.filter(({ file }) => names[file] !== KEPT);
  const other = flags.includes('--apart') ? await noticing(id, within(LONGEST, others)) : null;
  if (other === null) row.kept++;
  return `noticed by ${where}${other === null ? ' alone' : ''}: ${by.fault}`;
}
const deadline = Date.now() + Number(minutes) * 60_000;
const left = drawn.values();
/** Judges one change after the other of those that are left. */
async function judgeOn() {
  for (const change of left) {
    if (Date.now() > deadline) break;
    told(await judged(change), change.name);
  }
}
await Promise.all(Array.from({ length: availableParallelism() }, judgeOn));

const HEADS = ['tried', 'equivalent', 'reached', 'noticed', 'kept'];
const rows = [...table].sort().map(([folder, row]) => [folder, ...HEADS.map((head) => row[head])]);
const sums = HEADS.map((_, at) => rows.reduce((sum, row) => sum + row[at + 1], 0));
const [, , reached, noticed] = sums;
const share = `${((100 * noticed) / Math.max(reached, 1)).toFixed(0)} %`;
for (const cells of [['folder', ...HEADS], ['---', ...HEADS.map(() => '---')], ...rows, ['all', ...sums]])
  console.log(`| ${cells.join(' | ')} |`);
console.log(`${noticed} of ${reached} noticed (${share}); not:`);
for (const name of stayed) console.log(`  ${name}`);
if (flags.includes('--write')) writeSample(root, seed, rows);
if (noticed < leastOf(reached) * reached) {
  console.error(`less than ${(100 * leastOf(reached)).toFixed(0)} % noticed`);
  process.exitCode = 1;
}
