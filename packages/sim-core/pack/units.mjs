// Puts the unit class alone in the place of dist/input/units.js, with the licences of what it is made of.
import { existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const mathjs = createRequire(import.meta.url).resolve('mathjs/package.json');
const fraction = createRequire(mathjs).resolve('fraction.js/package.json');
const out = join(here, '../dist/input');

await build({
  entryPoints: [join(here, 'unit-class.ts')],
  outfile: join(out, 'units.js'),
  bundle: true,
  format: 'esm',
  platform: 'neutral',
  mainFields: ['module', 'main'],
  target: 'es2023',
  minify: true,
  legalComments: 'none',
  banner: {
    js: '// The unit class of mathjs and the fractions that it counts by; licences: units-licences.txt beside this file.',
  },
});
rmSync(join(out, 'units.js.map'), { force: true });

const licence = (manifest) => {
  const { name, version } = JSON.parse(readFileSync(manifest, 'utf8'));
  const texts = ['LICENSE', 'NOTICE'].map((file) => join(dirname(manifest), file)).filter(existsSync);
  return [`${name} ${version}`, ...texts.map((file) => readFileSync(file, 'utf8').trim())].join('\n\n');
};
writeFileSync(join(out, 'units-licences.txt'), `${[mathjs, fraction].map(licence).join('\n\n\n')}\n`);
