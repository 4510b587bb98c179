// Bytes of a file, never more than allowed. `node:fs` is loaded only here, so that the package runs in a browser.
import { type Faults, quote } from './errors.ts';

/** Bytes asked for at a time. */
const CHUNK = 1 << 20;

/** A file or text that is larger than allowed. */
export function failSize(size: string, most: number, faults: Faults): never {
  const remedy = 'Choose one year in hours or half hours, or raise the option maxBytes.';
  const mebibytes = most / 1024 ** 2;
  const expected = Number.isInteger(mebibytes) ? `at most ${mebibytes} MiB` : `at most ${most} bytes`;
  return faults.fail({ code: 'too-large', value: size, expected, remedy });
}

/**
 * Bytes of a file. Its size is looked at first; since a file may be longer than it says (it grows, or the system does not know), it
 * is read in pieces and given up as soon as it passes the limit.
 */
export async function readBytes(path: string, most: number, faults: Faults): Promise<Uint8Array> {
  const { open, stat } = await import('node:fs/promises');
  try {
    // Looked at before it is opened: opening a pipe would wait for its other end.
    const entry = await stat(path);
    if (!entry.isFile()) {
      const expected = `a file, not ${entry.isDirectory() ? 'a folder' : 'a device or pipe'}`;
      faults.fail({ code: 'not-a-file', expected, remedy: 'Give the path of one file.' });
    }
    if (entry.size > most) failSize(`${entry.size} bytes`, most, faults);
    const file = await open(path, 'r');
    try {
      return await readUpTo(file, entry.size, most, faults);
    } finally {
      await file.close();
    }
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    if (code === 'ENOENT' || code === 'ENOTDIR') {
      faults.fail({ code: 'not-found', expected: 'a file at this path', remedy: 'Correct the path.' });
    }
    return faults.fail({
      code: 'unreadable',
      value: quote(code),
      expected: 'a file that may be read',
      remedy: 'Check its permissions.',
    });
  }
}

/** What can be read from. */
interface Readable {
  read(into: Uint8Array, offset: number, length: number): Promise<{ readonly bytesRead: number }>;
}

async function readUpTo(file: Readable, expected: number, most: number, faults: Faults): Promise<Uint8Array> {
  let bytes = new Uint8Array(Math.min(expected, most) + 1);
  let length = 0;
  for (;;) {
    if (length === bytes.length) {
      const longer = new Uint8Array(Math.min(Math.max(2 * length, CHUNK), most + 1));
      longer.set(bytes);
      bytes = longer;
    }
    const { bytesRead } = await file.read(bytes, length, Math.min(CHUNK, bytes.length - length));
    if (bytesRead === 0) return bytes.subarray(0, length);
    length += bytesRead;
    if (length > most) failSize(`more than ${most} bytes`, most, faults);
  }
}
