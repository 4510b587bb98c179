// A cluster on one machine: the array job of docs/examples/batch as twenty tasks, each a process with a scheduler's variables and one thread. One
// task is killed on its way and started again. Then all parts are put together.
//
//   cluster.ts [tasks] [at once]            default 20 and 2; the study of the example, compared with what one run writes, byte by byte
//   cluster.ts [tasks] [at once] --large    that study made large as docs/guides/studies.md says: 100,000 rows, of which 1000 are whole years; the
//                                           others ask for what no tank can be and are refused, so that files and merge are at their full length
import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { mergeResults, readResults, runStudy } from '@noonloop/sim-core/node';
import { study } from '../../docs/examples/batch/study.ts';

const given = process.argv.slice(2).filter((word) => word !== '--large');
const isLarge = process.argv.includes('--large');
const tasks = Number(given[0] ?? 20);
const atOnce = Number(given[1] ?? 2);
const KILLED = Math.floor(tasks / 2);
const root = fileURLToPath(new URL('../../', import.meta.url));
mkdirSync(join(root, 'out'), { recursive: true });
const folder = mkdtempSync(join(root, 'out/cluster-'));
const results = join(folder, 'results');
// Beside the weather that it names, as in the examples.
cpSync(join(root, 'docs/examples/batch'), join(folder, 'batch'), { recursive: true });
cpSync(join(root, 'docs/examples/weather'), join(folder, 'weather'), { recursive: true });
if (isLarge) makeLarge(join(folder, 'batch/study.ts'));

/** Twenty-five tilts; of a thousand tanks ten that can be. */
function makeLarge(file: string): void {
  const small = readFileSync(file, 'utf8');
  const large = small
    .replace('count: 6 }', 'count: 25 }')
    .replace(
      /'tank.volume': .*/,
      "'tank.volume': Array.from({ length: 1000 }, (_, at) => (at < 10 ? 0.15 + 0.02 * at : -at)),",
    );
  if (large.length < small.length + 20) throw new Error('the example is written otherwise');
  writeFileSync(file, large);
}

/** What a process took. */
interface Taken {
  readonly well: boolean;
  /** On the wall. [s] */
  readonly seconds: number;
  /** Of the processor. [s] */
  readonly cpu: number;
  /** Most memory. [MB] */
  readonly memory: number;
}

/** Tells the fourth pipe what the process took. */
const told = `data:text/javascript,import{writeSync}from'node:fs';process.on('exit',()=>{const{userCPUTime:u,systemCPUTime:s,maxRSS:m}=process.resourceUsage();writeSync(3,[(u+s)/1e6,m/1024].join())})`;

/** Runs one of the files of the example; given a limit, it is killed when that file of results has so many bytes. */
function runFile(
  name: string,
  environment: object,
  killed?: { readonly file: string; readonly at: number },
): Promise<Taken> {
  const from = performance.now();
  const child = spawn(process.execPath, ['--import', told, ...process.execArgv, join(folder, 'batch', name)], {
    cwd: root,
    env: { ...process.env, RESULTS: results, ...environment },
    stdio: ['ignore', 'ignore', 'inherit', 'pipe'],
  });
  let answer = '';
  child.stdio[3]!.on('data', (text: Buffer) => {
    answer += text;
  });
  const look = setInterval(() => {
    if (killed && (statSync(killed.file, { throwIfNoEntry: false })?.size ?? 0) > killed.at) child.kill('SIGKILL');
  }, 20);
  return new Promise((resolve) => {
    child.on('close', (code) => {
      clearInterval(look);
      const [cpu = Number.NaN, memory = Number.NaN] = answer === '' ? [] : answer.split(',').map(Number);
      resolve({ well: code === 0, seconds: (performance.now() - from) / 1000, cpu, memory });
    });
  });
}

/** A task of the array as Slurm starts it. */
const runTask = (index: number, killAt?: number): Promise<Taken> =>
  runFile(
    'run-part.ts',
    {
      SLURM_ARRAY_TASK_ID: String(index),
      SLURM_ARRAY_TASK_COUNT: String(tasks),
      SLURM_ARRAY_TASK_MIN: '0',
      SLURM_CPUS_PER_TASK: '1',
    },
    killAt === undefined ? undefined : { file: join(results, `part-${index}.jsonl`), at: killAt },
  );

const waiting = Array.from({ length: tasks }, (_, index) => index);
const ended: Taken[] = [];
let killed = 0;
let kept = 0;
async function node(): Promise<void> {
  for (let index = waiting.shift(); index !== undefined; index = waiting.shift()) {
    const taken = await runTask(index, index === KILLED && killed === 0 ? (isLarge ? 1e6 : 1500) : undefined);
    if (taken.well) {
      ended.push(taken);
      continue;
    }
    killed++;
    if (killed > 1) throw new Error(`task ${index} failed`);
    kept = readFileSync(join(results, `part-${index}.jsonl`), 'utf8').split('\n').length - 2;
    waiting.push(index); // as a scheduler puts a task back into its queue
  }
}
const from = performance.now();
await Promise.all(Array.from({ length: atOnce }, node));
const wall = (performance.now() - from) / 1000;
// A task that finds its part done costs what starting costs.
const idle = await runTask(0);

const parts = readdirSync(results).map((name) => join(results, name));
const bytes = parts.reduce((sum, file) => sum + statSync(file).size, 0);
const merged = await runFile('merge.ts', {});
const all = join(results, 'all.jsonl');
const rows = await checkedRows(all);

/** Rows of a file of results, each in its place. */
async function checkedRows(file: string): Promise<{ readonly years: number; readonly refused: number }> {
  let [years, refused] = [0, 0];
  for await (const { index, error } of await readResults(file)) {
    if (index !== years + refused) throw new Error(`row ${years + refused} of the whole has index ${index}`);
    if (error === undefined) years++;
    else refused++;
  }
  return { years, refused };
}

const sum = (of: 'cpu' | 'seconds') => ended.reduce((total, taken) => total + taken[of], 0);
const most = (of: 'cpu' | 'seconds' | 'memory') => Math.max(...ended.map((taken) => taken[of]));
console.log(
  `${rows.years + rows.refused} designs (${rows.years} whole years, ${rows.refused} refused) as ${tasks} tasks, ${atOnce} at once: ${wall.toFixed(0)} s
processor: ${sum('cpu').toFixed(0)} s in all, longest task ${most('cpu').toFixed(1)} s, mean ${(sum('cpu') / tasks).toFixed(1)} s; starting alone ${idle.cpu.toFixed(1)} s a task
memory: at most ${most('memory').toFixed(0)} MB a task
files: ${(bytes / 1e6).toFixed(1)} MB in ${parts.length} parts; put together in ${merged.cpu.toFixed(1)} s of processor time and ${merged.memory.toFixed(0)} MB
killed on its way and started again: ${killed}, with ${kept} rows that were not made again`,
);
let well = killed === 1 && merged.well;
if (!isLarge) {
  await mergeResults(parts, join(folder, 'all.jsonl'));
  await runStudy(study, { file: join(folder, 'whole.jsonl'), workers: 1, bar: false });
  const text = (name: string) => readFileSync(join(folder, name), 'utf8');
  const same = text('all.jsonl') === text('whole.jsonl');
  console.log(`parts put together ${same ? 'are' : 'ARE NOT'} the bytes of one run`);
  well &&= same;
}
if (!well) process.exitCode = 1;
rmSync(folder, { recursive: true, force: true });
