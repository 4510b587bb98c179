import { yardTestInWords } from '@noonloop/reports';
import { describe, expect, it } from 'vitest';
import {
  DesignError,
  defineSystem,
  rateFromSurvey,
  rateFromYardTest,
  type YardTestInput,
} from '../../../../packages/sim-core/src/index.ts';
import { flow, hour, perfect, test, truth, yardTests } from './seeded.ts';

describe('rateFromYardTest', () => {
  it('perfect readings give back the panel [its own equation, iterated]', () => {
    const { eta0, a1, collector, points, scatter } = rateFromYardTest({
      ...test,
      // a2 nearly known, so that the weak common value does not pull at a1.
      known: { a2: { low: 0.0119, likely: 0.012, high: 0.0121 } },
    });
    expect(eta0.band!.likely).toBeCloseTo(truth.eta0, 3);
    expect(a1.band!.likely).toBeCloseTo(truth.a1, 2);
    expect([eta0.from, a1.from]).toEqual(['test', 'test']);
    expect(scatter).toBeLessThan(0.01);
    expect(points[5]!.efficiency).toBeNull();
    for (const { residual } of points) expect(Math.abs(residual)).toBeLessThan(0.05);
    expect(() =>
      defineSystem({
        array: { panels: 2, tilt: 40, azimuth: 180, collector: collector! },
        tank: { volume: 0.3 },
        draw: { dailyVolume: 0.2 },
      }),
    ).not.toThrow();
  });

  // 300: survey.long.test.ts.
  it('150 seeded tests with errors as the tools have them: the 90 % limits hold the truth in 85 to 95 of 100 [definition]', () => {
    const { told, held } = yardTests(150);
    expect(told).toBeGreaterThan(135);
    for (const share of held) {
      expect(share).toBeGreaterThan(0.85);
      expect(share).toBeLessThanOrEqual(0.95);
    }
  });

  it('refuses what cannot be told, and says what would tell it [requirement]', () => {
    const cold = rateFromYardTest({ ...test, points: test.points.slice(0, 2) });
    expect(cold.a1).toMatchObject({ band: null, from: 'cannot tell' });
    expect(cold.a1.remedy).toBe('warm-or-covered');
    expect(yardTestInWords(cold).remedies.join()).toMatch(/a1 cannot be told.*30 K/);
    expect(cold.eta0.from).toBe('test');
    expect(cold.collector).toBeNull();

    const covered = rateFromYardTest({ ...test, points: [test.points[5]!] });
    expect(covered.eta0).toMatchObject({ band: null, from: 'cannot tell' });
    expect(covered.a1.band!.likely).toBeCloseTo(truth.a1, 0);
    expect(covered.scatter).toBeNull();
    expect(covered.notes.map(({ code }) => code)).toContain('all-covered');
  });

  it('what was known before fills in, and is narrowed [requirement]', () => {
    const { bands } = rateFromSurvey({ length: 2.1, width: 1.05, covers: 1, coating: 'black-paint' });
    const known = { eta0: bands.eta0, a1: bands.a1, a2: bands.a2 };
    const cold = rateFromYardTest({ ...test, points: test.points.slice(0, 2), known });
    expect(cold.a1.from).toBe('known');
    expect(cold.eta0.from).toBe('both');
    expect(cold.collector).not.toBeNull();
    const whole = rateFromYardTest({ ...test, known });
    expect(whole.a1.from).toBe('both');
    expect(whole.a1.band!.high - whole.a1.band!.low).toBeLessThan(bands.a1.high - bands.a1.low);
  });

  it('errors of all readings alike do not shrink with more readings [direction that physics demands]', () => {
    const many = { ...test, points: Array.from({ length: 12 }, () => test.points).flat() };
    const width = (rated: ReturnType<typeof rateFromYardTest>) => rated.eta0.band!.high - rated.eta0.band!.low;
    // 7 % of the sun's scale alone is 2 × 1.645 × 0.07 × 0.72 = 0.166.
    expect(width(rateFromYardTest(many))).toBeGreaterThan(0.16);
    expect(width(rateFromYardTest(many))).toBeLessThan(width(rateFromYardTest(test)));
  });

  it('scatter beyond the tools widens the bands; a slip of the pen is pointed at [requirement]', () => {
    const slip = test.points.map((point, at) =>
      at === 3 ? { ...point, outlet: (point.outlet as number) + 8 } : point,
    );
    const rated = rateFromYardTest({ ...test, points: slip });
    expect(rated.scatter).toBeGreaterThan(4);
    expect(yardTestInWords(rated).notes.join(' ')).toMatch(/Reading 4 lies/);
  });

  it('readings of a sun meter that reads a fifth too little: refused, against what glass gives and what was known [requirement]', () => {
    // As on a day of measurements at Almería, whose irradiance reads 15 to 20 % low: fits give 0.98 where 0.8 was known.
    const low = test.points.map((point) => ({ ...point, irradiance: 0.74 * (point.irradiance as number) }));
    const rated = rateFromYardTest({ ...test, points: low, known: { eta0: { low: 0.64, likely: 0.72, high: 0.8 } } });
    expect(rated.eta0).toMatchObject({ band: null, from: 'cannot tell', remedy: 'sun-meter-against-glass' });
    expect(rated.collector).toBeNull();
    expect(rated.notes.map(({ code }) => code)).toEqual(expect.arrayContaining(['beyond-glass', 'against-known']));
    expect(yardTestInWords(rated).notes.join(' ')).toMatch(/no glazed panel has.*contradict each other/);
    // The same against other knowledge, within what glass can do.
    const other = rateFromYardTest({ ...test, known: { eta0: { low: 0.38, likely: 0.4, high: 0.42 } } });
    expect(other.notes.map(({ code }) => code)).toContain('against-known');
  });

  it('a bare absorber may have more than glass [direction that physics demands]', () => {
    const bare = { eta0: 0.94, a1: 12 };
    const points = hour.map((moment) => {
      const rate = (1000 * 4180 * moment.flow) / truth.area;
      // q = eta0 G − a1 (t_in + Δ/2 − t_a) = rate Δ
      const rise = (bare.eta0 * moment.irradiance - bare.a1 * (moment.inlet - moment.air)) / (rate + bare.a1 / 2);
      return { ...moment, outlet: moment.inlet + rise, diffuseShare: 0 };
    });
    expect(rateFromYardTest({ ...test, points }).eta0.band!.likely).toBeGreaterThan(0.9);
  });

  it('all readings warm and alike: what lacks is spread, or the panel covered [requirement]', () => {
    const warm = [60, 61, 62].map((inlet) => perfect({ irradiance: 900, air: 20, inlet, flow }));
    expect(rateFromYardTest({ ...test, points: warm }).a1.remedy).toBe('spread-or-covered');
  });

  it('a warming panel: what it stores counts as heat [requirement]', () => {
    const still = rateFromYardTest(test).points[0]!.flux;
    const points = test.points.map((point) => ({ ...point, warming: '6 K' }));
    // C dt/dt = 8000 × 6/3600 W/m²
    expect(rateFromYardTest({ ...test, points }).points[0]!.flux - still).toBeCloseTo((8000 * 6) / 3600, 9);
  });

  it('reports all faults at once, by point, with unit [requirement]', () => {
    try {
      rateFromYardTest({
        area: '2 m',
        points: [
          { inlet: 20, outlet: 30, flow: '2 L/min', irradiance: 120, air: 20 },
          { inlet: 25, outlet: 24, flow: 0, irradiance: 0, air: 22 },
        ],
        fluid: 'oil',
      } as unknown as YardTestInput);
      expect.unreachable();
    } catch (error) {
      const paths = (error as DesignError).issues.map(({ path }) => path);
      expect(error).toBeInstanceOf(DesignError);
      expect(paths).toEqual(expect.arrayContaining(['area', 'fluid', 'points.0.irradiance', 'points.1.flow']));
    }
    expect(() => rateFromYardTest({ area: 2, points: [] })).toThrow(/one point/);
    expect(() =>
      rateFromYardTest({ area: 2, points: [{ inlet: 25, outlet: 24, flow: '1 L/min', irradiance: 0, air: 22 }] }),
    ).toThrow(/10 K/);
  });
});
