import { executePlan } from './execute.ts';
import { issue, refuse } from './request.ts';
import type { RunOptions, StudyCase, StudyPlan, StudyRow } from './types.ts';

/** Designs to be simulated, and what is made of their rows. Nothing runs before it is asked to. */
export interface Study<Outcome = readonly StudyRow[], Row extends StudyRow = StudyRow>
  extends StudyPlan,
    AsyncIterable<Row> {
  /** The design in a place of the whole study, 0 for the first. */
  readonly caseAt: (index: number) => StudyCase;
  /** Simulates and hands out row after row, in order; `for await (const row of study)` does so with the default options. */
  readonly run: (options?: RunOptions) => AsyncGenerator<Row, void>;
  /** What the study is for, from rows that `run` gave or that a file kept. */
  readonly analyse: (rows: Iterable<StudyRow> | AsyncIterable<StudyRow>) => Promise<Outcome>;
  /** Simulates and analyses. */
  readonly outcome: (options?: RunOptions) => Promise<Outcome>;
}

/** What a kind of study has to say. */
interface StudyParts<Outcome> extends Pick<StudyPlan, 'kind' | 'description' | 'weathers' | 'request' | 'total'> {
  readonly caseAt: (index: number) => StudyCase;
  readonly analyse: Study<Outcome>['analyse'];
}

/** A whole study. */
export const makeStudy = <Outcome>(parts: StudyParts<Outcome>): Study<Outcome> =>
  complete({ ...parts, first: 0, count: parts.total, shard: null });

function complete<Outcome>(parts: StudyParts<Outcome> & StudyPlan): Study<Outcome> {
  const run = (options: RunOptions = {}) => executePlan(parts, parts.caseAt, options);
  return {
    ...parts,
    run,
    outcome: (options) => parts.analyse(run(options)),
    [Symbol.asyncIterator]: () => run(),
  };
}

/** Rows as a list. */
export async function collectRows(rows: Iterable<StudyRow> | AsyncIterable<StudyRow>): Promise<readonly StudyRow[]> {
  const list: StudyRow[] = [];
  for await (const row of rows) list.push(row);
  return list;
}

/**
 * One part of a study, to be run on a machine of its own: neighbouring designs, the parts as equal as can be. Their results files
 * are put together by `mergeResults` of `@noonloop/sim-core/node` into the file that the whole study would have written.
 *
 * @param study - Made in the same way on every machine.
 * @param index - Which part, 0 to `count` − 1.
 * @param count - How many parts, 1 to 100 000; parts may be empty where there are more of them than designs.
 * @throws {@link DesignError} for an index or count out of range, or a study that is a shard already.
 */
export function shard(study: Study<unknown>, index: number, count: number): Study {
  const isCount = Number.isInteger(count) && count >= 1 && count <= 100_000;
  refuse([
    ...(isCount ? [] : [issue('count', count, 'a whole number from 1 to 100000', 'Give the number of parts.')]),
    ...(Number.isInteger(index) && index >= 0 && (!isCount || index < count)
      ? []
      : [issue('index', index, 'a whole number from 0 to count − 1', 'Parts are counted from 0.')]),
    ...(study.shard === null ? [] : [issue('study', 'a shard', 'a whole study', 'Cut the whole study once.')]),
  ]);
  // Products stay exact up to 9e15; 1e5 parts leave room for 9e10 designs.
  const first = Math.floor((index * study.total) / count);
  const end = Math.floor(((index + 1) * study.total) / count);
  const { kind, description, weathers, request, total, caseAt } = study;
  const part = { first, count: end - first, shard: { index, count } };
  return complete({ kind, description, weathers, request, total, caseAt, ...part, analyse: collectRows });
}
