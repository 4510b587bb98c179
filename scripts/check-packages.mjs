// Packs each package as it would be published and checks the tarballs: manifest, files, types under both resolutions.
import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const packs = `${root}.pack`;
const run = (command, args, options = {}) => execFileSync(command, args, { cwd: root, stdio: 'inherit', ...options });

for (const name of readdirSync(`${root}packages`))
  rmSync(`${root}packages/${name}/dist`, { recursive: true, force: true });
rmSync(packs, { recursive: true, force: true });
mkdirSync(packs);

const pnpm = /pnpm@[\d.]+/.exec(readFileSync(`${root}package.json`, 'utf8'))[0];
run('npx', [
  '--yes',
  pnpm,
  '-r',
  '--filter',
  './packages/*',
  'exec',
  'npx',
  '--yes',
  pnpm,
  'pack',
  '--pack-destination',
  packs,
]);

const tarballs = readdirSync(packs).filter((file) => file.endsWith('.tgz'));
if (tarballs.length !== 3) throw new Error(`expected 3 tarballs in .pack, found ${tarballs.length}`);
for (const tarball of tarballs) {
  run('node_modules/.bin/publint', ['--strict', `${packs}/${tarball}`]);
  run('node_modules/.bin/attw', ['--profile', 'esm-only', `${packs}/${tarball}`]);
}
