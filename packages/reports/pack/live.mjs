// Bundles the two scripts of the live page: the engine that runs years, and the page that turns knobs. With --dist they are put
// into dist/live/bundles.js, in place of the module that makes them from the sources.
import { writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { licencesOf } from './licences.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const root = join(here, '../../..');
const core = join(root, 'packages/sim-core');

/** Units by the unit class alone, as a packed sim-core has them. */
const smallUnits = {
  name: 'small-units',
  setup(step) {
    step.onResolve({ filter: /\/units\.ts$/ }, ({ importer, kind }) =>
      kind !== 'entry-point' && importer.startsWith(join(core, 'src/input'))
        ? { path: join(core, 'pack/unit-class.ts') }
        : undefined,
    );
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
    plugins: [smallUnits],
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
