// Puts each file of quick tests, with the changed sources, into a folder from which it can be run without vitest.
import { readdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'esbuild';
import { thinned } from './changes.mjs';

/** Folders of tests that run the year or a formula of it. */
const TESTS = ['property', 'reference-model', 'sim-core', 'validation'];
/** Files that start other processes, which no switch reaches. */
const APART = /worker_threads|child_process|node\/index|playwright|from 'typescript'|from 'esbuild'|vi\.|\/node|Worker/;
/** Where runs and tests remember what others computed, and how: while it is asked who reaches what, nothing is remembered. */
const IF_KEPT = [/kept !== undefined/g, 'kept !== undefined && !globalThis.__asking'];
const WATER = [/(\w+) \?\?= compileWater\(\)/g, '$1 = (globalThis.__asking ? undefined : $1) ?? compileWater()'];
const MEMORIES = [
  ['packages/sim-core/src/physics/latest.ts', IF_KEPT],
  ['tests/examples.ts', IF_KEPT],
  ['packages/sim-core/src/physics/fluid/compile.ts', WATER],
  ['packages/sim-core/src/physics/loop/coil.ts', WATER],
];

/** Studies and input, what is before the year, and files that take longest for the little of it that they reach: what these alone notice is not counted. */
const NO_YEAR =
  /sim-core\/(study|input|define\/(?!measured)|advice\/(?!sizing\/sizing)|physics\/sun)\/|validation\/(measured|weather|whole-system|plane-of-array|transposition|subhourly|sizing|survey|fuels|heater-labels|trade|referee|seasonal)/;

const fromHere = createRequire(import.meta.url);
const seenFrom = (from, name) => createRequire(from).resolve(name);

/** Files of quick tests. */
export const testFiles = (root) =>
  TESTS.flatMap((folder) =>
    readdirSync(join(root, 'tests', folder), { recursive: true })
      .filter((name) => name.endsWith('.test.ts') && !name.endsWith('.long.test.ts'))
      .map((name) => join(root, 'tests', folder, name))
      .filter((path) => !NO_YEAR.test(path) && !APART.test(readFileSync(path, 'utf8'))),
  );

/** Writes the bundle. @returns names of its files of tests, as they lie in `out`. */
export async function bundle(root, out, texts, chosen, files = testFiles(root)) {
  const expectIn = seenFrom(fromHere.resolve('vitest/package.json'), '@vitest/expect');
  const asSource = {
    name: 'as source',
    setup(builder) {
      builder.onLoad({ filter: /\.ts$/ }, ({ path }) => {
        if (path.includes('node_modules')) return null;
        let contents = texts.has(path) ? thinned(texts.get(path), chosen) : readFileSync(path, 'utf8');
        // Files are looked for beside the source, not beside the bundle.
        contents = contents.replaceAll('import.meta.url', JSON.stringify(pathToFileURL(path).href));
        for (const [, [remembers, asks]] of MEMORIES.filter(([file]) => path.endsWith(file))) {
          const memory = contents.replaceAll(remembers, asks);
          if (memory === contents) throw new Error(`${path} no longer has ${remembers}`);
          contents = memory;
        }
        return { contents, loader: 'ts' };
      });
    },
  };
  await build({
    entryPoints: Object.fromEntries([
      ...files.map((path, at) => [`test-${at}`, path]),
      ['sources', join(root, 'packages/sim-core/src/year/simulate.ts')],
      ['judge', join(root, 'scripts/mutants/judge.mjs')],
    ]),
    outdir: out,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    minifySyntax: true,
    platform: 'node',
    format: 'esm',
    logLevel: 'error',
    // Of the checkout, for pages only: no change is in it.
    external: ['*/pack/live.mjs'],
    conditions: ['@noonloop/source'],
    plugins: [asSource],
    banner: {
      js: "import { createRequire as requireHere } from 'node:module'; const require = requireHere(import.meta.url);",
    },
    alias: {
      vitest: join(root, 'scripts/mutants/shim.mjs'),
      '@vitest/expect': expectIn,
      chai: seenFrom(expectIn, 'chai'),
    },
  });
  return files.map((path) => path.slice(join(root, 'tests').length + 1));
}
