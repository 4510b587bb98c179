/** How many threads a study may use: what the job was given, not what the machine has. */
import { readFileSync } from 'node:fs';
import { availableParallelism } from 'node:os';

/** What a thread keeps at most: weather, light on planes, its program; measured, rounded up. [B] */
const BYTES_PER_THREAD = 150 * 2 ** 20;
/** What the process itself needs beside its threads. [B] */
const BYTES_OF_PROCESS = 200 * 2 ** 20;

/** Where a process finds what it was given. */
export interface Given {
  /** Environment variables. */
  readonly environment: Readonly<Record<string, string | undefined>>;
  /** Text of a file of the system; `null` where there is none. */
  readonly read: (path: string) => string | null;
  /** Processors that the system lets this process use at once. */
  readonly processors: number;
  /** Memory that the process is held to; 0 where it is not. [B] */
  readonly memory: number;
}

const here = (): Given => ({
  environment: process.env,
  read: (path) => {
    try {
      return readFileSync(path, 'utf8');
    } catch {
      return null;
    }
  },
  processors: availableParallelism(),
  memory: process.constrainedMemory?.() ?? 0,
});

/**
 * Threads for a study: the processors that the system lets the process use, at most those that Slurm gave to the task
 * (`SLURM_CPUS_PER_TASK`), those of its control group (a container's limit), and as many as its memory holds; at least 1, at most 256.
 *
 * @param given - Default: this process.
 */
export function threadsGiven(given: Given = here()): number {
  const { environment, memory, processors } = given;
  const ofTask = Number(environment.SLURM_CPUS_PER_TASK);
  const limits = [processors, 256, quota(given.read)];
  if (Number.isInteger(ofTask) && ofTask >= 1) limits.push(ofTask);
  // Where nothing holds the process, the system names a number near the largest that it can.
  if (memory > 0 && memory < 2 ** 50) limits.push(Math.floor((memory - BYTES_OF_PROCESS) / BYTES_PER_THREAD));
  return Math.max(1, Math.floor(Math.min(...limits)));
}

/** Processors that the control group grants, begun ones whole; infinite where it sets no limit. */
function quota(read: Given['read']): number {
  const own = read('/proc/self/cgroup') ?? '';
  const place = /^0::(.*)$/m.exec(own)?.[1] ?? '/';
  const text = read(`/sys/fs/cgroup${place === '/' ? '' : place}/cpu.max`) ?? read('/sys/fs/cgroup/cpu.max');
  const [allowed, period] = (text ?? oldQuota(read)).trim().split(/\s+/).map(Number);
  return allowed! > 0 && period! > 0 ? Math.max(1, Math.ceil(allowed! / period!)) : Number.POSITIVE_INFINITY;
}

/** The same by the first version of control groups: its quota is −1 where there is none. */
const oldQuota = (read: Given['read']): string =>
  ['cfs_quota_us', 'cfs_period_us'].map((name) => read(`/sys/fs/cgroup/cpu/cpu.${name}`)?.trim() ?? 'none').join(' ');
