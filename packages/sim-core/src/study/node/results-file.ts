/** Rows in a file that only grows: JSON lines, each checked. */
import { type FileHandle, open } from 'node:fs/promises';
import { StudyError } from '../study-error.ts';
import type { ResultsStore, StudyPlan, StudyRow } from '../types.ts';
import { headerOf, type ResultsHeader, requireHeader, requireSameStudy } from './header.ts';
import { LINE_START, readLine, writeLine } from './lines.ts';
import { type Lock, lockFile } from './lock.ts';

/** Bytes read at once. */
const CHUNK = 1 << 16;
const NEWLINE = 10;

/** A whole line of a file, and where the next one starts. */
interface FileLine {
  readonly text: string;
  readonly number: number;
  readonly end: number;
}

/** Whole lines of a file; what follows the last line end is left out. Holds one line and one chunk. */
async function* wholeLines(file: FileHandle): AsyncGenerator<FileLine, void> {
  const chunk = new Uint8Array(CHUNK);
  const decoder = new TextDecoder();
  let rest = new Uint8Array(0);
  let place = 0;
  let start = 0;
  let number = 1;
  for (;;) {
    const { bytesRead } = await file.read(chunk, 0, CHUNK, place);
    if (bytesRead === 0) return;
    place += bytesRead;
    const bytes = new Uint8Array(rest.length + bytesRead);
    bytes.set(rest);
    bytes.set(chunk.subarray(0, bytesRead), rest.length);
    let from = 0;
    for (let at = bytes.indexOf(NEWLINE); at >= 0; at = bytes.indexOf(NEWLINE, from)) {
      yield { text: decoder.decode(bytes.subarray(from, at)), number: number++, end: start + at + 1 };
      from = at + 1;
    }
    start += from;
    rest = bytes.slice(from);
  }
}

/** A header and the rows behind it. Rows are read as they are asked for. */
interface OpenResults {
  readonly header: ResultsHeader | null;
  /** Rows in order; `end` of the last one read is where the sound part of the file ends. */
  readonly rows: AsyncGenerator<{ readonly row: StudyRow; readonly end: number }, void>;
  readonly headerEnd: number;
}

async function openResults(path: string, file: FileHandle): Promise<OpenResults> {
  const lines = wholeLines(file);
  const { done, value: first } = await lines.next();
  if (done) {
    // A crash may have torn the header itself; anything else without a line end is not ours to overwrite.
    const start = new Uint8Array(LINE_START.length);
    const { bytesRead } = await file.read(start, 0, start.length, 0);
    const text = new TextDecoder().decode(start.subarray(0, bytesRead));
    if (!LINE_START.startsWith(text)) requireHeader(path, null);
    return { header: null, headerEnd: 0, rows: (async function* () {})() };
  }
  const header = requireHeader(path, readLine(first.text, 'header'));
  async function* rows() {
    let next = header.first;
    for await (const { text, number, end } of lines) {
      const row = readLine(text, 'row') as StudyRow | null;
      const place = `${path} line ${number}`;
      if (row === null) {
        const remedy = 'The file was damaged or edited. Delete this line and all behind it to go on from there.';
        throw new StudyError(place, 'a line that does not fit its checksum', 'a line as it was written', remedy);
      }
      if (row.index !== next || next >= header.first + header.count) {
        const remedy = 'Delete this line and all behind it to go on from there.';
        throw new StudyError(
          place,
          `row ${row.index}`,
          next < header.first + header.count ? `row ${next}` : 'the end',
          remedy,
        );
      }
      next++;
      yield { row, end };
    }
  }
  return { header, headerEnd: first.end, rows: rows() };
}

/**
 * Keeps the rows of a study in a file, so that it may go on after a crash: pass it as `store`. The file only grows; each row is
 * handed on only after it was written. A last line that a crash has torn is dropped; any other line that does not fit its
 * checksum, and a file of another study, is refused.
 *
 * @param path - Of the file; made if it is not there.
 * @returns A store for one run at a time.
 */
export function resultsFile(path: string): ResultsStore {
  let file: FileHandle | null = null;
  let lock: Lock | null = null;
  const end = async () => {
    const [handle, held] = [file, lock];
    file = null;
    lock = null;
    await handle?.close();
    held?.release();
  };
  return {
    open: async (plan: StudyPlan) => {
      lock = await saying(path, lockFile(path));
      try {
        const handle = await saying(path, open(path, 'a+'));
        file = handle;
        const header = headerOf(plan);
        const kept = await openResults(path, handle);
        if (kept.header !== null) requireSamePart(path, kept.header, header);
        else {
          await handle.truncate(0);
          await saying(path, handle.appendFile(writeLine('header', header)));
        }
        return (async function* () {
          let end = kept.header === null ? (await handle.stat()).size : kept.headerEnd;
          for await (const { row, end: behind } of kept.rows) {
            end = behind;
            yield row;
          }
          if ((await handle.stat()).size > end) await handle.truncate(end);
        })();
      } catch (error) {
        await end();
        throw error;
      }
    },
    append: async (rows) => {
      if (file !== null) await saying(path, file.appendFile(rows.map((row) => writeLine('row', row)).join('')));
    },
    close: end,
  };
}

/** What the system refuses, such as a full disk, as an error of the study. */
function inWords(path: string, error: unknown): unknown {
  const { code } = error as NodeJS.ErrnoException;
  if (error instanceof StudyError || code === undefined) return error;
  const remedy = 'Check free space and permissions, then run the study again: it goes on behind its last whole row.';
  return new StudyError(path, `that it cannot be written (${code})`, 'a file to write rows to', remedy, 'file');
}

const saying = <T>(path: string, work: Promise<T>): Promise<T> =>
  work.catch((error: unknown) => Promise.reject(inWords(path, error)));

function requireSamePart(path: string, found: ResultsHeader, expected: ResultsHeader): void {
  requireSameStudy(path, found, expected);
  const part = ({ shard, count }: ResultsHeader): string =>
    `${shard === null ? 'the whole study' : `part ${shard.index} of ${shard.count}`}, ${count} designs`;
  if (part(found) === part(expected) && found.first === expected.first) return;
  throw new StudyError(
    path,
    part(found),
    part(expected),
    'Give each part, and a search of another length, a file of its own.',
  );
}

/** A results file to read from: its rows, up to its last whole line. Each loop reads it anew. */
export interface ReadResults extends AsyncIterable<StudyRow> {
  /** What the file says of itself. */
  readonly header: ResultsHeader;
}

/**
 * Reads a results file, row by row and with bounded memory: for `study.analyse`, `frontier` or tables of your own. It may be read
 * while a study is still writing it.
 *
 * @param path - Of the file.
 * @throws StudyError when it is no results file, and while reading at a line that is not as it was written.
 */
export async function readResults(path: string): Promise<ReadResults> {
  async function* contents() {
    const file = await open(path, 'r');
    try {
      const { header, rows } = await openResults(path, file);
      yield header ?? requireHeader(path, null);
      for await (const { row } of rows) yield row;
    } finally {
      await file.close();
    }
  }
  const start = contents();
  const { value } = await start.next();
  await start.return();
  return {
    header: value as ResultsHeader,
    async *[Symbol.asyncIterator]() {
      const all = contents();
      await all.next();
      yield* all as AsyncGenerator<StudyRow, void>;
    },
  };
}
