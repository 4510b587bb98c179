// The command in one script: what a word needs is in it, and runs when it is asked for. Licences of what is in it stand beside it.
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { licencesOf } from './licences.mjs';
import { onlyNamed } from './only-named.mjs';

const here = dirname(fileURLToPath(import.meta.url));
const out = join(here, '../dist/command');

rmSync(out, { recursive: true, force: true });
const { metafile, outputFiles } = await build({
  entryPoints: [join(here, '../dist/cli/process.js')],
  write: false,
  bundle: true,
  minifySyntax: true,
  minifyWhitespace: true,
  format: 'cjs',
  platform: 'node',
  target: 'node20.19',
  // Pictures are drawn by the installed echarts; threads start from files of the installed core.
  external: ['echarts/*', '@noonloop/sim-core/node'],
  legalComments: 'none',
  metafile: true,
  plugins: [onlyNamed(here)],
  define: { 'import.meta.url': 'urlHere' },
});

// One byte a character is read and parsed faster than two; esbuild leaves others in regular expressions alone, where the escape means the same.
const text = outputFiles[0].text
  .replace(/[^\0-\x7f]/g, (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`)
  // What is left to import is foreign; the caller does it, for a script has no loader of its own.
  .replaceAll(/\bimport\("/g, 'importHere("');
mkdirSync(out);
writeFileSync(
  join(out, 'noonloop.cjs'),
  `(function(require,importHere,urlHere){var module={};${text}\nreturn module.exports})`,
);
writeFileSync(join(out, 'licences.txt'), licencesOf(Object.keys(metafile.inputs)));
