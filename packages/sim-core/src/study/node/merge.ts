import { unlinkSync } from 'node:fs';
import { open, rename } from 'node:fs/promises';
import { StudyError } from '../study-error.ts';
import { type ResultsHeader, requireSameStudy } from './header.ts';
import { writeLine } from './lines.ts';
import { type ReadResults, readResults } from './results-file.ts';

/** Rows written at once. */
const BATCH = 500;

/**
 * Puts the results files of all shards together, into the very bytes that the whole study would have written in one run.
 *
 * @param paths - Of the shards' files, in any order.
 * @param target - File to be written; it appears when it is complete.
 * @returns What the file says of itself.
 * @throws StudyError when a file belongs to another study, or parts are missing, doubled or not finished; all of them are named.
 */
export async function mergeResults(paths: readonly string[], target: string): Promise<ResultsHeader> {
  const parts: { path: string; file: ReadResults }[] = [];
  for (const path of paths) parts.push({ path, file: await readResults(path) });
  const first = parts[0]?.file.header;
  if (first === undefined) throw new StudyError('paths', 'no file', 'the files of all shards', 'Name them.');
  for (const { path, file } of parts) requireSameStudy(path, file.header, first);
  parts.sort(
    (one, other) => one.file.header.first - other.file.header.first || one.file.header.count - other.file.header.count,
  );
  requireCovered(parts, first.total);

  const header: ResultsHeader = { ...first, shard: null, first: 0, count: first.total };
  const draft = `${target}.part`;
  const output = await open(draft, 'w');
  const forget = () => unlinkSync(draft);
  process.on('exit', forget);
  let isWhole = false;
  try {
    await output.appendFile(writeLine('header', header));
    for (const { path, file } of parts) {
      let lines: string[] = [];
      let rows = 0;
      for await (const row of file) {
        rows++;
        lines.push(writeLine('row', row));
        if (lines.length === BATCH) {
          await output.appendFile(lines.join(''));
          lines = [];
        }
      }
      await output.appendFile(lines.join(''));
      if (rows < file.header.count) {
        const remedy = 'Run this shard again: it goes on where it stopped.';
        throw new StudyError(path, `${rows} rows`, `${file.header.count} rows`, remedy);
      }
    }
    await output.sync();
    isWhole = true;
  } finally {
    await output.close();
    process.off('exit', forget);
    if (!isWhole) forget();
  }
  await rename(draft, target);
  return header;
}

function requireCovered(parts: readonly { path: string; file: ReadResults }[], total: number): void {
  let next = 0;
  const gaps: string[] = [];
  for (const { path, file } of parts) {
    const { count, first } = file.header;
    if (first < next && count > 0) gaps.push(`rows ${first} to ${Math.min(next, first + count) - 1} twice (${path})`);
    if (first > next) gaps.push(`no rows ${next} to ${first - 1}`);
    next = Math.max(next, first + count);
  }
  if (next < total) gaps.push(`no rows ${next} to ${total - 1}`);
  if (gaps.length === 0) return;
  throw new StudyError(
    'paths',
    gaps.join('; '),
    `rows 0 to ${total - 1} once`,
    'Give the file of every shard, each once.',
  );
}
