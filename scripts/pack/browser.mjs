// One file a package for pages without a bundler: what an import map points to. Run by each package's prepack, in its folder.
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';
import { licencesOf } from '../../packages/reports/pack/licences.mjs';

const folder = process.cwd();
const { name, exports } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
const entries = {
  '@noonloop/weather-io': { index: '.', calendar: './calendar', sun: './sun' },
  '@noonloop/sim-core': { index: '.', formulas: './formulas' },
};

rmSync(join(folder, 'dist/browser'), { recursive: true, force: true });
const { metafile } = await build({
  entryPoints: Object.fromEntries(
    Object.entries(entries[name] ?? { index: '.' }).map(([file, path]) => [file, join(folder, exports[path].default)]),
  ),
  outdir: join(folder, 'dist/browser'),
  bundle: true,
  splitting: true,
  minify: true,
  format: 'esm',
  platform: 'browser',
  target: 'es2023',
  // The packages find each other, and the charts, by the page's import map. Files are read by path in Node alone.
  external: ['@noonloop/*', 'echarts/*', 'node:*'],
  legalComments: 'none',
  metafile: true,
});
writeFileSync(join(folder, 'dist/browser/licences.txt'), licencesOf(Object.keys(metafile.inputs)));
