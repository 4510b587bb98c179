import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileArrayDrivers } from '../../packages/sim-core/src/year/group-drivers.ts';
import { plainInput } from '../examples.ts';
import { readRealAt } from '../weather-io/real-files.ts';
import { hasMoreCases, moreCases } from './more-cases.ts';

interface Season {
  summer_tilt_deg: number;
  winter_tilt_deg: number;
  summer_from: string;
  winter_from: string;
  year_total_perez_kWh_m2: number;
}

/** The day before, in a year without a leap day. */
const dayBefore = (date: string): string =>
  new Date(Date.parse(`2023-${date}T00:00:00Z`) - 86_400_000).toISOString().slice(5, 10);

describe.skipIf(!hasMoreCases)('tilt by season in Greensboro [reference: pvlib and own formulas; 0.5 %]', () => {
  it.each(moreCases<Season>('seasonal_tilt', 'seasonal'))(
    '$summer_tilt_deg° from $summer_from, $winter_tilt_deg° from $winter_from',
    async (one) => {
      const weather = await readRealAt(`weather/${moreCases<string>('seasonal_tilt', 'file') as never}`);
      const days = `${one.summer_from}..${dayBefore(one.winter_from)}`;
      const array = {
        ...plainInput.array,
        tilt: one.winter_tilt_deg,
        azimuth: 180,
        groundAlbedo: 0.2,
        snowAlbedo: null,
        summerTilt: { tilt: one.summer_tilt_deg, days },
      };
      const { irradiance } = compileArrayDrivers(defineSystem({ ...plainInput, array }), weather, 6);
      const year = irradiance.reduce((sum, value) => sum + value, 0) / 6000;
      expect(Math.abs(year / one.year_total_perez_kWh_m2 - 1)).toBeLessThan(5e-3);
    },
  );
});
