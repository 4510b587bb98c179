import { adviceInWords } from '@noonloop/reports';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  collectorEfficiencyFactor,
  collectorFromBuild,
  stagnationTemperature,
  transmittanceAbsorptance,
} from '../../../../packages/sim-core/src/formulas.ts';
import {
  DesignError,
  defineSystem,
  rateFromSurvey,
  type SurveyInput,
} from '../../../../packages/sim-core/src/index.ts';
import { black, DRAWN, draws } from './seeded.ts';

const selective: SurveyInput = { ...black, coating: 'selective', coverKind: 'low-iron-glass', condition: 'good' };

describe('rateFromSurvey', () => {
  const rating = rateFromSurvey(black);

  it.each(['collector', 'low', 'high'] as const)('%s plugs into defineSystem [requirement]', (which) => {
    const { array } = defineSystem({
      array: { panels: 2, tilt: 40, azimuth: 180, collector: rating[which] },
      tank: { volume: 0.3 },
      draw: { dailyVolume: 0.2 },
    });
    expect(array.collector.eta0).toBeCloseTo(rating[which].eta0, 12);
    expect(array.collector.heatCapacity).toBe(rating[which].heatCapacity);
  });

  it('orders what the trade knows: paint loses more than a selective coat, two covers less than one [common practice, no source]', () => {
    const { bands } = rateFromSurvey(selective);
    expect(rating.bands.a1.likely).toBeGreaterThan(bands.a1.likely + 1);
    expect(rating.bands.stagnationTemperature.likely).toBeLessThan(bands.stagnationTemperature.likely - 30);
    const two = rateFromSurvey({ ...black, covers: 2 }).bands;
    expect(two.a1.likely).toBeLessThan(rating.bands.a1.likely);
    expect(two.eta0.likely).toBeLessThan(rating.bands.eta0.likely);
  });

  it('stands where test reports of such panels stand [common practice, no source]', () => {
    // Black paint, one cover: eta0 0.65 to 0.78, a1 5 to 8; selective: 0.70 to 0.82, a1 3 to 4.5.
    const { bands } = rateFromSurvey(selective);
    expect(
      rateFromSurvey({ ...black, condition: 'good', coverKind: 'low-iron-glass' }).bands.eta0.likely,
    ).toBeGreaterThan(0.65);
    expect(rating.bands.a1.likely).toBeGreaterThan(5);
    expect(rating.bands.a1.likely).toBeLessThan(8);
    expect(bands.eta0.likely).toBeGreaterThan(0.7);
    expect(bands.eta0.likely).toBeLessThan(0.82);
    expect(bands.a1.likely).toBeGreaterThan(3);
    expect(bands.a1.likely).toBeLessThan(4.5);
  });

  it('weighs 20 to 30 kg/m² full, glazed [shared safety values, common practice]', () => {
    expect(rating.bands.weightFull.likely).toBeGreaterThan(18);
    expect(rating.bands.weightFull.likely).toBeLessThan(30);
    expect(rating.bands.weightFull.high).toBeLessThan(32);
  });

  it('agrees with the quadratic’s own stagnation where the line was drawn, within its band [requirement]', () => {
    const { area, eta0, a1, a2 } = rating.collector;
    const ofLine = stagnationTemperature({ area, eta0, a1, a2 }, 1000, 30);
    const { low, high } = rating.bands.stagnationTemperature;
    expect(ofLine).toBeGreaterThan(low);
    expect(ofLine).toBeLessThan(high);
  });

  it('low and high panels lie at the ends of the band of the efficiency at work [definition]', () => {
    const { low, likely, high } = rating.bands.efficiencyAtWork;
    const work = (side: 'low' | 'high') => {
      const { eta0, a1, a2 } = rating[side];
      return eta0 - ((a1 + a2 * 30) * 30) / 800;
    };
    expect(Math.abs(work('low') - low)).toBeLessThan(0.1 * (likely - low));
    expect(Math.abs(work('high') - high)).toBeLessThan(0.1 * (high - likely));
  });

  it('unknown answers widen the band; a measured one narrows it by what the ranking said [requirement]', () => {
    const bare = rateFromSurvey({ length: 2, width: 1, covers: 1 });
    const width = ({ low, high }: { low: number; high: number }) => high - low;
    expect(width(bare.bands.efficiencyAtWork)).toBeGreaterThan(1.3 * width(rating.bands.efficiencyAtWork));
    const dearest = bare.numbers.slice(0, 4).map(({ field }) => field);
    expect(dearest).toContain('coating');
    const told = rateFromSurvey({ length: 2, width: 1, covers: 1, coating: 'black-paint' });
    expect(width(told.bands.a1)).toBeLessThan(width(bare.bands.a1));
    expect(bare.numbers.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it('takes limits and tolerances in units [requirement]', () => {
    const exact = rateFromSurvey({ ...black, plateThickness: { value: '0.3 mm', give: '0 mm' } });
    const wide = rateFromSurvey({ ...black, plateThickness: { low: '0.1 mm', high: '0.5 mm' } });
    const effect = (r: typeof exact) => r.numbers.find(({ field }) => field === 'plateThickness')!.effect;
    expect(effect(exact)).toBe(0);
    expect(effect(wide)).toBeGreaterThan(0.01);
  });

  it('a weighed panel weighs what the scale said [requirement]', () => {
    const { bands } = rateFromSurvey({ ...black, weightEmpty: '90 lb' });
    expect(bands.weightEmpty.likely).toBeCloseTo(90 * 0.45359237, 9);
    expect(bands.weightEmpty.high - bands.weightEmpty.likely).toBeCloseTo(1, 1);
  });

  it('writes a working that can be followed by hand [by hand]', () => {
    const value = (of: string) => rating.steps.find(({ code }) => code === `panel-${of}`)!.value;
    expect(value('loss')).toBeCloseTo(value('top-loss') + value('back-loss') + value('edge-loss'), 9);
    const eta0 = value('eta0');
    expect(value('efficiency-at-work')).toBeCloseTo(eta0 - ((value('a1') + value('a2') * 30) * 30) / 800, 12);
    // At the air's temperature F' (τα) is the zero-loss efficiency; the fit and the film's place leave a per cent or so.
    expect(Math.abs(eta0 - value('efficiency-factor') * value('light'))).toBeLessThan(0.02);
  });

  it('a serpentine of the same tube drops far more pressure, and its film is better [direction that physics demands]', () => {
    const serpentine = rateFromSurvey({ ...black, layout: 'serpentine' });
    expect(serpentine.bands.pressureDrop.likely).toBeGreaterThan(20 * rating.bands.pressureDrop.likely);
    expect(serpentine.bands.eta0.likely).toBeGreaterThan(rating.bands.eta0.likely);
  });

  it('speaks of weight, heat, glass [requirement]', () => {
    const text = adviceInWords(rating.cautions).join(' ');
    expect(text).toMatch(/\d+ kg\/m² on the roof/);
    expect(text).toMatch(/steam/);
    expect(text).toMatch(/glass/);
  });

  it('reports all faults at once, by field, with unit [requirement]', () => {
    try {
      rateFromSurvey({
        length: '2 kg',
        width: -3,
        covers: 7,
        tubeSpacing: { low: 0.2, high: 0.1 },
        coating: 'blue',
        frmae: 1,
      } as unknown as SurveyInput);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(DesignError);
      const paths = (error as DesignError).issues.map(({ path }) => path);
      expect(paths.sort()).toEqual(['coating', 'covers', 'frmae', 'length', 'tubeSpacing', 'width']);
      expect((error as DesignError).message).toContain('m');
    }
    expect(() => rateFromSurvey({ ...black, tubeDiameter: '5 cm', tubeSpacing: '4 cm' })).toThrow(/tubeDiameter/);
    expect(() => rateFromSurvey({ ...black, frame: '14 cm', width: '25 cm' })).toThrow(DesignError);
  });
});

describe('bands by the root of the sum of squares, against 400 seeded draws', () => {
  // 1000: survey.long.test.ts.
  it.each(Object.entries(DRAWN))('%s [requirement]', (_, input) => {
    for (const { end, inside, of } of draws(input, 400)) {
      expect(inside, `${of} inside`).toBeGreaterThan(0.86);
      expect(inside, `${of} inside`).toBeLessThan(0.94);
      expect(end, of).toBeLessThan(0.2);
    }
  });
});

describe('checked faces of the formulas', () => {
  it('refuse numbers out of range, by name [requirement]', () => {
    const tube = {
      loss: 4,
      plateConductivity: 385,
      plateThickness: 0.0003,
      tubeSpacing: 0.12,
      tubeDiameter: 0.01,
      innerDiameter: 0.02,
      bondResistance: 0,
      filmCoefficient: 300,
    };
    expect(() => collectorEfficiencyFactor(tube)).toThrow(/innerDiameter/);
    expect(() =>
      transmittanceAbsorptance({ covers: 0, refractiveIndex: 1.5, opticalThickness: 0, absorptance: 1 }),
    ).toThrow(/covers/);
    expect(() => collectorFromBuild({} as never, {} as never)).toThrow(DesignError);
  });
});

describe('random surveys and readings, fixed seed', () => {
  const metres = (low: number, high: number) =>
    fc.option(fc.double({ min: low, max: high, noNaN: true }), { nil: undefined });
  const word = <T extends string>(...words: T[]) => fc.option(fc.constantFrom(...words), { nil: undefined });
  const survey = fc.record({
    length: fc.double({ min: 0.5, max: 4, noNaN: true }),
    width: fc.double({ min: 0.4, max: 2, noNaN: true }),
    covers: fc.integer({ min: 1, max: 3 }),
    depth: metres(0.02, 0.3),
    frame: metres(0, 0.05),
    plateThickness: metres(5e-5, 0.005),
    tubeSpacing: metres(0.05, 0.2),
    tubeDiameter: metres(0.004, 0.05),
    backInsulation: metres(0.003, 0.2),
    layout: word('harp', 'serpentine'),
    bond: word('one-piece', 'clamped', 'unknown'),
    coating: word('black-paint', 'selective', 'unknown'),
    plateMetal: word('copper', 'stainless-steel', 'unknown'),
    condition: word('good', 'poor', 'unknown'),
    weightEmpty: metres(3, 300),
  });

  it('every number is finite and in order, or the survey is refused [requirement]', () => {
    fc.assert(
      fc.property(survey, (input) => {
        try {
          const { bands, numbers, collector } = rateFromSurvey(input as SurveyInput);
          for (const { low, likely, high } of Object.values(bands)) {
            expect(low).toBeLessThanOrEqual(likely);
            expect(likely).toBeLessThanOrEqual(high);
            expect(Number.isFinite(low + high)).toBe(true);
          }
          for (const { effect, share } of numbers) expect(Number.isFinite(effect + share)).toBe(true);
          expect(Number.isFinite(collector.ratedPressureDrop)).toBe(true);
        } catch (error) {
          expect(error).toBeInstanceOf(DesignError);
        }
      }),
      { seed: 20261125, numRuns: 20 },
    );
  });
});
