import { cpSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { arithmeticPrint, enginePrint, printOfSources } from '../../../packages/sim-core/src/study/node/engine.ts';
import { lockFile } from '../../../packages/sim-core/src/study/node/lock.ts';
import { type Given, threadsGiven } from '../../../packages/sim-core/src/study/node/threads.ts';

const folder = mkdtempSync(join(tmpdir(), 'noonloop-engine-'));
afterAll(() => rmSync(folder, { recursive: true }));

describe('what computed the rows [requirement]', () => {
  it('is told by every source that computes, and by no other', () => {
    const home = fileURLToPath(new URL('../../../packages/sim-core/', import.meta.url));
    const copy = join(folder, 'packages/sim-core');
    cpSync(join(home, 'src'), join(copy, 'src'), { recursive: true });
    cpSync(join(home, '../weather-io/src/sun'), join(copy, '../weather-io/src/sun'), { recursive: true });
    expect(printOfSources(copy)).toBe(enginePrint());
    const seen = new Set([printOfSources(copy)]);
    const change = (place: string) => {
      const path = join(copy, place);
      writeFileSync(path, `${readFileSync(path, 'utf8')}// changed\n`);
      return printOfSources(copy);
    };
    for (const place of ['src/year/step.ts', 'src/study/sensitivity/sobol.ts', '../weather-io/src/sun/position.ts']) {
      const print = change(place);
      expect(seen.has(print), place).toBe(false);
      seen.add(print);
    }
    const last = printOfSources(copy);
    for (const place of ['src/advice/sizing/coil.ts', 'src/study/node/pool.ts', 'src/index.ts'])
      expect(change(place)).toBe(last);
    // A checkout with other line ends is the same program.
    const path = join(copy, 'src/year/books.ts');
    writeFileSync(path, readFileSync(path, 'utf8').replaceAll('\n', '\r\n'));
    expect(printOfSources(copy)).toBe(last);
  });

  it('and by the last bit of any function of Math', () => {
    const plain = arithmeticPrint();
    expect(arithmeticPrint()).toBe(plain);
    const off = (value: number) => value * (1 + 2 ** -52);
    for (const name of [
      'sin',
      'cos',
      'tan',
      'asin',
      'acos',
      'atan',
      'exp',
      'expm1',
      'tanh',
      'cbrt',
      'log',
      'log10',
      'log1p',
    ] as const) {
      const engine = Object.create(Math) as Math;
      engine[name] = (x) => off(Math[name](x));
      expect(arithmeticPrint(engine), name).not.toBe(plain);
    }
    for (const name of ['atan2', 'pow'] as const) {
      const engine = Object.create(Math) as Math;
      engine[name] = (x, y) => off(Math[name](x, y));
      expect(arithmeticPrint(engine), name).not.toBe(plain);
    }
  });
});

describe('threads by what the job was given [documentation of Slurm and of Linux control groups]', () => {
  const given = (more: Partial<Given> = {}, files: Record<string, string> = {}): Given => ({
    environment: {},
    read: (path) => files[path] ?? null,
    processors: 64,
    memory: 0,
    ...more,
  });

  it.each<[string, Given, number]>([
    ['a machine of its own', given(), 64],
    ['Slurm', given({ environment: { SLURM_CPUS_PER_TASK: '4' } }), 4],
    ['more asked than there are', given({ processors: 2, environment: { SLURM_CPUS_PER_TASK: '8' } }), 2],
    ['a container', given({}, { '/sys/fs/cgroup/cpu.max': '250000 100000\n' }), 3],
    ['a container without limit', given({}, { '/sys/fs/cgroup/cpu.max': 'max 100000\n' }), 64],
    [
      'a group within the machine',
      given({}, { '/proc/self/cgroup': '0::/jobs/7\n', '/sys/fs/cgroup/jobs/7/cpu.max': '150000 100000\n' }),
      2,
    ],
    [
      'the first version of groups',
      given(
        {},
        { '/sys/fs/cgroup/cpu/cpu.cfs_quota_us': '500000\n', '/sys/fs/cgroup/cpu/cpu.cfs_period_us': '100000\n' },
      ),
      5,
    ],
    [
      'the first version without limit',
      given({}, { '/sys/fs/cgroup/cpu/cpu.cfs_quota_us': '-1\n', '/sys/fs/cgroup/cpu/cpu.cfs_period_us': '100000\n' }),
      64,
    ],
    ['less than one processor', given({}, { '/sys/fs/cgroup/cpu.max': '20000 100000\n' }), 1],
    ['3 GiB of memory', given({ memory: 3 * 2 ** 30 }), 19],
    ['hardly any memory', given({ memory: 2 ** 27 }), 1],
    ['a machine of 500', given({ processors: 500 }), 256],
  ])('%s', (_, job, threads) => {
    expect(threadsGiven(job)).toBe(threads);
  });
});

describe('a results file is held by one process [requirement]', () => {
  const place = (name: string) => join(folder, name);

  it('and is free again when let go', async () => {
    const first = await lockFile(place('a'));
    await expect(lockFile(place('a'))).rejects.toThrow(/process \d+ on .* is writing rows there/);
    first.release();
    expect(existsSync(place('a.lock'))).toBe(false);
    (await lockFile(place('a'))).release();
  });

  it('a lock of a process that is gone is taken over, also one that bore our number', async () => {
    for (const owner of [`${2 ** 22 + 7} ${hostname()}\n`, `${process.pid} ${hostname()}\n`]) {
      writeFileSync(place('b.lock'), owner);
      const lock = await lockFile(place('b'));
      expect(readFileSync(place('b.lock'), 'utf8')).toBe(`${process.pid} ${hostname()}\n`);
      lock.release();
    }
  });

  it('one of another machine is taken over when nobody touches it, and not before', async () => {
    writeFileSync(place('c.lock'), '7 elsewhere\n');
    (await lockFile(place('c'), { beat: 20 })).release();
    const there = await lockFile(place('c'), { host: 'elsewhere', beat: 5 });
    await expect(lockFile(place('c'), { beat: 40 })).rejects.toThrow(/on elsewhere is writing rows there/);
    there.release();
    await sleep(1);
    expect(existsSync(place('c.lock'))).toBe(false);
  });

  it('a folder that is not there is told as what it is', async () => {
    mkdirSync(place('d'));
    await expect(lockFile(join(folder, 'd/none/e'))).rejects.toThrow(/ENOENT/);
  });
});
