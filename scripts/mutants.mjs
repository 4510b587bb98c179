// Changes the year and its physics in small ways, one at a time (an operator, a constant, a condition, a statement left out), and counts which changes are noticed by
// the quick tests of ten days, single steps and single formulas. The changes are made by Stryker's instrumenter, all into one copy of the sources, and switched on in one
// process, some tenths of a second each.
//     pnpm run mutation [changes 60] [minutes 8] [seed: the day] [part of a path: all]
// Fails where less than half of what these tests reach is noticed. Two samples had 60 of 84, 71 %; one of 60 changes reaches some 30, and its
// share scatters by 8 points: below half it is the tests, not the draw. The whole quick suite, which has years too, notices more.
import { spawnSync } from 'node:child_process';
import { cpSync, existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createInstrumenter } from '@stryker-mutator/instrumenter';
import { build } from 'esbuild';
import { createInjector } from 'typed-inject';

const root = fileURLToPath(new URL('..', import.meta.url));
const out = join(root, 'out/mutants');
const SOURCES = 'packages/sim-core/src';
const FOLDERS = [
  'year',
  ...['backup', 'collector', 'control', 'draw', 'fluid', 'loop', 'pv', 'tank'].map((name) => `physics/${name}`),
];
/** Lists of exports, tables of data, types, refusals, and words for people. */
const LEFT_OUT =
  /\/(index|tapping-data|result|loop-result|arguments|run-assumptions|expansion-working|labels|calendar)\.ts$/;
/** Refusals and their words are held by the tests of bad input, which are not among those here. */
const OF_WORDS = ['StringLiteral', 'ObjectLiteral', 'Regex'];
const LEAST = 0.5;
/** Tests that run without hooks and without a year that they share. */
const TESTS = [
  'reference-model',
  ...['backup', 'control', 'fluid', 'loop', 'pv', 'tank'].map((name) => `sim-core/physics/${name}`),
];
const SHARES = /inventedValley|beforeAll|beforeEach|hasShared|sharedFile|readWeather|vi\.|fast-check/;
/** Files of which a test takes seconds in the instrumented copy. */
const SLOW =
  /(coil|coil-sliver|direct-pump|hydraulics|plate|pressure-steam|power-table|properties|datasheet)\.test\.ts$/;

const [changes = '60', minutes = '8', seed = String(Math.trunc(Date.now() / 86_400_000)), part = ''] =
  process.argv.slice(2);

let state = Number(seed) | 0;
/** Mulberry32, public domain. */
function random() {
  state = (state + 0x6d2b79f5) | 0;
  let t = Math.imul(state ^ (state >>> 15), 1 | state);
  t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
  return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
}

const quiet = {
  info() {},
  debug() {},
  warn() {},
  error: console.error,
  trace() {},
  fatal: console.error,
  isDebugEnabled: () => false,
};
const injector = createInjector()
  .provideValue('logger', quiet)
  .provideValue('getLogger', () => quiet);

rmSync(out, { recursive: true, force: true });
for (const folder of ['packages/sim-core/src', 'packages/weather-io/src', 'packages/reports/src', 'tests'])
  cpSync(join(root, folder), join(out, folder), { recursive: true });

const files = FOLDERS.flatMap((folder) =>
  readdirSync(join(root, SOURCES, folder)).map((name) => `${SOURCES}/${folder}/${name}`),
)
  .filter((file) => file.endsWith('.ts') && !LEFT_OUT.test(file) && file.includes(part))
  .map((name) => ({ name, mutate: true, content: readFileSync(join(root, name), 'utf8') }));
const instrumenter = injector.injectFunction(createInstrumenter);
const instrumented = await instrumenter.instrument(files, {
  plugins: null,
  excludedMutations: OF_WORDS,
  ignorers: [],
  noHeader: false,
});
// What was reached is told by the switches themselves; counting it too would make each run many times longer.
for (const { name, content } of instrumented.files)
  writeFileSync(join(out, name), content.replaceAll(/stryCov_\w+\((?:"\d+"(?:, )?)+\)/g, '0'));

const shown = ({ fileName, location, mutatorName, replacement }) => {
  const line = readFileSync(join(root, fileName), 'utf8').split('\n')[location.start.line];
  return `${fileName}:${location.start.line + 1} ${mutatorName}: ${line.trim()} → ${replacement.replaceAll(/\s+/g, ' ').slice(0, 90)}`;
};
const mutants = new Map(
  instrumented.mutants.map((mutant) => [mutant.id, { ...mutant, fileName: mutant.fileName.replace(root, '') }]),
);
const ids = [...mutants.keys()];
for (let at = ids.length - 1; at > 0; at--) {
  const other = Math.trunc(random() * (at + 1));
  [ids[at], ids[other]] = [ids[other], ids[at]];
}
const chosen = ids.slice(0, Number(changes));

const testFiles = TESTS.flatMap((folder) =>
  readdirSync(join(root, 'tests', folder), { recursive: true })
    .filter((name) => name.endsWith('.test.ts') && !name.endsWith('.long.test.ts') && !SLOW.test(name))
    .map((name) => join(out, 'tests', folder, name))
    .filter((path) => !SHARES.test(readFileSync(path, 'utf8'))),
);
/** Another package's copy of a package, as it sees it. */
const seenFrom = (from, name) => createRequire(from).resolve(name);
const vitest = seenFrom(import.meta.url, 'vitest/package.json');
const expectIn = seenFrom(vitest, '@vitest/expect');
/** Our packages by their names, in the copy. */
const ourPackages = () =>
  Object.fromEntries(
    ['weather-io', 'sim-core', 'reports'].flatMap((name) => {
      const folder = `packages/${name}`;
      const { exports } = JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8'));
      return Object.entries(exports)
        .filter(([, places]) => places['@noonloop/source'] !== undefined)
        .map(([entry, places]) => [
          `@noonloop/${name}${entry.slice(1)}`,
          join(out, folder, places['@noonloop/source']),
        ]);
    }),
  );
writeFileSync(
  join(out, 'entry.mjs'),
  `${testFiles.map((path) => `import ${JSON.stringify(path)};`).join('\n')}\nimport ${JSON.stringify(join(root, 'scripts/mutants/judge.mjs'))};\n`,
);
await build({
  // Of the checkout, for pages only: no mutant runs it.
  external: ['*/pack/live.mjs'],
  entryPoints: [join(out, 'entry.mjs')],
  outfile: join(out, 'judge.mjs'),
  bundle: true,
  platform: 'node',
  format: 'esm',
  logLevel: 'error',
  conditions: ['@noonloop/source'],
  nodePaths: [
    join(root, 'node_modules'),
    join(root, 'packages/sim-core/node_modules'),
    join(root, 'packages/weather-io/node_modules'),
    join(root, 'packages/reports/node_modules'),
  ],
  banner: {
    js: "import { createRequire as requireHere } from 'node:module'; const require = requireHere(import.meta.url);",
  },
  alias: {
    vitest: join(root, 'scripts/mutants/shim.mjs'),
    '@vitest/expect': expectIn,
    chai: seenFrom(expectIn, 'chai'),
    ...ourPackages(),
  },
});

const output = join(out, 'fates.jsonl');
const deadline = Date.now() + Number(minutes) * 60_000;
const { status } = spawnSync(process.execPath, [join(out, 'judge.mjs')], {
  stdio: ['ignore', 'ignore', 'inherit'],
  env: {
    ...process.env,
    MUTANTS_OUTPUT: output,
    MUTANTS_DEADLINE: String(deadline),
    MUTANTS_LIST: chosen.join(','),
    NOONLOOP_REFERENCE: process.env.NOONLOOP_REFERENCE ?? join(out, 'reference-runs.json'),
  },
});
if (!existsSync(output)) process.exit(status ?? 1);
const said = readFileSync(output, 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line));
const table = new Map();
for (const { id, fate } of said) {
  if (id === undefined) continue;
  const folder = mutants
    .get(id)
    .fileName.slice(SOURCES.length + 1)
    .replace(/\/[^/]*$/, '');
  const row = table.get(folder) ?? { noticed: 0, 'not noticed': 0, 'not reached': 0 };
  table.set(folder, row);
  row[fate]++;
}
console.log(`${ids.length} changes, seed ${seed}; ${said.find(({ tests }) => tests !== undefined)?.tests} tests`);
for (const { broken, fault } of said)
  if (broken !== undefined) console.log(`left out, fails as it is: ${broken}: ${fault}`);
console.log('folder              tried  reached  noticed');
let [reached, noticed] = [0, 0];
for (const [folder, row] of [...table].sort()) {
  const reach = row.noticed + row['not noticed'];
  reached += reach;
  noticed += row.noticed;
  const [tried, of, by] = [reach + row['not reached'], reach, row.noticed].map((count) => String(count).padStart(8));
  console.log(`${folder.padEnd(17)}${tried}${of}${by}`);
}
console.log(`${noticed} of ${reached} noticed (${((100 * noticed) / Math.max(reached, 1)).toFixed(0)} %); not:`);
for (const { id, fate } of said) if (fate === 'not noticed') console.log(`  ${shown(mutants.get(id))}`);
const poisoned = said.find(({ poisoned: count }) => count !== undefined)?.poisoned;
if (poisoned === undefined) console.log('the judge did not come to its end');
if (poisoned > 0 || noticed < LEAST * reached) {
  console.error(
    poisoned > 0 ? `${poisoned} tests fail without any change afterwards` : `less than ${100 * LEAST} % noticed`,
  );
  process.exitCode = 1;
}
