import type { StudyProgress, StudyRow } from './types.ts';

/** Counts rows and tells how long the rest will take. */
interface ProgressKeeper {
  /** Counts a row that was simulated. */
  readonly simulated: (row: StudyRow) => void;
  /** Counts a row that was read back. */
  readonly readBack: (row: StudyRow) => void;
}

/**
 * Starts counting.
 *
 * @param total - Rows to come.
 * @param tell - Called after each row.
 */
export function keepProgress(total: number, tell: ((progress: StudyProgress) => void) | undefined): ProgressKeeper {
  const start = performance.now();
  let done = 0;
  let failed = 0;
  let resumed = 0;
  const count = (row: StudyRow): void => {
    done++;
    if (row.error !== undefined) failed++;
    if (tell === undefined) return;
    const elapsed = (performance.now() - start) / 1000;
    const rate = done > resumed && elapsed > 0 ? (done - resumed) / elapsed : 0;
    tell({ done, total, failed, resumed, elapsed, rate, timeLeft: rate > 0 ? (total - done) / rate : null });
  };
  return {
    simulated: count,
    readBack: (row) => {
      resumed++;
      count(row);
    },
  };
}
