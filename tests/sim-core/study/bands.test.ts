import { bands, DesignError, defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { housesOf } from '../../../packages/sim-core/src/study/band-houses.ts';
import { movers } from '../../../packages/sim-core/src/study/band-parts.ts';
import { inventedValley, plainInput } from '../../examples.ts';

const weather = await inventedValley();
const found = await bands(plainInput, weather).outcome();

describe('bands', () => {
  it('hold the value as written and its middle, causes in order of size [requirement]', () => {
    for (const [measure, band] of Object.entries(found)) {
      expect(band.low, measure).toBeLessThanOrEqual(band.value);
      expect(band.high, measure).toBeGreaterThanOrEqual(band.value);
      expect(band.low <= band.middle && band.middle <= band.high).toBe(true);
      const sizes = band.parts.map(({ deviation }) => deviation);
      expect(sizes).toEqual([...sizes].sort((a, b) => b - a));
    }
  });

  // In solar heat the draws lead where nobody has read a meter (common practice, no source).
  it('the water use leads for a house without a meter, and every cause has a source [requirement]', () => {
    const { parts } = found.fuelSaved!;
    expect(parts[0]!.name).toBe('water-use');
    expect(parts.every(({ source }) => /read|measured|memory|judgement/.test(source))).toBe(true);
  });

  // Under a uniform sky what falls on the panels goes with the light, in proportion.
  it('of the light on the panels is the light’s own spread [closed form: 1.645 √(5² + 3² + 2²) %]', async () => {
    const uniformSky = { ...plainInput, array: { ...plainInput.array, skyModel: 'isotropic' as const } };
    const { irradiation } = await bands(uniformSky, weather, { oneYear: false, measures: ['irradiation'] }).outcome();
    expect(Math.abs(irradiation!.halfWidth! - 1.6449 * Math.hypot(0.05, 0.03, 0.02))).toBeLessThan(0.001);
  });

  it('stand houses in which no two causes hang together, each at as many places as there are houses [requirement]', () => {
    const list = movers(defineSystem(plainInput), weather, { collector: 'certificate', water: 'meter', oneYear: true });
    const houses = housesOf(list);
    const columns = list.map(({ mean, deviation }, cause) => houses.map((at) => (at[cause]! - mean) / deviation));
    const product = (one: number[], other: number[]): number =>
      one.reduce((sum, value, house) => sum + value * other[house]!, 0) / houses.length;
    for (const [cause, column] of columns.entries()) {
      expect(new Set(column).size).toBe(houses.length);
      // Middles of 20 strata of a normal distribution: mean 0, a variance a few hundredths below 1.
      expect(Math.abs(column.reduce((sum, value) => sum + value, 0))).toBeLessThan(1e-6);
      expect(Math.abs(product(column, column) - 0.95)).toBeLessThan(0.03);
      for (const other of columns.slice(0, cause)) expect(Math.abs(product(column, other))).toBeLessThan(0.1);
    }
  });

  it('refuse what they do not know, all at once [requirement]', () => {
    const wrong = () => bands(plainInput, weather, { share: 2, water: 'guess' as 'meter' });
    expect(wrong).toThrow(DesignError);
    expect(wrong).toThrow(/options\.water[\s\S]*options\.share/);
  });
});
