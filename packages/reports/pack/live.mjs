// Bundles the two scripts of the live page: the engine that runs years, and the page that turns knobs. With --dist they are put
// into dist/live/bundles.js, in place of the module that makes them from the sources.
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { licencesOf } from './licences.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../../..');
const core = join(root, 'packages/sim-core');

/** Words of the schema that the page does not say. */
const UNSAID = new Set([
  'pattern',
  'maxLength',
  'default',
  'type',
  'required',
  'additionalProperties',
  '$schema',
  '$id',
  'title',
]);
const said = (name, value) =>
  typeof value === 'string' && name === 'description'
    ? value.replace(/ ?(?:Default|Left out, it follows)\b.*$/, '')
    : UNSAID.has(name) && (typeof value !== 'object' || Array.isArray(value))
      ? undefined
      : value;

/** What a page does not need is left out: units beside the unit class, as a packed sim-core has them; the half of a library's one file. */
const smaller = {
  name: 'smaller',
  setup(step) {
    step.onResolve({ filter: /\/units\.ts$/ }, ({ importer }) =>
      importer.startsWith(join(core, 'src/input')) ? { path: join(core, 'pack/unit-class.ts') } : undefined,
    );
    // Its modules one by one, of which four are used.
    step.onResolve({ filter: /^ml-matrix$/ }, ({ resolveDir }) => ({
      path: join(dirname(createRequire(join(resolveDir, 'x.js')).resolve('ml-matrix')), 'src/index.js'),
      sideEffects: false,
    }));
    step.onLoad({ filter: /design-1\.json$/ }, ({ path }) => ({
      contents: JSON.stringify(JSON.parse(readFileSync(path, 'utf8')), said),
      loader: 'json',
    }));
  },
};

/** One script of the page as text, with the licences of what is in it. */
async function script(entry) {
  const { metafile, outputFiles } = await build({
    entryPoints: [entry],
    bundle: true,
    write: false,
    metafile: true,
    absWorkingDir: root,
    minify: true,
    format: 'iife',
    platform: 'browser',
    target: 'es2022',
    conditions: ['@noonloop/source'],
    external: ['node:*'], // reading files by path, which a page never does
    legalComments: 'none',
    logLevel: 'silent',
    plugins: [smaller],
  });
  return {
    text: outputFiles[0].text,
    licences: licencesOf(
      Object.entries(Object.values(metafile.outputs)[0].inputs)
        .flatMap(([file, { bytesInOutput }]) => (bytesInOutput > 0 ? [file] : []))
        .map((file) => join(root, file)),
    ),
  };
}

/** Script of a page of the folder src/live/page. */
export const bundle = (name) => script(join(here, `../src/live/page/${name}.ts`));

/** Any other script that is made of the same parts. */
export const bundleFile = script;

if (process.argv.includes('--dist')) {
  const [worker, page] = await Promise.all(['worker', 'page'].map(bundle));
  const out = join(here, '../dist/live/bundles.js');
  writeFileSync(
    out,
    `const SCRIPTS = ${JSON.stringify({ worker, page })};\nexport const liveScript = async (name) => SCRIPTS[name];\n`,
  );
}
