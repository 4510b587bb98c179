import {
  type BestOfOptions,
  bestOf,
  type StudyRanges,
  type StudyRow,
  type StudyRunner,
  sweep,
} from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput } from '../../examples.ts';
import { coarse } from './small.ts';

const weather = await inventedValley();
const ranges: StudyRanges = {
  'array.tilt': { from: 0, to: 90 },
  'tank.volume': { from: '100 L', to: '500 L' },
  'array.panels': { from: 1, to: 8, whole: true },
};

/** Rows from a model of the test's own. */
const modelRunner = (model: (tilt: number, volume: number, panels: number) => Partial<StudyRow>): StudyRunner => ({
  tasks: 4,
  designsPerTask: () => 3,
  run: async ({ cases }) =>
    cases.map(({ index, inputs }) => {
      const [tilt, volume, panels] = Object.values(inputs) as [number, number, number];
      return { index, inputs, weather: 0, measures: {}, ...model(tilt, volume, panels) };
    }),
});

const search = (model: Parameters<typeof modelRunner>[0], options: Partial<BestOfOptions>) =>
  bestOf(plainInput, ranges, weather, { goal: { lowest: 'heaterFuel' }, evaluations: 250, ...options }).outcome({
    runner: modelRunner(model),
  });

const bowl = (tilt: number, volume: number, panels: number): number =>
  1e9 * (((tilt - 37) / 90) ** 2 + ((volume - 0.31) / 0.4) ** 2 + ((panels - 6) / 8) ** 2);

describe('best-of search', () => {
  it('finds the bottom of a bowl over continuous and whole axes [closed form]', async () => {
    const { best, ended, evaluated, value } = await search((...x) => ({ measures: { heaterFuel: bowl(...x) } }), {});
    expect(best!.inputs['array.panels']).toBe(6);
    expect(Math.abs((best!.inputs['array.tilt'] as number) - 37)).toBeLessThan(1);
    expect(Math.abs((best!.inputs['tank.volume'] as number) - 0.31)).toBeLessThan(0.005);
    expect(value).toBe(best!.measures.heaterFuel);
    expect([ended, evaluated]).toEqual(['evaluations', 250]);
  });

  it('finds the deeper of two hollows [closed form]', async () => {
    const twoHollows = (tilt: number) =>
      1 - Math.exp(-(((tilt - 70) / 15) ** 2)) - 1.3 * Math.exp(-(((tilt - 12) / 5) ** 2));
    const tilt: StudyRanges = { 'array.tilt': { from: 0, to: 90 } };
    const options = { goal: { lowest: 'heaterFuel' }, evaluations: 50 } as const;
    const runner = modelRunner((angle) => ({ measures: { heaterFuel: twoHollows(angle) } }));
    const { best } = await bestOf(plainInput, tilt, weather, options).outcome({ runner });
    expect(Math.abs((best!.inputs['array.tilt'] as number) - 12)).toBeLessThan(0.2);
  });

  it('keeps limits: the best at the edge of what is allowed [closed form]', async () => {
    const model = (tilt: number, volume: number, panels: number) => ({
      measures: {
        fuelSaved: 1e9 * panels + 1e8 * volume,
        stagnationHours: 10 * panels,
        peakTankTemperature: 60 + tilt / 3,
      },
    });
    const { best } = await search(model, {
      goal: { highest: 'fuelSaved' },
      limits: { stagnationHours: { atMost: 45 }, peakTankTemperature: { atLeast: 65, atMost: 80 } },
    });
    expect(best!.inputs['array.panels']).toBe(4);
    expect(best!.inputs['tank.volume']).toBeGreaterThan(0.48);
    expect(best!.measures.peakTankTemperature).toBeLessThanOrEqual(80);
  });

  it('goes round designs that fail, and says so when nothing is left [requirement]', async () => {
    const failed = { measures: {}, error: { name: 'DesignError', message: '' } };
    const half = await search((...x) => (x[0] > 45 ? failed : { measures: { heaterFuel: bowl(...x) } }), {});
    expect(half.best!.inputs['array.panels']).toBe(6);
    const none = await search(() => failed, { evaluations: 30 });
    expect([none.best, none.value, none.evaluated]).toEqual([null, null, 30]);
  });

  it('asks for no design twice, and ends when whole numbers are all known [requirement]', async () => {
    const seen: string[] = [];
    const whole: StudyRanges = { 'array.panels': { from: 1, to: 5, whole: true } };
    const rows = bestOf(plainInput, whole, weather, {
      goal: { highest: ({ inputs }) => inputs['array.panels'] as number },
    });
    const run = rows.run({ runner: modelRunner((panels) => ({ measures: { fuelSaved: panels } })) });
    for (;;) {
      const { done, value } = await run.next();
      if (done) {
        expect([value.value, value.ended, value.evaluated]).toEqual([5, 'exhausted', 5]);
        break;
      }
      seen.push(JSON.stringify(value.inputs));
    }
    expect(new Set(seen).size).toBe(seen.length);
  });

  it('is as good as the best of a sweep of real designs, whole axis alone [equality]', async () => {
    const axis: StudyRanges = { 'array.panels': { from: 1, to: 2, whole: true } };
    const found = await bestOf(plainInput, axis, weather, { ...coarse, goal: { lowest: 'heaterFuel' } }).outcome();
    const rows = await sweep(plainInput, { 'array.panels': [1, 2] }, weather, coarse).outcome();
    expect(found.value).toBe(Math.min(...rows.map(({ measures }) => measures.heaterFuel!)));
  });

  it('refuses a goal that is none, unknown key figures and limits [requirement]', () => {
    const make = (options: object) => () => bestOf(plainInput, ranges, weather, options as never);
    expect(make({})).toThrow(/options\.goal/);
    expect(make({ goal: { highest: 'fuelSaved', lowest: 'heaterFuel' } })).toThrow(/options\.goal/);
    expect(make({ goal: { highest: 'joy' } })).toThrow(/options\.goal/);
    expect(make({ goal: { highest: 'fuelSaved' }, limits: { joy: { atMost: 1 } } })).toThrow(/options\.limits\.joy/);
    expect(make({ goal: { highest: 'fuelSaved' }, evaluations: 1 })).toThrow(/options\.evaluations/);
  });
});
