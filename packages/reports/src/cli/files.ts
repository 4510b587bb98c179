// Files in and out: never more than allowed, never half, never elsewhere.
import { unlinkSync } from 'node:fs';
import { link, lstat, open, readFile, rename, stat, unlink } from 'node:fs/promises';
import { basename, dirname, join } from 'node:path';
import { EXIT, Refusal } from './exit-codes.ts';

/** Largest design or settings file: a year of minutes as a list fits. Judgement. [B] */
const MOST_BYTES = 16 * 1024 * 1024;

/** Text of a file that people write. */
export async function readText(path: string): Promise<string> {
  const refuse = (what: string) => new Refusal(EXIT.input, [`${path}: ${what}`]);
  try {
    const entry = await stat(path);
    if (entry.isDirectory()) throw refuse('expected a file, not a folder. Give the path of one file.');
    if (!entry.isFile()) throw refuse('expected a file, not a device or pipe. Give the path of one file.');
    if (entry.size > MOST_BYTES) {
      throw refuse(`found ${entry.size} bytes, expected at most ${MOST_BYTES}. This is no design or settings file.`);
    }
    const bytes = new Uint8Array(await readFile(path));
    try {
      return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    } catch {
      throw refuse('expected text in UTF-8. Save the file as UTF-8.');
    }
  } catch (error) {
    if (error instanceof Refusal) throw error;
    const code = (error as NodeJS.ErrnoException).code;
    if (code === 'ENOENT' || code === 'ENOTDIR') throw refuse('there is no such file. Correct the path.');
    if (code === undefined) throw error;
    throw refuse(`the file cannot be read (${code}). Check its permissions.`);
  }
}

/** Files that are there while something is written and must not stay behind. */
const temporary = new Set<string>();

/** Notes a file that a signal is to take away. */
const leaveNothing = (path: string): void => void temporary.add(path);

/** Takes it away now. */
export async function forget(path: string): Promise<void> {
  await unlink(path).catch(() => {});
  temporary.delete(path);
}

/** Takes all of them away, for a process that is ended from outside. */
export function forgetAll(): void {
  for (const path of temporary) {
    try {
      unlinkSync(path);
    } catch {
      // It is gone already.
    }
  }
}

/** A path that output may go to, and whether what is there may be replaced. */
export interface Target {
  readonly path: string;
  readonly force: boolean;
}

const refuseOutput = (path: string, what: string) => new Refusal(EXIT.output, [`${path}: ${what}`]);

/** Refuses a target before any work is done for it. */
export async function checkTarget({ path, force }: Target): Promise<void> {
  const folder = await stat(dirname(path)).catch(() => null);
  if (folder === null || !folder.isDirectory()) {
    throw refuseOutput(path, `there is no folder "${dirname(path)}". Make it first, or correct the path.`);
  }
  const there = await lstat(path).catch(() => null);
  if (there === null) return;
  if (!there.isFile()) throw refuseOutput(path, 'there is something that is no plain file. Choose another name.');
  if (!force) throw refuseOutput(path, 'this file exists already. Choose another name, or say --force.');
}

/**
 * Writes a file whole or not at all: beside the target first, then put in its place in one step. Without `force` a file that came
 * there meanwhile stays.
 */
export async function writeWhole(target: Target, text: string): Promise<void> {
  await checkTarget(target);
  const { path, force } = target;
  const { randomUUID } = await import('node:crypto');
  const part = join(dirname(path), `.${basename(path).slice(0, 100)}.${randomUUID()}.part`);
  leaveNothing(part);
  try {
    const file = await open(part, 'wx');
    try {
      await file.writeFile(text, 'utf8');
      await file.sync();
    } finally {
      await file.close();
    }
    if (force) await rename(part, path);
    else await putNew(part, path);
  } catch (error) {
    if (error instanceof Refusal) throw error;
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    if (code === 'EEXIST') throw refuseOutput(path, 'this file exists already. Choose another name, or say --force.');
    throw refuseOutput(path, `the file cannot be written (${code}). Check the folder's permissions and free space.`);
  } finally {
    await forget(part);
  }
}

/** A second name for the whole file, which fails where the name is taken; file systems without it are looked at first. */
async function putNew(part: string, path: string): Promise<void> {
  try {
    await link(part, path);
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code !== 'EPERM' && code !== 'ENOTSUP' && code !== 'ENOSYS' && code !== 'EOPNOTSUPP') throw error;
    await checkTarget({ path, force: false });
    await rename(part, path);
  }
}
