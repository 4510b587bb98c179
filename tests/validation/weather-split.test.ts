import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { completeLight } from '../../packages/weather-io/src/irradiance/complete.ts';
import { hourlySun } from '../../packages/weather-io/src/sun/hourly.ts';
import { hasRealFiles, REAL_NAMES, type RealFile, readReal } from '../weather-io/real-files.ts';

const SIN_20 = Math.sin((20 * Math.PI) / 180);

/** Annual ratios less 1 of the light split from global irradiance alone to that of the file. */
async function offsets(name: RealFile): Promise<{ diffuse: number; beam: number; beamAbove20: number }> {
  const year: WeatherYear = await readReal(name);
  const split = completeLight({ ...year, columns: { ghi: year.columns.ghi, dni: null, dhi: null } }, []);
  const { light, lit } = hourlySun(year);
  const ratio = (key: 'dni' | 'dhi', counts: (hour: number) => boolean): number => {
    const sum = (values: Float64Array) => values.reduce((total, value, hour) => total + (counts(hour) ? value : 0), 0);
    return sum(split[key]) / sum(year.columns[key]) - 1;
  };
  const off = {
    diffuse: ratio('dhi', () => true),
    beam: ratio('dni', () => true),
    beamAbove20: ratio('dni', (hour) => light[hour]! > SIN_20 * lit[hour]!),
  };
  if (process.env.SHOW !== undefined) console.log(name, off);
  return off;
}

describe.skipIf(!hasRealFiles)(
  'GHI of real files split again by Erbs [against the same files, bounds set before]',
  () => {
    it.each(REAL_NAMES.filter((name) => name !== 'sandPoint'))(
      '%s: annual diffuse within 20 %, beam within 15 %',
      async (name) => {
        const { diffuse, beam } = await offsets(name);
        expect(Math.abs(diffuse)).toBeLessThan(0.2);
        expect(Math.abs(beam)).toBeLessThan(0.15);
      },
    );

    // At 55° north 37 % of the beam comes from below 20°. There the correlation, which does not know how high the sun stands,
    // takes clear sky for haze: the bound of 15 % for all beam does not hold (−21 %), that for the sun above 20° does.
    it('sandPoint: annual diffuse within 20 %, beam within 15 % only with the sun above 20°', async () => {
      const { diffuse, beam, beamAbove20 } = await offsets('sandPoint');
      expect(Math.abs(diffuse)).toBeLessThan(0.2);
      expect(Math.abs(beamAbove20)).toBeLessThan(0.15);
      expect(beam).toBeLessThan(-0.15);
    });
  },
);
