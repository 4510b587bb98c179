// The table of speeds in docs/guides/sizes-and-speeds.md, from what the other benches print: the least of several turns, of processor time. Wants the built
// packages (pnpm run tarballs); beside other work each number is higher by what shares the cores' insides, so the load is written with it.
//
//   speeds.ts [--write]
import { spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';
import { put, table } from './page-tables.ts';
import { taskShares } from './tasks.ts';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** What a bench prints; its exit code says whether it is content, not whether it ran. */
const printed = ([name, size]: readonly [string, string?]): string =>
  spawnSync(process.execPath, [...process.execArgv, `tests/bench/${name}.ts`, ...(size === undefined ? [] : [size])], {
    cwd: root,
    encoding: 'utf8',
  }).stdout;

const load = loadavg()[0]!;
const benches = [['start-up'], ['study', '32'], ['design-year']] as const;
const [startUp, study, year] = benches.map((bench) => printed(bench)) as [string, string, string];
const found = (text: string, pattern: RegExp): string => {
  const number = pattern.exec(text)?.[1];
  if (number === undefined) throw new Error(`${pattern} is not in what a bench printed:\n${text}`);
  return number;
};

const rows = [
  [
    '`run` of the installed command, a year and its report, processor time',
    `${found(startUp, /as published +([\d.]+) s/)} s`,
  ],
  ['the same with nothing kept of an earlier call', `${found(startUp, /nothing kept +([\d.]+) s/)} s`],
  ['the same, loaded module by module, by V8’s own settings', `${found(startUp, /module by module +([\d.]+) s/)} s`],
  ['`noonloop --help`', `${found(startUp, /help +([\d.]+) s/)} s`],
  ['Node doing nothing', `${found(startUp, /node alone +([\d.]+) s/)} s`],
  ['a design-year in a warm process, on the wall', `${found(year, /one design-year +([\d.]+) ms/)} ms`],
  ['a design-year of a sweep, processor time', `${found(study, /this thread: ([\d.]+) ms/)} ms`],
  ['a sweep against the bare hours of its years', found(study, /bare hours of its years: ([\d.]+)/)],
  ['two threads against one, on two free cores', found(study, /ratio of two threads ([\d.]+)/)],
  ['the same of new threads, which make their machine code first', found(study, /machine code, ([\d.]+)/)],
];
const speeds = table(['', ''], rows);
const run = ['run', 'docs/examples/design-files/two-panels.yaml', '-w', 'docs/examples/weather/invented-valley.csv'];
const shares = [...taskShares(['packages/reports/bin/noonloop.js', ...run], root)]
  .sort(([, a], [, b]) => b - a)
  .map(([task, share]) => [task, `${(100 * share).toFixed(0)} %`]);
const tasks = table(['where `run` spends its time, by samples of its main thread', 'share'], shares);
const machine = `Node ${process.versions.node}, ${cpus().length} cores, ${cpus()[0]?.model.replace(/\s+/g, ' ').trim() ?? 'unknown'}; load before ${load.toFixed(1)}; ${new Date().toISOString().slice(0, 10)}`;
console.log(`${speeds}\n\n${tasks}\n\n${machine}`);
if (process.argv.includes('--write')) {
  const page = `${root}docs/guides/sizes-and-speeds.md`;
  writeFileSync(page, put(readFileSync(page, 'utf8'), 'speeds', `${speeds}\n\n${tasks}\n\n${machine}.`));
}
