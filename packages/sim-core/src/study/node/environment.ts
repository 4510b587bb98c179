import { StudyError } from '../study-error.ts';

/** Which part of a study this process is to run. */
export interface ShardPlace {
  /** Part, 0 for the first. */
  readonly index: number;
  /** Parts. */
  readonly count: number;
}

/** Most parts of a study. */
const MOST_PARTS = 100_000;

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
 * A single task of a Slurm array that is started again (`SHARD_COUNT=7 SHARD_FIRST=0 sbatch --array=3`) takes its own part.
 *
 * @returns Part 0 of 1 where nothing is set.
 * @throws StudyError when an index comes without a count or a count without an index, when either is no whole number in its range, or where an array does not say
 * where it begins.
 */
export function shardFromEnvironment(
  environment: Readonly<Record<string, string | undefined>> = process.env,
): ShardPlace {
  const scheduler = SCHEDULERS.find(({ index }) => given(environment[index]));
  const own = given(environment.SHARD_COUNT);
  if (scheduler === undefined) {
    if (!own || whole(environment, 'SHARD_COUNT', 1, MOST_PARTS) === 1) return { index: 0, count: 1 };
    const remedy = 'Set SHARD_INDEX, or unset SHARD_COUNT to run the whole study.';
    throw new StudyError('environment', 'SHARD_COUNT without an index', 'which part this is', remedy);
  }
  const countName = own || scheduler.count === undefined ? 'SHARD_COUNT' : scheduler.count;
  if (!given(environment[countName])) {
    const remedy = `${scheduler.index} says that this is ${scheduler.name}; set SHARD_COUNT to its number of tasks.`;
    throw new StudyError('environment', 'no SHARD_COUNT', 'the number of parts', remedy);
  }
  const count = whole(environment, countName, 1, MOST_PARTS);
  const from = lowestIndex(environment, scheduler, count);
  return { index: whole(environment, scheduler.index, from, from + count - 1) - from, count };
}

/**
 * Index of the first part. Where SHARD_COUNT says that an array job is a part of the whole, such as a single task that is run again, its own lowest index says
 * nothing: SHARD_FIRST does, or an index that fits one way of counting alone.
 */
function lowestIndex(
  environment: Readonly<Record<string, string | undefined>>,
  scheduler: Scheduler,
  count: number,
): number {
  const { lowest } = scheduler;
  if (lowest === undefined) return 0;
  if (given(environment.SHARD_FIRST)) return whole(environment, 'SHARD_FIRST', 0, Number.MAX_SAFE_INTEGER);
  if (!given(environment[lowest])) return 0;
  const isWhole = !given(environment.SHARD_COUNT) || environment[scheduler.count!] === environment.SHARD_COUNT;
  if (isWhole) return whole(environment, lowest, 0, Number.MAX_SAFE_INTEGER);
  const index = whole(environment, scheduler.index, 0, Number.MAX_SAFE_INTEGER);
  if (index === 0) return 0;
  if (index === count) return 1;
  const remedy = 'Set SHARD_FIRST to the lowest index of the whole array, 0 or 1 as a rule.';
  throw new StudyError('environment', `task ${index} of a part of an array`, 'where the whole array begins', remedy);
}

const given = (text: string | undefined): boolean => text !== undefined && text !== '';

function whole(environment: Readonly<Record<string, string | undefined>>, name: string, least: number, most: number) {
  const text = environment[name]!;
  const number = Number(text);
  if (/^\d{1,15}$/.test(text) && number >= least && number <= most) return number;
  const expected = `a whole number from ${least} to ${most}`;
  throw new StudyError(name, JSON.stringify(text.slice(0, 40)), expected, 'Check how the job was started.');
}
