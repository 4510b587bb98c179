// A cluster on one machine: the array job of docs/examples/batch as twenty tasks, each a process with a scheduler's variables and one thread. One
// task is killed on its way and started again. Then all parts are put together and compared with what one run writes, byte by byte.
//
//   cluster.ts [tasks] [at once]   default 20 and 2
import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { mergeResults, runStudy } from '@noonloop/sim-core/node';
import { study } from '../../docs/examples/batch/study.ts';

const tasks = Number(process.argv[2] ?? 20);
const atOnce = Number(process.argv[3] ?? 2);
const KILLED = Math.floor(tasks / 2);
const folder = mkdtempSync(join(tmpdir(), 'noonloop-cluster-'));
const program = fileURLToPath(new URL('../../docs/examples/batch/run-part.ts', import.meta.url));

/** A task of the array as Slurm starts it; given a limit, it is killed when its file has so many bytes. @returns whether it ended well, and its time [s]. */
function runTask(index: number, killAt = Number.POSITIVE_INFINITY): Promise<{ well: boolean; seconds: number }> {
  const from = performance.now();
  const file = join(folder, `part-${index}.jsonl`);
  const child = spawn(process.execPath, ['--import', 'tsx', '--conditions=@noonloop/source', program], {
    env: {
      ...process.env,
      RESULTS: folder,
      SLURM_ARRAY_TASK_ID: String(index),
      SLURM_ARRAY_TASK_COUNT: String(tasks),
      SLURM_ARRAY_TASK_MIN: '0',
      SLURM_CPUS_PER_TASK: '1',
    },
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const look = setInterval(() => {
    if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > killAt) child.kill('SIGKILL');
  }, 20);
  return new Promise((resolve) => {
    child.on('exit', (code) => {
      clearInterval(look);
      resolve({ well: code === 0, seconds: (performance.now() - from) / 1000 });
    });
  });
}

const waiting = Array.from({ length: tasks }, (_, index) => index);
const times: number[] = [];
let killed = 0;
async function node(): Promise<void> {
  for (let index = waiting.shift(); index !== undefined; index = waiting.shift()) {
    const { well, seconds } = await runTask(index, index === KILLED && killed === 0 ? 1500 : undefined);
    times.push(seconds);
    if (well) continue;
    killed++;
    if (killed > 1) throw new Error(`task ${index} failed`);
    waiting.push(index); // as a scheduler puts a task back into its queue
  }
}
const from = performance.now();
await Promise.all(Array.from({ length: atOnce }, node));
const wall = (performance.now() - from) / 1000;

const parts = readdirSync(folder).map((name) => join(folder, name));
await mergeResults(parts, join(folder, 'all.jsonl'));
await runStudy(study, { file: join(folder, 'whole.jsonl'), workers: 1, bar: false });
const text = (name: string) => readFileSync(join(folder, name), 'utf8');
const same = text('all.jsonl') === text('whole.jsonl');
const longest = Math.max(...times);
console.log(
  `${study.total} designs as ${tasks} tasks, ${atOnce} at once: ${wall.toFixed(0)} s; longest task ${longest.toFixed(1)} s`,
);
console.log(
  `${killed} killed on its way and started again; parts put together ${same ? 'are' : 'ARE NOT'} the bytes of one run`,
);
if (!same || killed !== 1) process.exitCode = 1;
rmSync(folder, { recursive: true, force: true });
