import { StudyError } from '../study-error.ts';

/** Which part of a study this process is to run. */
export interface ShardPlace {
  /** Part, 0 for the first. */
  readonly index: number;
  /** Parts. */
  readonly count: number;
}

/** Environment variables by which a scheduler tells a task its place; the first is its index. */
interface Scheduler {
  readonly name: string;
  readonly index: string;
  /** Number of tasks; without one `SHARD_COUNT` must be set beside it. */
  readonly count?: string;
  /** Lowest index, where it need not be 0. */
  readonly lowest?: string;
}

const SCHEDULERS: readonly Scheduler[] = [
  { name: 'an explicit setting', index: 'SHARD_INDEX' },
  {
    name: 'a Slurm array job',
    index: 'SLURM_ARRAY_TASK_ID',
    count: 'SLURM_ARRAY_TASK_COUNT',
    lowest: 'SLURM_ARRAY_TASK_MIN',
  },
  { name: 'a Kubernetes indexed job', index: 'JOB_COMPLETION_INDEX' },
  { name: 'an AWS Batch array job', index: 'AWS_BATCH_JOB_ARRAY_INDEX', count: 'AWS_BATCH_JOB_ARRAY_SIZE' },
  { name: 'a Google Cloud Batch job', index: 'BATCH_TASK_INDEX', count: 'BATCH_TASK_COUNT' },
];

/**
 * Reads from the environment which part of a study to run: `SHARD_INDEX` of `SHARD_COUNT`, or what Slurm array jobs, Kubernetes
 * indexed jobs, AWS Batch array jobs and Google Cloud Batch jobs set. `SHARD_COUNT`, where set, overrules the scheduler's count.
 *
 * @param environment - Default: that of the process.
 * @returns Part 0 of 1 where nothing is set.
 * @throws StudyError when an index comes without a count, or either is no whole number in its range.
 */
export function shardFromEnvironment(
  environment: Readonly<Record<string, string | undefined>> = process.env,
): ShardPlace {
  const scheduler = SCHEDULERS.find(({ index }) => given(environment[index]));
  if (scheduler === undefined) return { index: 0, count: 1 };
  const own = given(environment.SHARD_COUNT);
  const countName = own || scheduler.count === undefined ? 'SHARD_COUNT' : scheduler.count;
  if (!given(environment[countName])) {
    const remedy = `${scheduler.index} says that this is ${scheduler.name}; set SHARD_COUNT to its number of tasks.`;
    throw new StudyError('environment', 'no SHARD_COUNT', 'the number of parts', remedy);
  }
  const lowest = scheduler.lowest !== undefined && given(environment[scheduler.lowest]) ? scheduler.lowest : null;
  const from = lowest === null ? 0 : whole(environment, lowest, 0, Number.MAX_SAFE_INTEGER);
  const count = whole(environment, countName, 1, 100_000);
  return { index: whole(environment, scheduler.index, from, from + count - 1) - from, count };
}

const given = (text: string | undefined): boolean => text !== undefined && text !== '';

function whole(environment: Readonly<Record<string, string | undefined>>, name: string, least: number, most: number) {
  const text = environment[name]!;
  const number = Number(text);
  if (/^\d{1,15}$/.test(text) && number >= least && number <= most) return number;
  const expected = `a whole number from ${least} to ${most}`;
  throw new StudyError(name, JSON.stringify(text.slice(0, 40)), expected, 'Check how the job was started.');
}
