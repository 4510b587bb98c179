import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mixInversions } from '../../../../packages/sim-core/src/physics/tank/inversion.ts';

const mix = (values: readonly number[]) => {
  const temperature = Float64Array.from(values);
  const mixed = mixInversions(temperature);
  return { mixed, temperature: [...temperature] };
};

describe('mixInversions', () => {
  it('leaves a column in order alone [requirement]', () => {
    expect(mix([10, 20, 20, 60])).toEqual({ mixed: false, temperature: [10, 20, 20, 60] });
  });

  it('mixes a heated bottom up to where the water above is warmer [by hand: (50 + 20 + 20)/3 = 30]', () => {
    expect(mix([50, 20, 20, 60])).toEqual({ mixed: true, temperature: [30, 30, 30, 60] });
  });

  it('turns a fully inverted column into its mean [requirement]', () => {
    expect(mix([60, 50, 40, 30]).temperature).toEqual([45, 45, 45, 45]);
  });

  it('ends in order, keeps the energy and stays within the extremes, for any column [conservation]', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 60 }), (values) => {
        const { temperature } = mix(values);
        for (let node = 1; node < temperature.length; node++) {
          expect(temperature[node]! - temperature[node - 1]!).toBeGreaterThanOrEqual(-1e-10);
        }
        const sum = (list: readonly number[]) => list.reduce((total, t) => total + t, 0);
        expect(Math.abs(sum(temperature) - sum(values))).toBeLessThanOrEqual(1e-12 * Math.max(1, sum(values)));
        expect(Math.min(...temperature)).toBeGreaterThanOrEqual(Math.min(...values) - 1e-10);
        expect(Math.max(...temperature)).toBeLessThanOrEqual(Math.max(...values) + 1e-10);
      }),
    );
  });
});
