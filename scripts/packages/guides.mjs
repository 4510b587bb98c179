// The guides that go from an empty folder to the last answer: their `sh` blocks, one after the other, each in a folder of the page.
import { execFile } from 'node:child_process';
import { mkdirSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { promisify } from 'node:util';

/** Pages whose commands run, from the root of the repository. */
export const GUIDES = ['docs/guides/owner.md', 'docs/guides/installer.md'];

/** Commands of a page: lines of its `sh` blocks, with those that go on over several lines, and `cat` with what it writes. */
export function commandsOf(page) {
  const blocks = [...page.matchAll(/^```sh\n([\s\S]*?)^```/gm)].map(([, block]) => block);
  return blocks.flatMap((block) => block.match(/^cat > .*<<'END'\n[\s\S]*?^END$|^(?:.*\\\n)*.+$/gm) ?? []);
}

/**
 * Runs the commands of a page in an empty folder. @param bin - Folder of `noonloop`. @param units - Those of the whole page.
 * @returns each command with what it took [s]; throws at the first that fails.
 */
export async function runGuide(root, guide, { folder, bin, units }) {
  const cwd = join(folder, `${guide.replaceAll('/', '-')}-${units}`);
  mkdirSync(cwd);
  const env = { ...process.env, PATH: `${bin}${delimiter}${process.env.PATH}`, NOONLOOP_UNITS: units };
  const times = [];
  for (const command of commandsOf(readFileSync(join(root, guide), 'utf8'))) {
    const from = performance.now();
    try {
      await promisify(execFile)('sh', ['-e', '-c', command], { cwd, env, maxBuffer: 1 << 26 });
    } catch (error) {
      throw new Error(`${guide}, ${units} units: ${command}\n${error.stdout ?? ''}${error.stderr ?? error}`);
    }
    times.push({ command, seconds: (performance.now() - from) / 1000 });
  }
  return { cwd, times };
}
