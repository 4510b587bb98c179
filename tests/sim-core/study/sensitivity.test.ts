import { type StudyRanges, type SystemInput, sensitivity } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput } from '../../examples.ts';
import { ishigamiErrors, onUnit, three } from './ishigami.ts';
import { coarse, modelled } from './small.ts';

const weather = await inventedValley();
const base: SystemInput = plainInput;

describe('Sobol indices of the Ishigami function, a 7, b 0.1 [closed form, Saltelli et al. 2008, §4.6]', () => {
  // 4096, whose errors are below 0.025: sensitivity.long.test.ts.
  it('come out within three of their own standard errors, which are below 0.05 with 1024 samples', async () => {
    for (const { error, off } of await ishigamiErrors(1024)) {
      expect(error).toBeLessThan(0.05);
      expect(off).toBeLessThan(3 * error + 1e-12);
    }
  });

  it('leave out samples with a failed design, and key figures that do not spread', async () => {
    const study = sensitivity(base, three, weather, { method: 'sobol', samples: 64 });
    const failing = modelled(
      study,
      onUnit((x) => x[0]!),
    );
    const outcome = await study.analyse(
      (async function* () {
        for await (const row of failing) {
          yield row.index === 7 ? { ...row, measures: {}, error: { name: 'Error', message: '' } } : row;
        }
      })(),
    );
    expect([outcome.samples, outcome.failed]).toEqual([63, 1]);
    // 63 samples leave a standard error of about 0.1, taken three times.
    expect(Math.abs(outcome.indices['array.tilt']!.deliveredEnergy!.total.share - 1)).toBeLessThan(0.3);
    expect(outcome.indices['array.azimuth']!.deliveredEnergy!.total.share).toBe(0);
    expect(outcome.indices['array.tilt']!.fuelSaved).toBeUndefined();
    const flat = await study.analyse(modelled(study, () => 5));
    expect(flat.indices['array.tilt']!.deliveredEnergy).toBeUndefined();
  });
});

describe('elementary effects [closed form]', () => {
  const effects = async (model: (x: readonly number[]) => number, seed = 3, paths = 200) => {
    const study = sensitivity(base, three, weather, { method: 'morris', paths, seed });
    expect(study.total).toBe(paths * 4);
    const outcome = await study.analyse(modelled(study, onUnit(model)));
    return Object.keys(three).map((path) => outcome.effects[path]!.deliveredEnergy!);
  };

  it('of a plane are its slopes, without deviation', async () => {
    const [x, y, z] = await effects(([a, b]) => 4 * a! - 2 * b!);
    for (const [effect, slope] of [
      [x!, 4],
      [y!, -2],
      [z!, 0],
    ] as const) {
      expect(effect.mean).toBeCloseTo(slope, 12);
      expect(effect.meanSize).toBeCloseTo(Math.abs(slope), 12);
      expect(effect.deviation).toBeCloseTo(0, 12);
      expect(effect.paths).toBe(200);
    }
  });

  it('of a product deviate: for x y on four levels the mean is 1/2, the deviation √5/6 (0.373)', async () => {
    const [x] = await effects(([a, b]) => a! * b!);
    // The effect of x is y on the grid 0, 1/3, 2/3, 1; 200 paths leave 0.373/√200 = 0.026 of error, taken three times.
    expect(Math.abs(x!.mean - 0.5)).toBeLessThan(0.08);
    expect(Math.abs(x!.deviation! - Math.sqrt(5) / 6)).toBeLessThan(0.04);
  });

  it('are the same for the same seed and others for another', async () => {
    const curved = ([a, b]: readonly number[]) => a! ** 2 * b!;
    const five = await effects(curved, 5, 40);
    expect(await effects(curved, 5, 40)).toEqual(five);
    expect(await effects(curved, 6, 40)).not.toEqual(five);
  });

  it('go through the bounds as the design reads them, whole numbers whole', () => {
    const ranges = { 'tank.volume': { from: '200 L', to: '400 L' }, 'array.panels': { from: 2, to: 4, whole: true } };
    const study = sensitivity(base, ranges, weather, { method: 'morris', paths: 10 });
    const cases = Array.from({ length: study.total }, (_, index) => study.caseAt(index).inputs);
    const volumes = new Set(cases.map((inputs) => (inputs['tank.volume'] as number).toFixed(6)));
    expect([...volumes].sort()).toEqual(['0.200000', '0.266667', '0.333333', '0.400000']);
    expect(new Set(cases.map((inputs) => inputs['array.panels']))).toEqual(new Set([2, 3, 4]));
  });
});

describe('one at a time', () => {
  it('simulates the base and both bounds of each input [definition]', async () => {
    const ranges = { 'tank.volume': { from: '200 L', to: '400 L' }, 'tank.roomTemperature': { from: 10, to: 25 } };
    const study = sensitivity(base, ranges, weather, coarse);
    const { changes, rows } = await study.outcome();
    expect(rows.map(({ inputs }) => inputs)).toEqual([
      {},
      { 'tank.volume': 0.2 },
      { 'tank.volume': 0.4 },
      { 'tank.roomTemperature': 10 },
      { 'tank.roomTemperature': 25 },
    ]);
    const { atBase, atFrom, atTo, change } = changes['tank.volume']!.deliveredEnergy!;
    expect(atFrom).toBe(rows[1]!.measures.deliveredEnergy);
    expect(change).toBe(atTo! - atFrom!);
    expect(atTo).toBe(rows[2]!.measures.deliveredEnergy);
    expect(atBase).toBe(rows[0]!.measures.deliveredEnergy);
    // A warmer room takes less from the tank [reasoning].
    expect(changes['tank.roomTemperature']!.deliveredEnergy!.change!).toBeGreaterThan(0);
  });
});

describe('what sensitivity refuses [requirement]', () => {
  const refuse = (ranges: StudyRanges, options = {}) => {
    expect(() => sensitivity(base, ranges, weather, options)).toThrow();
    try {
      sensitivity(base, ranges, weather, options);
    } catch (error) {
      return (error as { issues: { path: string }[] }).issues.map(({ path }) => path);
    }
    return [];
  };

  it('bounds out of order, out of the field, of no number, or broken where whole', () => {
    expect(refuse({ 'array.tilt': { from: 50, to: 30 }, 'array.panels': { from: 1, to: 2.5, whole: true } })).toEqual([
      'array.panels',
    ]);
    expect(refuse({ 'array.tilt': { from: 50, to: 30 } })).toEqual(['array.tilt']);
    expect(refuse({ 'array.tilt': { from: 50, to: 130 } })).toEqual(['array.tilt']);
    expect(refuse({ 'pump.drive': { from: 'booster', to: 'direct' } })).toContain('pump.drive');
    expect(refuse({ 'array.tilt': { from: 1 } as never })).toEqual(['array.tilt']);
    expect(refuse({})).toEqual(['ranges']);
  });

  it('unknown methods and sizes out of range, all at once', () => {
    const options = { method: 'guess' as never, paths: 1, samples: 2.5, seed: -1 };
    const paths = ['options.paths', 'options.samples', 'options.seed', 'options.method'];
    expect(refuse({ 'array.tilt': { from: 5, to: 30 } }, options)).toEqual(paths);
  });
});
