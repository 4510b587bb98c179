import { frontier, type StudyRow, shard, uncertainty } from '@noonloop/sim-core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../../packages/sim-core/src/study/distributions.ts';
import { latinHypercube } from '../../../packages/sim-core/src/study/latin-hypercube.ts';
import { inventedValley, plainInput } from '../../examples.ts';
import { coarse, modelled } from './small.ts';

const weather = await inventedValley();

describe('normal deviates [tables: Abramowitz & Stegun 26.2, NIST]', () => {
  it.each([
    [0.5, 0],
    [0.9, 1.2815515655446004],
    [0.975, 1.959963984540054],
    [0.99, 2.3263478740408408],
    [0.999, 3.090232306167813],
    [0.025, -1.959963984540054],
    [1e-6, -4.753424308822899],
  ])('%f → %f', (share, deviate) => {
    expect(Math.abs(normalQuantile(share) - deviate)).toBeLessThanOrEqual(1.2e-9 * Math.abs(deviate) + 1e-15);
  });

  it('ends are finite', () => {
    expect(Number.isFinite(normalQuantile(0)) && Number.isFinite(normalQuantile(1))).toBe(true);
  });
});

describe('Latin hypercube [definition]', () => {
  it('meets every stratum of every dimension once, in any order of asking', () => {
    const cube = latinHypercube(11, 50, 3);
    for (const dimension of [0, 1, 2]) {
      const strata = Array.from({ length: 50 }, (_, sample) => Math.floor(50 * cube(49 - sample, dimension)));
      expect([...strata].sort((a, b) => a - b)).toEqual(Array.from({ length: 50 }, (_, at) => at));
    }
    expect(latinHypercube(11, 50, 3)(7, 1)).toBe(cube(7, 1));
    expect(latinHypercube(12, 50, 3)(7, 1)).not.toBe(cube(7, 1));
  });
});

describe('spreads [closed forms]', () => {
  const inputs = {
    'array.groundAlbedo': { from: 0.2, to: 0.6 }, // mean 0.4, deviation 0.4/√12
    'tank.volume': { from: '200 L', likely: '250 L', to: '400 L' }, // mean 850/3 L, median 400 − √(200 × 150/2)
    'draw.dailyVolume': { p10: '150 L', p90: '250 L' }, // mean 200, deviation 50/1.28155
    'array.panels': { values: [2, 3], weights: [1, 3] },
  } as const;
  const study = uncertainty(plainInput, inputs, [weather, { ...weather, source: 'again' }], { samples: 4000 });
  const spread = async (model: (inputs: readonly number[]) => number) =>
    (await study.analyse(modelled(study, model))).spreads.deliveredEnergy!;

  it('of uniform, triangular, normal and chosen inputs', async () => {
    const uniform = await spread(([albedo]) => albedo!);
    expect(uniform.mean).toBeCloseTo(0.4, 4);
    expect(uniform.deviation).toBeCloseTo(0.4 / Math.sqrt(12), 4);
    const { p5, p10, p25, p50, p75, p90, p95 } = uniform;
    expect([p5, p10, p25, p50, p75, p90, p95].map((value) => Number(value.toFixed(3)))).toEqual([
      0.22, 0.24, 0.3, 0.4, 0.5, 0.56, 0.58,
    ]);
    const triangular = await spread(([, volume]) => 1000 * volume!);
    expect(triangular.mean).toBeCloseTo(850 / 3, 1);
    expect(triangular.p50).toBeCloseTo(400 - Math.sqrt((200 * 150) / 2), 0);
    const normal = await spread(([, , draw]) => 1000 * draw!);
    expect(normal.mean).toBeCloseTo(200, 1);
    expect(normal.deviation).toBeCloseTo(50 / 1.28155, 1);
    expect(normal.p10).toBeCloseTo(150, 0);
    expect(normal.p90).toBeCloseTo(250, 0);
    expect((await spread(([, , , panels]) => panels!)).mean).toBeCloseTo(2.75, 3);
  });

  it('draw every weather year as often', () => {
    const years = Array.from({ length: study.total }, (_, index) => study.caseAt(index).weather);
    expect(years.filter((year) => year === 1)).toHaveLength(2000);
  });

  it('leave failed designs out and count them', async () => {
    const outcome = await study.analyse(modelled(study, ([albedo]) => (albedo! < 0.3 ? null : 7)));
    expect(outcome.failed).toBe(1000);
    expect(outcome.spreads.deliveredEnergy).toMatchObject({ count: 3000, mean: 7, deviation: 0, p5: 7, p95: 7 });
  });
});

describe('uncertainty', () => {
  it('simulates: more water asked for, more delivered; same seed, same rows [reasoning]', async () => {
    const few = () =>
      uncertainty(plainInput, { 'draw.dailyVolume': { from: '80 L', to: '300 L' } }, weather, {
        ...coarse,
        samples: 10,
      });
    const drawn = Array.from({ length: 10 }, (_, at) => few().caseAt(at).inputs['draw.dailyVolume'] as number);
    const of = async (volume: number) => {
      const [row] = await shard(few(), drawn.indexOf(volume), 10).outcome();
      expect(row!.inputs['draw.dailyVolume']).toBe(volume);
      return row!.measures.deliveredEnergy!;
    };
    expect(await of(Math.max(...drawn))).toBeGreaterThan(await of(Math.min(...drawn)));
    expect(few().caseAt(3)).toEqual(few().caseAt(3));
  });

  it('refuses forms, orders and weights that make no sense, all forms at once [requirement]', () => {
    const make = (inputs: object) => () => uncertainty(plainInput, inputs as never, weather);
    expect(make({ 'tank.volume': { low: 1 }, 'array.tilt': { values: [] } })).toThrow(/tank\.volume[\s\S]*array\.tilt/);
    expect(make({ 'tank.volume': { p10: '300 L', p90: '200 L' } })).toThrow(/rising order/);
    expect(make({ 'tank.volume': { from: 0.2, likely: 0.5, to: 0.3 } })).toThrow(/rising order/);
    expect(make({ 'tank.volume': { values: [0.2, 0.3], weights: [1] } })).toThrow(/chance/);
    expect(make({})).toThrow(/several weather years/);
  });
});

describe('frontier', () => {
  const row = (index: number, cost: number, saving: number): StudyRow => ({
    index,
    inputs: { cost },
    weather: 0,
    measures: { fuelSaved: saving },
  });
  const cost = ({ inputs }: StudyRow): number => inputs.cost as number;

  it('keeps what no other beats in both, cheapest first [by hand]', async () => {
    const rows = [
      row(0, 5, 50),
      row(1, 3, 40),
      row(2, 4, 40),
      row(3, 6, 50),
      row(4, 9, 70),
      row(5, 3, 40),
      row(6, 1, 5),
    ];
    const failed: StudyRow = { ...row(7, 0, 99), error: { name: 'Error', message: '' } };
    const points = await frontier([...rows, failed, row(8, Number.NaN, 99)], { cost });
    expect(points.map(({ row: { index } }) => index)).toEqual([6, 1, 0, 4]);
    await expect(frontier(rows, { cost: 'price' as never })).rejects.toThrow(/key figure/);
  });

  it('is that of the definition, for any rows [property]', async () => {
    const number = fc.integer({ min: 0, max: 8 });
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(number, number), { maxLength: 30 }), async (pairs) => {
        const rows = pairs.map(([price, saving], index) => row(index, price, saving));
        const beaten = (one: StudyRow) =>
          rows.some(
            (other) =>
              cost(other) <= cost(one) &&
              other.measures.fuelSaved! >= one.measures.fuelSaved! &&
              (cost(other) < cost(one) ||
                other.measures.fuelSaved! > one.measures.fuelSaved! ||
                other.index < one.index),
          );
        const expected = rows.filter((one) => !beaten(one)).sort((a, b) => cost(a) - cost(b));
        expect((await frontier(rows, { cost })).map((point) => point.row)).toEqual(expected);
      }),
      { seed: 1, numRuns: 200 },
    );
  });
});

/** Rank correlation of two lists without ties (Spearman). */
function rankCorrelation(one: readonly number[], other: readonly number[]): number {
  const ranks = (list: readonly number[]) => {
    const order = list.map((_, at) => at).sort((a, b) => list[a]! - list[b]!);
    return order.reduce<number[]>((ranked, at, rank) => Object.assign(ranked, { [at]: rank }), []);
  };
  const [a, b] = [ranks(one), ranks(other)];
  const squares = a.reduce((sum, rank, at) => sum + (rank - b[at]!) ** 2, 0);
  return 1 - (6 * squares) / (one.length * (one.length ** 2 - 1));
}

describe('inputs that go together [Iman & Conover 1982; Spearman; variance of a sum in closed form]', () => {
  const inputs = {
    'draw.dailyVolume': { p10: '150 L', p90: '250 L' },
    'tank.volume': { from: '200 L', to: '400 L' },
    'array.tilt': { from: 20, to: 60 },
    'array.panels': { values: [2, 3] },
  } as const;
  const correlations = [
    { between: ['draw.dailyVolume', 'tank.volume'], rank: 0.7 },
    { between: ['tank.volume', 'array.tilt'], rank: -0.4 },
  ] as const;
  const drawn = (options: Parameters<typeof uncertainty>[3]) => {
    const study = uncertainty(plainInput, inputs, weather, { samples: 2000, ...options });
    const cases = Array.from({ length: 2000 }, (_, index) => study.caseAt(index).inputs);
    return (name: keyof typeof inputs) => cases.map((one) => one[name] as number);
  };

  it('have the ranks that were asked for, and nobody else', () => {
    const of = drawn({ correlations });
    // Normal scores against ranks: 6/π arcsin(r/2) for r of the scores, at most 0.02 apart.
    expect(rankCorrelation(of('draw.dailyVolume'), of('tank.volume'))).toBeCloseTo(
      (6 / Math.PI) * Math.asin(0.35),
      1.7,
    );
    expect(rankCorrelation(of('tank.volume'), of('array.tilt'))).toBeCloseTo((6 / Math.PI) * Math.asin(-0.2), 1.7);
    expect(Math.abs(rankCorrelation(of('draw.dailyVolume'), of('array.tilt')))).toBeLessThan(0.03);
  });

  it('keep their own distributions: the same strata, in another order', () => {
    const [free, tied] = [drawn({}), drawn({ correlations })];
    const strata = (list: readonly number[]) =>
      list.map((value) => Math.floor(((value - 0.2) / 0.2) * 2000)).sort((a, b) => a - b);
    expect(strata(tied('tank.volume'))).toEqual(strata(free('tank.volume')));
    expect(tied('array.panels')).toEqual(free('array.panels'));
  });

  it('widen a sum of normal inputs as covariance says', () => {
    const pair = {
      'draw.dailyVolume': { p10: '150 L', p90: '250 L' },
      'tank.volume': { p10: '250 L', p90: '350 L' },
    } as const;
    const of = (rank: number) => {
      const study = uncertainty(plainInput, pair, weather, {
        samples: 4000,
        correlations: rank === 0 ? [] : [{ between: ['draw.dailyVolume', 'tank.volume'], rank }],
      });
      const sums = Array.from({ length: 4000 }, (_, index) =>
        Object.values(study.caseAt(index).inputs).reduce<number>((sum, value) => sum + (value as number), 0),
      );
      const mean = sums.reduce((sum, value) => sum + value, 0) / 4000;
      return Math.sqrt(sums.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 3999);
    };
    const deviation = 0.05 / 1.2815515655446004;
    expect(of(0.7) / (deviation * Math.sqrt(2 + 1.4))).toBeCloseTo(1, 2);
    expect(of(-0.7) / (deviation * Math.sqrt(2 - 1.4))).toBeCloseTo(1, 2);
    expect(of(0) / (deviation * Math.sqrt(2))).toBeCloseTo(1, 1);
  });

  it('are refused where they cannot hold, all faults at once', () => {
    const refused = (list: unknown) => () =>
      uncertainty(plainInput, inputs, weather, { correlations: list as typeof correlations });
    expect(
      refused([
        { between: ['tank.volume', 'array.panels'], rank: 0.5 },
        { between: ['tank.volume', 'array.tilt'], rank: 1 },
      ]),
    ).toThrow(/correlations\.0\.between[\s\S]*correlations\.1\.rank/);
    expect(
      refused([
        { between: ['draw.dailyVolume', 'tank.volume'], rank: 0.9 },
        { between: ['tank.volume', 'array.tilt'], rank: 0.9 },
        { between: ['draw.dailyVolume', 'array.tilt'], rank: -0.9 },
      ]),
    ).toThrow(/can all hold/);
    expect(
      refused([
        { between: ['tank.volume', 'array.tilt'], rank: 0.1 },
        { between: ['array.tilt', 'tank.volume'], rank: 0.2 },
      ]),
    ).toThrow(/each pair once/);
    expect(refused('x')).toThrow(/a list/);
  });
});
