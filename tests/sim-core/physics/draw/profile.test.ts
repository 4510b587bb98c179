import { describe, expect, it } from 'vitest';
import type { DrawProfileName } from '../../../../packages/sim-core/src/design/house.ts';
import { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import { mProfileShares } from '../../../../packages/sim-core/src/physics/draw/default-shape.ts';
import { drawProfile } from '../../../../packages/sim-core/src/physics/draw/index.ts';

const NAMES: readonly DrawProfileName[] = [
  '3XS',
  'XXS',
  'XS',
  'S',
  'M',
  'L',
  'XL',
  'XXL',
  'level',
  'morning',
  'evening',
];

describe('drawProfile', () => {
  it.each(NAMES)('%s: 24 shares that add up to 1, with a source [conservation]', (name) => {
    const { hourlyShares, source } = drawProfile(name);
    expect(hourlyShares).toHaveLength(24);
    expect(hourlyShares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
    expect(Math.min(...hourlyShares)).toBeGreaterThanOrEqual(0);
    expect(source).not.toBe('');
  });

  it('M: 1.61 of 5.845 kWh from 07:00, 1.505 from 21:00 [added up by hand from the table]', () => {
    expect(mProfileShares[7]).toBeCloseTo(1.61 / 5.845, 12);
    expect(mProfileShares[21]).toBeCloseTo(1.505 / 5.845, 12);
    expect(mProfileShares[3]).toBe(0);
  });

  it('no draw of a table runs past the hour in which it starts [its own flow]', () => {
    for (const name of NAMES) {
      for (const { start, volume, flow } of drawProfile(name).events) {
        expect(Math.floor((start + volume / flow) / 3600)).toBe(Math.floor(start / 3600));
      }
    }
  });

  it('evening and morning put three fifths where they say [judgement, its own words]', () => {
    const sum = (name: DrawProfileName, from: number, to: number) =>
      drawProfile(name)
        .hourlyShares.slice(from, to)
        .reduce((total, share) => total + share, 0);
    expect(sum('evening', 18, 24)).toBeCloseTo(0.6, 1);
    expect(sum('morning', 0, 9)).toBeCloseTo(0.6, 1);
  });

  it('M starts at 07:00 with 0.105 kWh at 3 L/min from 25 °C, then 1.4 kWh at 6 L/min of 40 °C [EU 812/2013, Table 3]', () => {
    const [first, second] = drawProfile('M').events;
    expect(first).toMatchObject({ start: 25_200, usefulTemperature: 25, peakTemperature: null });
    expect(first!.energy).toBeCloseTo(378_000, 6);
    expect(first!.flow).toBeCloseTo(5e-5, 15);
    expect(second).toMatchObject({ start: 25_500, usefulTemperature: 40, peakTemperature: null });
    expect(second!.flow).toBeCloseTo(1e-4, 15);
  });

  it('a mere shape has no draws and no heat of its own [requirement]', () => {
    expect(drawProfile('level')).toMatchObject({ events: [], dailyEnergy: null });
  });

  it('refuses a name it does not know [requirement]', () => {
    expect(() => drawProfile('weekend' as 'M')).toThrow(DesignError);
    expect(() => drawProfile('toString' as 'M')).toThrow(DesignError);
  });
});
