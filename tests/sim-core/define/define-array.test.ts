import { type DesignError, defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { plainInput } from '../../examples.ts';

/** Paths of the faults of an input. */
function faultyPaths(array: object, collector: object): string[] {
  try {
    defineSystem({
      ...plainInput,
      array: { ...plainInput.array, ...array, collector: { ...plainInput.array.collector, ...collector } },
    } as SystemInput);
  } catch (error) {
    return (error as DesignError).issues.map((issue) => issue.path);
  }
  throw new Error('the input was accepted');
}

const point = (azimuth: number, altitude: number) => ({ azimuth, altitude });
const table = { angles: [0, 60], values: [1, 0.9] };

describe('faults of the array, by path', () => {
  it.each([
    ['a3', { a3: 1.3 }], // 3.8 − 3 × 1.3 < 0: no loss without wind
    ['a3', { a3: -0.1 }],
    ['a4', { a4: 1.2 }],
    ['a4', { glazed: false, a4: null }],
    ['a6', { a6: 0.5 }],
    ['glazed', { glazed: 'yes' }],
    ['incidenceModifier', { incidenceModifier: { transversal: table, tubes: 'upright' } }],
    ['incidenceModifier', { incidenceModifier: { transversal: table, longitudinal: table, tubes: 'round' } }],
    ['dryCapacityShare', { dryCapacityShare: 0 }],
    ['skyCoefficient', { a4: 0.3, skyCoefficient: 0.2 }],
    ['a6', { eta0: 0.9, a6: 0.04 }], // 0.9 + 3 × 0.04 > 1: more than falls on it, in still air
    ['a7', { a7: 0.01 }], // without an a4 to change
    ['a7', { a1: 8, a4: 0.95, a7: 0.02 }], // 0.95 + 3 × 0.02 > 1
    ['a8', { a8: 1e-8 }],
    ['eta0', { eta0: 0.99, eta0Basis: 'hemispherical', incidenceModifier: { b0: 0.5 } }],
    ['eta0Basis', { eta0Basis: 'aperture' }],
    ['a1', { a1: 0.2, a2: 0, skyCoefficient: 1 }], // such a panel came out at −269 °C
    ['a1', { a1: 3.8, a4: 0.8 }],
    ['a1', { a1: 4, glazed: false }],
    ['a1', { a1: 6, a3: 1.2, a4: 0.5 }], // 6 − 3 × 1.2 in still air
  ])('collector.%s: %j [requirement]', (field, collector) => {
    expect(faultyPaths({}, collector)).toEqual([`array.collector.${field}`]);
  });

  it('say what a loss must hold, and what to do [requirement]', () => {
    const issue = (collector: object) => {
      try {
        defineSystem({
          ...plainInput,
          array: { ...plainInput.array, collector: { ...plainInput.array.collector, ...collector } },
        });
      } catch (error) {
        return (error as Error).message;
      }
      return '';
    };
    expect(issue({ a1: 0.2, a2: 0, skyCoefficient: 1 })).toMatch(
      /found 0\.2 W\/\(m²·K\), expected at least 5\.5 W\/\(m²·K\) without wind: .* skyCoefficient of at most 0\.04/,
    );
    expect(issue({ a1: 4, glazed: false })).toMatch(/glazed: true where the panel has a cover/);
    expect(issue({ a8: 1e-8 })).toMatch(/a run counts losses by a1 and a2 alone/);
  });

  it.each([
    ['windFactor', { windFactor: 3 }],
    ['inSeries', { panels: 3, inSeries: 2 }],
    ['inSeries', { inSeries: 0 }],
    ['skyModel', { skyModel: 'best' }],
    ['groundAlbedo', { groundAlbedo: [0.2, 0.3] }],
    ['groundAlbedo', { groundAlbedo: 20 }],
    ['snowAlbedo', { snowAlbedo: 2 }],
    ['snowOnPanels', { snowOnPanels: true }],
    ['horizon', { horizon: [] }],
    ['horizon', { horizon: 12 }],
    ['horizon.1.altitude', { horizon: [point(0, 10), point(90, 100)] }],
    ['horizon', { horizon: [point(90, 10), point(80, 10)] }],
    ['obstacle.distance', { obstacle: { distance: 0, width: 1, height: 1, azimuth: 180 } }],
    ['width', { width: 0 }],
    ['slopeLength', { slopeLength: '3 kg' }],
  ])('%s: %j [requirement]', (field, array) => {
    expect(faultyPaths(array, {})).toEqual([`array.${field}`]);
  });
});

const collectorOf = (collector: object) =>
  defineSystem({
    ...plainInput,
    array: { ...plainInput.array, collector: { ...plainInput.array.collector, ...collector } },
  } as SystemInput);

describe('the zero-loss efficiency', () => {
  // K_d 0.9 by a modifier that is 0.9 at every angle but the first: 0.75845/(0.85 + 0.15 × 0.9) = 0.77, ../shared/reference row 1.
  const even = { angles: [0, 1e-6, 89.9999], values: [1, 0.9, 0.9] };

  it('η0,hem becomes η0,b, and says so [ISO 9806:2017 from memory, by hand]', () => {
    const design = collectorOf({ eta0: 0.75845, eta0Basis: 'hemispherical', incidenceModifier: even });
    expect(design.array.collector.eta0).toBeCloseTo(0.77, 5);
    expect(design.array.collector.eta0Basis).toBe('beam');
    const said = design.assumptions.find(({ path }) => path === 'array.collector.eta0');
    expect(said?.source).toMatch(/η0,hem of 0\.758\d given: .* K_d 0\.9 by/);
    expect(design.assumptions.some(({ path }) => path === 'array.collector.eta0Basis')).toBe(false);
  });

  it('left open is taken as η0,b, and that is listed among the assumptions [requirement]', () => {
    const design = collectorOf({ eta0: 0.75 });
    expect(design.array.collector.eta0).toBe(0.75);
    expect(design.assumptions.find(({ path }) => path === 'array.collector.eta0Basis')).toMatchObject({
      value: 'beam',
    });
    expect(design.assumptions.some(({ path }) => path === 'array.collector.eta0')).toBe(false);
  });

  it('defined again stays what it is [requirement]', () => {
    const { assumptions: _, ...design } = collectorOf({ eta0: 0.74, eta0Basis: 'hemispherical' });
    const again = {
      ...plainInput,
      array: {
        ...plainInput.array,
        collector: {
          ...plainInput.array.collector,
          eta0: design.array.collector.eta0,
          eta0Basis: design.array.collector.eta0Basis,
        },
      },
    };
    expect(defineSystem(again).array.collector.eta0).toBe(design.array.collector.eta0);
  });

  it('a certificate’s a8 of 0 is taken as it stands [requirement]', () => {
    expect(collectorOf({ a8: 0 }).array.collector).not.toHaveProperty('a8');
  });
});
