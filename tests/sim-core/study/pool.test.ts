import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { collectRows, sweep } from '@noonloop/sim-core';
import { progressBar, readResults, runStudy, shardFromEnvironment, startPool } from '@noonloop/sim-core/node';
import { describe, expect, it, vi } from 'vitest';
import { shareWeather } from '../../../packages/sim-core/src/study/node/shared-weather.ts';
import { inventedValley, plainInput } from '../../examples.ts';
import { coarse, mostlyBadVolumes } from './small.ts';

const weather = await inventedValley();
const other = {
  ...weather,
  source: 'warmer',
  columns: { ...weather.columns, dryBulb: weather.columns.dryBulb.map((air) => air + 2) },
};

describe('threads [requirement]', () => {
  // A job that was given one processor, for each thread reads all sources anew; two of them: pool.long.test.ts.
  it('give the same bytes as none, failures and two weather years included', async () => {
    vi.stubEnv('SLURM_CPUS_PER_TASK', '1');
    const study = sweep(plainInput, { 'tank.volume': mostlyBadVolumes.slice(0, 2) }, [weather, other], {
      ...coarse,
      monthly: ['fuelSaved'],
    });
    const folder = await mkdtemp(join(tmpdir(), 'noonloop-pool-'));
    try {
      const alone = await runStudy(study, { workers: 1, bar: false, file: join(folder, 'a/one.jsonl') });
      const there = await runStudy(study, { bar: false, file: join(folder, 'thread.jsonl') });
      expect(there).toEqual(alone);
      const text = await readFile(join(folder, 'thread.jsonl'), 'utf8');
      expect(text).toBe(await readFile(join(folder, 'a/one.jsonl'), 'utf8'));
      expect(await collectRows(await readResults(join(folder, 'thread.jsonl')))).toEqual(alone);
      expect(alone.filter(({ error }) => error === undefined)).toHaveLength(2);
    } finally {
      vi.unstubAllEnvs();
      await rm(folder, { recursive: true });
    }
  });

  it('are refused in wrong numbers', () => {
    expect(() => startPool({ workers: 0 })).toThrow(/workers/);
  });

  it('share the weather: same values, shared memory, the rest as it was', () => {
    const shared = shareWeather(weather);
    expect(shared.columns.dryBulb.buffer).toBeInstanceOf(SharedArrayBuffer);
    expect(Array.from(shared.columns.dni)).toEqual(Array.from(weather.columns.dni));
    expect(Array.from(shared.calendarYears)).toEqual(Array.from(weather.calendarYears));
    expect(shared.columns.snowDepth === null).toBe(weather.columns.snowDepth === null);
    expect(shared.site).toBe(weather.site);
  });
});

describe('the bar', () => {
  const progress = { done: 3, total: 12, failed: 1, resumed: 0, elapsed: 2, rate: 1.5, timeLeft: 6 };
  const drawn = (isTTY: boolean): string => {
    const stream = Object.assign(new PassThrough(), {
      isTTY,
      columns: 100,
      cursorTo: () => true,
      clearLine: () => true,
      moveCursor: () => true,
    });
    const bar = progressBar(stream as unknown as NodeJS.WriteStream);
    bar.onProgress(progress);
    bar.stop();
    return String(stream.read() ?? '');
  };

  it('tells count, rate, time left and failures in a terminal, and keeps silent elsewhere [requirement]', () => {
    expect(drawn(true)).toContain('3 of 12 designs, 1.5 a second, 6 s left, 1 failed');
    expect(drawn(false)).toBe('');
  });
});

describe('place of a shard, by the schedulers’ documented variables', () => {
  it.each([
    [{}, { index: 0, count: 1 }],
    [
      { SHARD_INDEX: '2', SHARD_COUNT: '7' },
      { index: 2, count: 7 },
    ],
    [
      { SLURM_ARRAY_TASK_ID: '5', SLURM_ARRAY_TASK_COUNT: '7', SLURM_ARRAY_TASK_MIN: '1' },
      { index: 4, count: 7 },
    ],
    [
      { JOB_COMPLETION_INDEX: '3', SHARD_COUNT: '4' },
      { index: 3, count: 4 },
    ],
    // A single task of an array that is started again.
    [
      {
        SHARD_COUNT: '7',
        SHARD_FIRST: '0',
        SLURM_ARRAY_TASK_ID: '3',
        SLURM_ARRAY_TASK_COUNT: '1',
        SLURM_ARRAY_TASK_MIN: '3',
      },
      { index: 3, count: 7 },
    ],
    [
      {
        SHARD_COUNT: '7',
        SHARD_FIRST: '1',
        SLURM_ARRAY_TASK_ID: '3',
        SLURM_ARRAY_TASK_COUNT: '2',
        SLURM_ARRAY_TASK_MIN: '2',
      },
      { index: 2, count: 7 },
    ],
    [
      { SHARD_COUNT: '7', SLURM_ARRAY_TASK_ID: '0', SLURM_ARRAY_TASK_COUNT: '1', SLURM_ARRAY_TASK_MIN: '0' },
      { index: 0, count: 7 },
    ],
    [
      { SHARD_COUNT: '7', SLURM_ARRAY_TASK_ID: '7', SLURM_ARRAY_TASK_COUNT: '1', SLURM_ARRAY_TASK_MIN: '7' },
      { index: 6, count: 7 },
    ],
    [
      { SHARD_COUNT: '7', SLURM_ARRAY_TASK_ID: '9', SLURM_ARRAY_TASK_COUNT: '7', SLURM_ARRAY_TASK_MIN: '5' },
      { index: 4, count: 7 },
    ],
    [
      { AWS_BATCH_JOB_ARRAY_INDEX: '0', AWS_BATCH_JOB_ARRAY_SIZE: '9' },
      { index: 0, count: 9 },
    ],
    [
      { BATCH_TASK_INDEX: '1', BATCH_TASK_COUNT: '2' },
      { index: 1, count: 2 },
    ],
  ])('%j [requirement]', (environment, place) => {
    expect(shardFromEnvironment(environment)).toEqual(place);
  });

  it('wants a count beside an index, and an index inside it [requirement]', () => {
    expect(() => shardFromEnvironment({ JOB_COMPLETION_INDEX: '3' })).toThrow(/SHARD_COUNT/);
    expect(() => shardFromEnvironment({ SHARD_INDEX: '7', SHARD_COUNT: '7' })).toThrow(/from 0 to 6/);
    expect(() => shardFromEnvironment({ SHARD_INDEX: '-1', SHARD_COUNT: '7' })).toThrow(/SHARD_INDEX/);
  });

  it('refuses what would repeat a part: a count alone, a task of an array that does not say where it begins [requirement]', () => {
    expect(() => shardFromEnvironment({ SHARD_COUNT: '7' })).toThrow(/SHARD_COUNT without an index/);
    expect(shardFromEnvironment({ SHARD_COUNT: '1' })).toEqual({ index: 0, count: 1 });
    const again = {
      SHARD_COUNT: '7',
      SLURM_ARRAY_TASK_ID: '3',
      SLURM_ARRAY_TASK_COUNT: '1',
      SLURM_ARRAY_TASK_MIN: '3',
    };
    expect(() => shardFromEnvironment(again)).toThrow(/SHARD_FIRST/);
  });
});
