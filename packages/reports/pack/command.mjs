// The command in a few files: what one word needs is read at one go, and no more than that. Licences of what is in them stand beside them.
import { existsSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';

const here = dirname(fileURLToPath(import.meta.url));
const out = join(here, '../dist/command');

rmSync(out, { recursive: true, force: true });
const { metafile } = await build({
  entryPoints: { noonloop: join(here, '../dist/cli/process.js') },
  outdir: out,
  bundle: true,
  splitting: true,
  minifySyntax: true,
  minifyWhitespace: true,
  format: 'esm',
  platform: 'node',
  target: 'node20.19',
  // Pictures are drawn by the installed echarts; threads start from files of the installed core.
  external: ['echarts/*', '@noonloop/sim-core/node'],
  legalComments: 'none',
  metafile: true,
  // Libraries written as CommonJS ask for modules of Node by `require`.
  banner: {
    js: "import { createRequire as requireHere } from 'node:module'; const require = requireHere(import.meta.url);",
  },
});

/** Folders of the foreign packages of which something is in the bundle. */
const packages = new Set(
  Object.keys(metafile.inputs).flatMap((file) => /^.*\/node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(file)?.[0] ?? []),
);
const licences = [...packages].map((folder) => {
  const { name, version } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const files = readdirSync(folder).filter((file) => /^(licen[cs]e|notice)/i.test(file));
  return [`${name} ${version}`, ...files.map((file) => readFileSync(join(folder, file), 'utf8').trim())].join('\n\n');
});
const units = join(here, '../../sim-core/dist/input/units-licences.txt');
if (existsSync(units)) licences.push(readFileSync(units, 'utf8').trim());
writeFileSync(join(out, 'licences.txt'), `${licences.sort().join('\n\n\n')}\n`);
