// Packs each package as it would be published and checks the tarballs: manifest, files and types, then installed into empty projects,
// then bundled for a browser; `--write` puts the sizes into docs/guides/sizes-and-speeds.md. `NOONLOOP_NODES=22,24` runs the installed packages on these versions of Node too.
import { join } from 'node:path';
import { checkBundles } from './packages/bundles.mjs';
import { checkInstalls } from './packages/installs.mjs';
import { pack, root, run } from './packages/run.mjs';
import { checkSizesPage } from './packages/sizes-page.mjs';

const tarballs = pack();
for (const tarball of tarballs) {
  run(join(root, 'node_modules/.bin/publint'), ['--strict', tarball]);
  run(join(root, 'node_modules/.bin/attw'), ['--profile', 'esm-only', tarball]);
}
run('node', ['scripts/release.mjs', '--dry-run', '--packed']);

const installed = await checkInstalls(tarballs);
checkSizesPage([...(await checkBundles()), ...installed]);
