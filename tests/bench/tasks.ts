// Where the first `run` spends the time of its main thread, task by task, from a sampled profile.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Tasks by the function under which they run, the inner one first. */
const TASKS: ReadonlyMap<string, string> = new Map([
  ['assemble', 'light on the panels, and what else is known before the first hour'],
  ['simulate', 'the hours of the year'],
  ['lookOver', 'looking the weather over'],
  ['readWeather', 'reading the weather'],
  ['renderText', 'the report'],
  ['(garbage collector)', 'garbage'],
]);

const REST = 'Node’s start, loading, the design';

interface Node {
  readonly id: number;
  readonly callFrame: { readonly functionName: string };
  readonly children?: readonly number[];
}

/** @param args - Of Node, with the command. @returns Share of the working time by task, 0 to 1. */
export function taskShares(args: readonly string[], cwd: string): Map<string, number> {
  const folder = mkdtempSync(join(tmpdir(), 'noonloop-tasks-'));
  spawnSync(process.execPath, ['--cpu-prof', `--cpu-prof-dir=${folder}`, '--cpu-prof-interval=200', ...args], { cwd });
  const { nodes, samples, timeDeltas } = JSON.parse(readFileSync(join(folder, readdirSync(folder)[0]!), 'utf8')) as {
    readonly nodes: readonly Node[];
    readonly samples: readonly number[];
    readonly timeDeltas: readonly number[];
  };
  rmSync(folder, { recursive: true });
  const taskOf = new Map<number, string>();
  // A node stands before its children.
  for (const { id, callFrame, children = [] } of nodes) {
    const task = TASKS.get(callFrame.functionName) ?? taskOf.get(id) ?? REST;
    taskOf.set(id, task);
    for (const child of children) taskOf.set(child, task);
  }
  const idle = new Set(nodes.filter(({ callFrame }) => callFrame.functionName === '(idle)').map(({ id }) => id));
  const times = new Map([...TASKS.values(), REST].map((task) => [task, 0]));
  let all = 0;
  samples.forEach((id, at) => {
    if (idle.has(id)) return;
    all += timeDeltas[at]!;
    times.set(taskOf.get(id)!, times.get(taskOf.get(id)!)! + timeDeltas[at]!);
  });
  return new Map([...times].map(([task, time]) => [task, time / all]));
}
