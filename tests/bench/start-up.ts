// What a call of the installed command costs, in processor time: as it is published, with and without what an earlier call kept, and module by
// module as tsc wrote it.
//
//   start-up.ts [turns]   default 8; wants the built packages (pnpm run tarballs)
//
// The two take turns, and the least of each counts, because the machine may be busy with something else.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { fileURLToPath, pathToFileURL } from 'node:url';

const turns = Number(process.argv[2] ?? 8);
const place = (path: string): string => fileURLToPath(new URL(`../../${path}`, import.meta.url));
const year = ['run', 'docs/examples/design-files/two-panels.yaml', '-w', 'docs/examples/weather/invented-valley.csv'];
const modules = pathToFileURL(place('packages/reports/dist/cli/process.js')).href;
const plain = `process.argv.splice(1,0,'');await(await import('${modules}')).runProcess()`;

const CALLS = {
  'node alone': ['-e', '0'],
  help: [place('packages/reports/bin/noonloop.js'), '--help'],
  'run, module by module': ['--input-type=module', '-e', plain, ...year],
  'run, nothing kept': [place('packages/reports/bin/noonloop.js'), ...year],
  'run, as published': [place('packages/reports/bin/noonloop.js'), ...year],
} as const;

if (!existsSync(place('packages/reports/dist/command'))) throw new Error('build the packages first: pnpm run tarballs');

/** Tells the fourth pipe what the process took. */
const told = `data:text/javascript,import{writeSync}from'node:fs';process.on('exit',()=>{const{user,system}=process.cpuUsage();writeSync(3,String((user+system)/1e6))})`;

/** @returns Processor time of a call. [s] */
function timeOf(args: readonly string[], keeps: boolean): number {
  const { output, status, stderr } = spawnSync(process.execPath, ['--import', told, ...args], {
    cwd: place('.'),
    // Certificates of this machine's own, which Node reads at its start, are no part of the command.
    env: { ...process.env, NODE_EXTRA_CA_CERTS: undefined, NODE_DISABLE_COMPILE_CACHE: keeps ? undefined : '1' },
    stdio: ['ignore', 'ignore', 'pipe', 'pipe'],
  });
  if (status !== 0) throw new Error(`${args.join(' ')}: ${stderr}`);
  return Number(output[3]);
}

const least = new Map<string, number>();
for (let turn = 0; turn < turns; turn++)
  for (const [name, args] of Object.entries(CALLS))
    least.set(
      name,
      Math.min(timeOf(args, !name.endsWith('nothing kept')), least.get(name) ?? Number.POSITIVE_INFINITY),
    );
for (const [name, seconds] of least) console.log(`${name.padEnd(24)}${seconds.toFixed(2)} s of processor time`);
const ratio = least.get('run, as published')! / least.get('run, module by module')!;
console.log(`as published against module by module: ${ratio.toFixed(2)}, wanted at most 0.80`);
if (!(ratio <= 0.8)) process.exitCode = 1;
