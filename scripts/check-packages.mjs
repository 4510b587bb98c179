// Packs each package as it would be published and checks the tarballs: manifest, files and types, then installed into empty projects,
// then bundled for a browser. `NOONLOOP_NODES=22,24` runs the installed packages on these versions of Node too.
import { mkdirSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { checkBundles } from './packages/bundles.mjs';
import { checkInstalls } from './packages/installs.mjs';
import { pnpm, root, run } from './packages/run.mjs';

const packs = join(root, '.pack');

for (const name of readdirSync(join(root, 'packages')))
  rmSync(join(root, 'packages', name, 'dist'), { recursive: true, force: true });
rmSync(packs, { recursive: true, force: true });
mkdirSync(packs);

const pack = ['exec', 'npx', '--yes', pnpm, 'pack', '--pack-destination', packs];
run('npx', ['--yes', pnpm, '-r', '--filter', './packages/*', ...pack]);

const tarballs = readdirSync(packs)
  .filter((file) => file.endsWith('.tgz'))
  .map((file) => join(packs, file));
if (tarballs.length !== 3) throw new Error(`expected 3 tarballs in .pack, found ${tarballs.length}`);
for (const tarball of tarballs) {
  run(join(root, 'node_modules/.bin/publint'), ['--strict', tarball]);
  run(join(root, 'node_modules/.bin/attw'), ['--profile', 'esm-only', tarball]);
}

await checkInstalls(tarballs);
await checkBundles();
