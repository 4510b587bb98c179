/** Runs the designs of a study, a bounded number at once, and hands out their rows in order. */
import { inThisThread } from './in-process.ts';
import { keepProgress } from './progress.ts';
import { StudyError } from './study-error.ts';
import type { RunOptions, StudyCase, StudyPlan, StudyRow } from './types.ts';

/** A run under way: its store is open, its rows are counted. */
interface Session {
  /** Rows of designs `from` up to but not `to`, in order: those that the store has, then the rest. Ask for them in order. */
  readonly rows: (from: number, to: number) => AsyncGenerator<StudyRow, void>;
  /** Ends the writing. */
  readonly close: () => Promise<void>;
}

/**
 * Opens a run. No more designs than the runner's tasks are under way or waiting to be taken, however long the study is and
 * however slow the reader.
 *
 * @throws StudyError when the store belongs to another study; the reason of the signal when it has ended the study.
 */
export async function openSession(
  plan: StudyPlan,
  caseAt: (index: number) => StudyCase,
  options: RunOptions,
): Promise<Session> {
  const { runner = inThisThread(), signal, store } = options;
  signal?.throwIfAborted();
  const progress = keepProgress(plan.count, options.onProgress);
  let kept = store === undefined ? null : (await store.open(plan))[Symbol.asyncIterator]();

  async function* readBack(from: number, to: number): AsyncGenerator<StudyRow, number> {
    let next = from;
    while (kept !== null && next < to) {
      const { done, value: row } = await kept.next();
      if (done) {
        kept = null;
        break;
      }
      signal?.throwIfAborted();
      requireSame(row, caseAt(next));
      next++;
      progress.readBack(row);
      yield row;
    }
    return next;
  }

  return {
    async *rows(from, to) {
      let next = yield* readBack(from, to);
      const size = runner.designsPerTask(to - next);
      const waiting: Promise<StudyRow[]>[] = [];
      const fill = (): void => {
        while (next < to && waiting.length < runner.tasks) {
          const cases = Array.from({ length: Math.min(size, to - next) }, (_, at) => caseAt(next + at));
          next += cases.length;
          const rows = runner.run({ cases, weathers: plan.weathers, request: plan.request });
          rows.catch(() => {}); // told to whoever awaits it; nobody may, once the study was left
          waiting.push(rows);
        }
      };
      fill();
      while (waiting.length > 0) {
        const rows = await orAborted(waiting.shift()!, signal);
        fill();
        await store?.append(rows);
        for (const row of rows) {
          signal?.throwIfAborted();
          progress.simulated(row);
          yield row;
        }
      }
    },
    close: async () => {
      await kept?.return?.();
      await store?.close();
    },
  };
}

/** Rows of a plan in order, whatever the number of threads. */
export async function* executePlan(
  plan: StudyPlan,
  caseAt: (index: number) => StudyCase,
  options: RunOptions,
): AsyncGenerator<StudyRow, void> {
  const session = await openSession(plan, caseAt, options);
  try {
    yield* session.rows(plan.first, plan.first + plan.count);
  } finally {
    await session.close();
  }
}

/** @throws StudyError unless a row that was read back is that of the design in its place. */
function requireSame(row: StudyRow, here: StudyCase): void {
  if (row.index === here.index && row.weather === here.weather && sameData(row.inputs, here.inputs)) return;
  throw new StudyError(
    'results',
    `row ${row.index} with ${JSON.stringify(row.inputs)}`,
    `row ${here.index} with ${JSON.stringify(here.inputs)}`,
    'The file is of another study: give this one a file of its own.',
  );
}

const sameData = (one: unknown, other: unknown): boolean => JSON.stringify(one) === JSON.stringify(other);

/** What comes first: the promise, or the end of the study. */
async function orAborted<T>(promise: Promise<T>, signal: AbortSignal | undefined): Promise<T> {
  if (signal === undefined) return promise;
  signal.throwIfAborted();
  let stop = (): void => {};
  const aborted = new Promise<never>((_, reject) => {
    stop = () => reject(signal.reason);
    signal.addEventListener('abort', stop, { once: true });
  });
  try {
    return await Promise.race([promise, aborted]);
  } finally {
    signal.removeEventListener('abort', stop);
  }
}
