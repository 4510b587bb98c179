// The command in one file: what a word needs is in it, and runs when it is asked for. Licences of what is in it stand beside it.
import { rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { licencesOf } from './licences.mjs';
import { onlyNamed } from './only-named.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const out = join(here, '../dist/command');

rmSync(out, { recursive: true, force: true });
const { metafile } = await build({
  entryPoints: { noonloop: join(here, '../dist/cli/process.js') },
  outdir: out,
  bundle: true,
  minifySyntax: true,
  minifyWhitespace: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  // Pictures are drawn by the installed echarts; threads start from files of the installed core.
  external: ['echarts/*', '@noonloop/sim-core/node'],
  legalComments: 'none',
  metafile: true,
  plugins: [onlyNamed(here)],
  // Libraries written as CommonJS ask for modules of Node by `require`.
  banner: {
    js: "import { createRequire as requireHere } from 'node:module'; const require = requireHere(import.meta.url);",
  },
});

writeFileSync(join(out, 'licences.txt'), licencesOf(Object.keys(metafile.inputs)));
