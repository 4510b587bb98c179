// Programs run by the package checks.
import { execFile, execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { promisify } from 'node:util';

/** The repository. */
export const root = fileURLToPath(new URL('../../', import.meta.url));

/** The package manager, at the version of the root's scripts. */
export const pnpm = /pnpm@[\d.]+/.exec(readFileSync(`${root}package.json`, 'utf8'))[0];

/** Runs a program whose words are shown as they come. */
export const run = (command, args, options = {}) =>
  execFileSync(command, args, { cwd: root, stdio: 'inherit', ...options });

/** Runs a program beside others; its words are shown when it fails. */
export async function quietly(command, args, options = {}) {
  try {
    const { stdout } = await promisify(execFile)(command, args, { cwd: root, maxBuffer: 1 << 26, ...options });
    return stdout;
  } catch (error) {
    throw new Error(`${command} ${args.join(' ')} failed\n${error.stdout ?? ''}${error.stderr ?? error}`);
  }
}

/** Packs the packages anew, as they would be published. @returns the three tarballs. */
export function pack() {
  const folder = join(root, '.pack');
  for (const name of readdirSync(join(root, 'packages')))
    rmSync(join(root, 'packages', name, 'dist'), { recursive: true, force: true });
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder);
  const one = ['exec', 'npx', '--yes', pnpm, 'pack', '--pack-destination', folder];
  run('npx', ['--yes', pnpm, '-r', '--filter', './packages/*', ...one]);
  const tarballs = readdirSync(folder)
    .filter((file) => file.endsWith('.tgz'))
    .map((file) => join(folder, file));
  if (tarballs.length !== 3) throw new Error(`expected 3 tarballs in .pack, found ${tarballs.length}`);
  return tarballs;
}
