// Programs run by the package checks.
import { execFile, execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
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
