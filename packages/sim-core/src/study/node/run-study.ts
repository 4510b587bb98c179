import { mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import type { Study } from '../study.ts';
import type { RunOptions } from '../types.ts';
import { progressBar } from './bar.ts';
import { startPool } from './pool.ts';
import { resultsFile } from './results-file.ts';

/** Options of {@link runStudy}. */
export interface RunStudyOptions extends Pick<RunOptions, 'signal' | 'onProgress'> {
  /** Threads. Default: as many as the job was given (see `startPool`); 1: none besides this one. */
  readonly workers?: number;
  /** Results file; where it is there already the study goes on behind its rows. Default: none. */
  readonly file?: string;
  /** Whether to draw a bar where the error output is a terminal. Default true. */
  readonly bar?: boolean;
}

/**
 * Runs a study with all that a machine offers: threads, a results file, a bar in the terminal.
 *
 * @param study - From `compare`, `sweep`, `sensitivity`, `uncertainty`, `shard` or `bestOf`.
 * @param options - See {@link RunStudyOptions}.
 * @returns What the study is for: its rows, indices, percentiles or best design.
 * @throws StudyError when the results file belongs to another study or was damaged; the reason of the signal when it ends the study.
 */
export async function runStudy<Outcome>(
  study: Pick<Study<Outcome>, 'outcome'>,
  options: RunStudyOptions = {},
): Promise<Outcome> {
  const { workers, file, bar: wantsBar = true, signal, onProgress } = options;
  if (file !== undefined) await mkdir(dirname(file), { recursive: true });
  const pool = workers === 1 ? null : startPool(workers === undefined ? {} : { workers });
  const bar = wantsBar ? progressBar() : null;
  try {
    return await study.outcome({
      ...(pool === null ? {} : { runner: pool }),
      ...(file === undefined ? {} : { store: resultsFile(file) }),
      ...(signal === undefined ? {} : { signal }),
      onProgress: (progress) => {
        bar?.onProgress(progress);
        onProgress?.(progress);
      },
    });
  } finally {
    bar?.stop();
    await pool?.close();
  }
}
