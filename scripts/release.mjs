// Publishes the packages, or does all of it but the publishing:
//     node scripts/release.mjs --dry-run      what continuous integration runs; asks no registry
//     node scripts/release.mjs                after `npx changeset version`, committed, from a clean clone; asks npm for your rights
//     node scripts/release.mjs --provenance   in continuous integration that can vouch for the build (npm's provenance)
import { execFileSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pack, root, run } from './packages/run.mjs';

/** In the order in which one needs the other. */
const ORDER = ['weather-io', 'sim-core', 'reports'];

const dry = process.argv.includes('--dry-run');
const faults = [];

const manifests = ORDER.map((name) => JSON.parse(readFileSync(join(root, 'packages', name, 'package.json'), 'utf8')));
const versions = [...new Set(manifests.map(({ version }) => version))];
if (versions.length !== 1) faults.push(`one version for all packages, not ${versions.join(', ')}`);
for (const name of ORDER) {
  const log = readFileSync(join(root, 'packages', name, 'CHANGELOG.md'), 'utf8');
  if (!log.includes(`## ${versions[0]}\n`)) faults.push(`packages/${name}/CHANGELOG.md says nothing of ${versions[0]}`);
}
for (const { name, license, author, keywords, description } of manifests)
  if (!license || !author || !description || !(keywords?.length > 0)) faults.push(`${name} lacks metadata`);
if (!dry) {
  const waiting = readdirSync(join(root, '.changeset')).filter((file) => file.endsWith('.md') && file !== 'README.md');
  if (waiting.length > 0) faults.push(`${waiting.length} changes wait in .changeset: run npx changeset version`);
  if (execFileSync('git', ['status', '--porcelain'], { cwd: root, encoding: 'utf8' }) !== '')
    faults.push('a clean clone: something here is not committed');
}
if (faults.length > 0) throw new Error(`not released; expected\n  ${faults.join('\n  ')}`);

const packed = process.argv.includes('--packed') && existsSync(join(root, '.pack'));
const tarballs = packed ? readdirSync(join(root, '.pack')).map((file) => join(root, '.pack', file)) : pack();
for (const name of ORDER) {
  const tarball = tarballs.find((file) => file.includes(`noonloop-${name}-`));
  const files = execFileSync('tar', ['-tzf', tarball], { encoding: 'utf8' });
  for (const file of ['CHANGELOG.md', 'LICENSE', 'README.md', 'package.json'])
    if (!files.includes(`package/${file}\n`)) throw new Error(`${tarball} holds no ${file}`);
  const options = ['--access', 'public', ...(process.argv.includes('--provenance') ? ['--provenance'] : [])];
  run('npm', ['publish', tarball, ...options, ...(dry ? ['--dry-run'] : [])]);
}
console.log(`${ORDER.length} packages, version ${versions[0]}: ${dry ? 'ready, nothing was published' : 'published'}`);
