// Speed of studies: what a second thread gives, and what a sweep costs one core beside the bare hours of its years.
//
//   study.ts [designs]   default 64
//
// By processor time, thread by thread, because the machine may be busy with something else: one thread takes as long as the busiest of its process, two
// take as long as the busier of them and at least half of all that runs in the process (Linux tells it; elsewhere the wall's clock is taken).
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { defineSystem, type Study, type SystemInput, sweep } from '@noonloop/sim-core';
import { type StudyPool, startPool } from '@noonloop/sim-core/node';
import { assemble } from '../../packages/sim-core/src/year/machine.ts';
import { stepHour } from '../../packages/sim-core/src/year/step.ts';
import { inventedValley, plainInput } from '../examples.ts';

const designs = Number(process.argv[2] ?? 64);
const TURNS = 3;
const weather = await inventedValley();
const volumes = Array.from({ length: Math.ceil(designs / 2) }, (_, at) => 0.2 + 0.005 * at);
const study = sweep(plainInput, { 'array.panels': [2, 3], 'tank.volume': volumes }, weather);

/** Processor time that each thread of this process has had. [s] */
function threadTimes(): Map<string, number> {
  const folder = '/proc/self/task';
  if (!existsSync(folder)) return new Map([['wall', performance.now() / 1000]]);
  const times = new Map<string, number>();
  for (const thread of readdirSync(folder)) {
    if (!existsSync(`${folder}/${thread}/stat`)) continue; // it has ended
    const [user, system] = readFileSync(`${folder}/${thread}/stat`, 'utf8').split(') ')[1]!.split(' ').slice(11, 13);
    times.set(thread, (Number(user) + Number(system)) / 100); // in ticks of 10 ms
  }
  return times;
}

/** What a study takes: of the busiest thread, and of all. [s] */
async function timeOf(of: Study, runner: StudyPool): Promise<{ readonly busiest: number; readonly all: number }> {
  const before = threadTimes();
  await of.outcome({ runner });
  const took = [...threadTimes()].map(([thread, time]) => time - (before.get(thread) ?? 0));
  return { busiest: Math.max(...took), all: took.reduce((sum, time) => sum + time, 0) };
}

const one = startPool({ workers: 1 });
const two = startPool({ workers: 2 });
const warmUp = sweep(plainInput, { 'tank.volume': [0.2, 0.25, 0.3, 0.35] }, weather);
const cold = [await timeOf(study, one), await timeOf(study, two)] as const;
const ratioOf = ([alone, together]: typeof cold): number =>
  alone.busiest / Math.max(together.busiest, together.all / 2);
let warm = cold;
for (let turn = 0; turn < TURNS; turn++) {
  const found = [await timeOf(study, one), await timeOf(study, two)] as const;
  // Whatever disturbs lengthens: the least of each counts.
  warm = [0, 1].map((at) => (found[at]!.all < warm[at]!.all ? found[at]! : warm[at]!)) as unknown as typeof cold;
}
await one.close();
await two.close();
const rate = ({ all }: { readonly all: number }): string => `${((all * 1000) / study.total).toFixed(0)} ms a design`;
console.log(
  `${study.total} designs, processor time of all threads: one ${rate(warm[0])}, two ${rate(warm[1])}; new threads ${rate(cold[0])}, ${rate(cold[1])}`,
);
const ratio = ratioOf(warm);
console.log(
  `ratio of two threads ${ratio.toFixed(2)}, wanted at least 1.85; of new ones, which make their machine code, ${ratioOf(cold).toFixed(2)}`,
);

// Processor time, not time on the wall: what else runs on the machine is not in it. The years of the study in this thread, and their bare hours, take turns;
// the least of each counts.
const cpu = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};
const machines = Array.from({ length: study.total }, (_, index) =>
  assemble(defineSystem(study.caseAt(index).design as SystemInput), weather),
);
await warmUp.outcome();
const least = { study: Number.POSITIVE_INFINITY, hours: Number.POSITIVE_INFINITY };
for (let turn = 0; turn < TURNS; turn++) {
  let before = cpu();
  await study.outcome();
  least.study = Math.min(least.study, cpu() - before);
  before = cpu();
  for (const machine of machines) for (let hour = 0; hour < 8760; hour++) stepHour(machine, hour);
  least.hours = Math.min(least.hours, cpu() - before);
}
const overhead = least.study / least.hours;
console.log(`in this thread: ${(least.study / study.total).toFixed(1)} ms of processor time a design-year`);
console.log(`against the bare hours of its years: ${overhead.toFixed(2)}, wanted at most 1.20`);
if (!(ratio >= 1.85 && overhead <= 1.2)) process.exitCode = 1;
