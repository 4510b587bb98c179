// Changes some lines of the year and its physics, chosen at random, in every way that Stryker knows, one at a time, and counts which changes the quick tests of
// steps and single formulas notice. Arguments: lines (default 24, some 60 changes), seed (default: the day), part of a path (default: all).
// Fails where less than 80 % of what they reach is noticed: of 60 changes, 90 % noticed gives less than that once in a hundred samples.
import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const SOURCES = 'packages/sim-core/src';
const FOLDERS = [
  'year',
  ...['loop', 'tank', 'backup', 'control', 'draw', 'pv', 'collector', 'fluid'].map((name) => `physics/${name}`),
];
/** Lists of exports, types, data, and words for people. */
const LEFT_OUT =
  /(index|tapping-data|result|loop-result|arguments|run-assumptions|expansion-working|labels|calendar)\.ts$/;
const LEAST = 0.8;

const [lines = '24', seed = String(Math.trunc(Date.now() / 86_400_000)), part = ''] = process.argv.slice(2);

let state = Number(seed) % 4_294_967_296;
/** Mulberry32, public domain. */
function random() {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
}

/** Lines with something to change: inside a function, no comment, import or type. */
function codeLines(file) {
  let inComment = false;
  return readFileSync(join(root, file), 'utf8')
    .split('\n')
    .flatMap((line, at) => {
      const text = line.trim();
      if (text.startsWith('/*')) inComment = true;
      const isCode =
        !inComment &&
        !text.startsWith('//') &&
        !/^(import|export (type|interface|\*)|interface|type|readonly|[{}()[\],;]*$)/.test(text);
      if (text.endsWith('*/')) inComment = false;
      return isCode && /[=<>+\-*/!&|?]|return|Math\./.test(text) && line.startsWith('  ') ? [at + 1] : [];
    });
}

const places = FOLDERS.flatMap((folder) =>
  readdirSync(join(root, SOURCES, folder), { recursive: true })
    .map((name) => `${SOURCES}/${folder}/${name}`)
    .filter((file) => file.endsWith('.ts') && !LEFT_OUT.test(file) && file.includes(part))
    .flatMap((file) => codeLines(file).map((line) => `${file}:${line}-${line}`)),
);
const chosen = new Set();
while (chosen.size < Math.min(Number(lines), places.length)) chosen.add(places[Math.trunc(random() * places.length)]);
console.log(`${chosen.size} of ${places.length} lines, seed ${seed}`);

mkdirSync(join(root, 'out'), { recursive: true });
rmSync(join(root, 'out/reference-runs.json'), { force: true });
const { status } = spawnSync(
  'node_modules/.bin/stryker',
  ['run', 'stryker.config.json', '--mutate', [...chosen].join(',')],
  {
    cwd: root,
    stdio: ['ignore', 'ignore', 'inherit'],
    env: { ...process.env, NOONLOOP_REFERENCE: join(root, 'out/reference-runs.json') },
  },
);
if (status !== 0) process.exit(status ?? 1);

const { files } = JSON.parse(readFileSync(join(root, 'out/mutation.json'), 'utf8'));
const table = new Map();
const left = [];
for (const [file, { mutants, source }] of Object.entries(files)) {
  const folder = file.slice(SOURCES.length + 1, file.lastIndexOf('/'));
  const row = table.get(folder) ?? { reached: 0, noticed: 0, unreached: 0 };
  table.set(folder, row);
  for (const { location, mutatorName, replacement, status: fate } of mutants) {
    if (fate === 'Killed' || fate === 'Timeout') row.noticed++;
    if (fate === 'Killed' || fate === 'Timeout' || fate === 'Survived') row.reached++;
    if (fate === 'NoCoverage') row.unreached++;
    if (fate === 'Survived')
      left.push(
        `${file}:${location.start.line}:${location.start.column} ${mutatorName}: ${source.split('\n')[location.start.line - 1].trim()} → ${(replacement ?? '').replaceAll('\n', ' ').slice(0, 100)}`,
      );
  }
}
let [reached, noticed] = [0, 0];
console.log('\nfolder              reached  noticed  not reached');
for (const [folder, row] of [...table].sort()) {
  console.log(
    `${folder.padEnd(20)}${String(row.reached).padStart(7)}${String(row.noticed).padStart(9)}${String(row.unreached).padStart(13)}`,
  );
  reached += row.reached;
  noticed += row.noticed;
}
console.log(`\n${noticed} of ${reached} noticed${left.length > 0 ? '; not:' : ''}`);
for (const line of left) console.log(`  ${line}`);
if (noticed < LEAST * reached) {
  console.error(`\nless than ${100 * LEAST} % noticed`);
  process.exit(1);
}
