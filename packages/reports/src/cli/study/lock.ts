// One process at a time writes a file of rows.
import { EXIT, Refusal } from '../exit-codes.ts';
import { forget, markPlace, readText } from '../files.ts';

/** Holds a file for a piece of work; another process that wants it is refused. */
export async function holding<T>(path: string, work: () => Promise<T>): Promise<T> {
  const lock = `${path}.lock`;
  await take(lock, path);
  try {
    return await work();
  } finally {
    await forget(lock);
  }
}

async function take(lock: string, path: string): Promise<void> {
  for (let attempt = 0; attempt < 2; attempt++) {
    if (await markPlace(lock, String(process.pid))) return;
    const owner = Number(await readText(lock).catch(() => ''));
    if (owner > 0 && isRunning(owner)) {
      const words = `process ${owner} is writing rows there. Wait for it, or give this one a file of its own.`;
      throw new Refusal(EXIT.output, [`${path}: ${words}`]);
    }
    // Whoever held it is gone.
    await forget(lock);
  }
  throw new Refusal(EXIT.output, [`${path}: another process holds it. Try again, or delete ${lock}.`]);
}

function isRunning(id: number): boolean {
  try {
    process.kill(id, 0);
    return true;
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === 'EPERM';
  }
}
