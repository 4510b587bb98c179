import {
  collectRows,
  defineSystem,
  type StudyProgress,
  type StudyRunner,
  type SystemInput,
  shard,
  simulate,
  summarizePeriods,
  sweep,
} from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput } from '../../examples.ts';
import { coarse, mostlyBadVolumes } from './small.ts';

const weather = await inventedValley();
const bad = (count: number) =>
  sweep(plainInput, { 'tank.volume': Array.from({ length: count }, (_, at) => -1 - at) }, weather);

/** Answers in any order, as threads do. */
const jumbled: StudyRunner = {
  tasks: 4,
  designsPerTask: () => 2,
  run: async ({ cases }) => {
    await new Promise((resolve) => setTimeout(resolve, 3 * (5 - (cases[0]!.index % 5))));
    return cases.map(({ index, inputs, weather: year }) => ({ index, inputs, weather: year, measures: {} }));
  },
};

describe('a run [requirement]', () => {
  it('hands rows out in order, whatever order they come in', async () => {
    const rows = await collectRows(bad(21).run({ runner: jumbled }));
    expect(rows.map(({ index }) => index)).toEqual(Array.from({ length: 21 }, (_, at) => at));
  });

  it('shows of each design what a year of its own shows, to the bit, and leaves results had before as they were', async () => {
    const before = simulate(defineSystem(plainInput), weather, coarse.steps);
    const heat = before.columns.solarHeat.slice();
    // The first boils and lets hot water out, the second does neither.
    const study = sweep(plainInput, { 'array.panels': [6, 1] }, weather, coarse);
    for (const { index, measures } of await study.outcome()) {
      const design = defineSystem(study.caseAt(index).design as SystemInput);
      const { year } = summarizePeriods(simulate(design, weather, coarse.steps));
      expect(measures).toEqual(
        Object.fromEntries(Object.keys(measures).map((key) => [key, year[key as keyof typeof year]])),
      );
    }
    expect(before.columns.solarHeat).toEqual(heat);
  });

  it('keeps no more tasks in hand than the runner wants, however slow the reader', async () => {
    let asked = 0;
    const runner: StudyRunner = { ...jumbled, run: (task) => jumbled.run(task).finally(() => asked++) };
    const rows = bad(100).run({ runner });
    await rows.next();
    await new Promise((resolve) => setTimeout(resolve, 60));
    expect(asked).toBeLessThanOrEqual(1 + jumbled.tasks);
    await rows.return();
  });

  it('tells count, rate and time left after every row, failures apart', async () => {
    const told: StudyProgress[] = [];
    await collectRows(bad(4).run({ onProgress: (progress) => told.push(progress) }));
    expect(told.map(({ done, total, failed }) => [done, total, failed])).toEqual([
      [1, 4, 1],
      [2, 4, 2],
      [3, 4, 3],
      [4, 4, 4],
    ]);
    const last = told.at(-1)!;
    expect(last.timeLeft).toBe(0);
    expect(last.rate * last.elapsed).toBeCloseTo(4, 9);
  });

  it('ends by a signal: before it starts, while a thread works, between rows', async () => {
    const reason = new Error('enough');
    await expect(bad(3).outcome({ signal: AbortSignal.abort(reason) })).rejects.toBe(reason);
    const never: StudyRunner = { tasks: 1, designsPerTask: () => 1, run: () => new Promise(() => {}) };
    const soon = AbortSignal.timeout(20);
    await expect(bad(3).outcome({ signal: soon, runner: never })).rejects.toHaveProperty('name', 'TimeoutError');
    const controller = new AbortController();
    const seen: number[] = [];
    const reading = (async () => {
      for await (const { index } of bad(9).run({ signal: controller.signal })) {
        seen.push(index);
        if (index === 2) controller.abort(reason);
      }
    })();
    await expect(reading).rejects.toBe(reason);
    expect(seen).toEqual([0, 1, 2]);
  });

  it('fails with the error of a runner that breaks, which is no row', async () => {
    const broken: StudyRunner = { ...jumbled, run: () => Promise.reject(new Error('thread lost')) };
    await expect(bad(3).outcome({ runner: broken })).rejects.toThrow('thread lost');
  });

  it('lets timers have their turn in this thread', async () => {
    let turns = 0;
    const timer = setInterval(() => turns++, 1);
    await bad(150).outcome();
    clearInterval(timer);
    expect(turns).toBeGreaterThan(0);
  });
});

describe('shards [definition]', () => {
  it('are neighbours, as equal as can be, and hold every design once', () => {
    const study = bad(23);
    for (const count of [1, 2, 7, 23, 40]) {
      const parts = Array.from({ length: count }, (_, index) => shard(study, index, count));
      let next = 0;
      for (const part of parts) {
        expect(part.first).toBe(next);
        next += part.count;
      }
      expect(next).toBe(23);
      const sizes = parts.map((part) => part.count);
      expect(Math.max(...sizes) - Math.min(...sizes)).toBeLessThanOrEqual(1);
    }
  });

  it('keep the places of the whole study', async () => {
    const study = sweep(plainInput, { 'tank.volume': mostlyBadVolumes.slice(1, 4) }, weather);
    const rows = await shard(study, 1, 2).outcome();
    expect(rows.map(({ index, inputs }) => [index, inputs['tank.volume']])).toEqual([
      [1, -2],
      [2, -3],
    ]);
  });

  it('refuse an index past the count, and a shard of a shard', () => {
    expect(() => shard(bad(3), 3, 3)).toThrow(/index/);
    expect(() => shard(bad(3), 0.5, 3)).toThrow(/index/);
    expect(() => shard(bad(3), 0, 0)).toThrow(/count/);
    expect(() => shard(shard(bad(3), 0, 2), 0, 2)).toThrow(/whole study/);
  });
});
