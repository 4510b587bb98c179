import { simulate } from '@noonloop/sim-core';
import { synthesizeYear, type WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { monthlyMeans } from '../../packages/weather-io/src/synthesize/months.ts';
import { sum, withPanels } from '../examples.ts';
import { hasRealFiles, REAL_NAMES, readReal } from '../weather-io/real-files.ts';

const design = withPanels(2);

/** Heat from the solar tank over that and the burner's. */
function solarFraction(weather: WeatherYear): number {
  const { columns } = simulate(design, weather);
  const solar = sum(columns.solarHeat);
  return solar / (solar + sum(columns.heaterHeat));
}

/** The table of a handbook for the place of a file. */
function handbook(year: WeatherYear, seed: number) {
  const { ghi, dryBulb, relativeHumidity, windSpeed } = year.columns;
  const range = new Float64Array(365);
  for (let day = 0; day < 365; day++) {
    const hours = dryBulb.subarray(day * 24, day * 24 + 24);
    range[day] = Math.max(...hours) - Math.min(...hours);
  }
  return {
    site: year.site,
    seed,
    monthly: {
      dailyGhi_kWh_per_m2: Array.from(monthlyMeans(ghi), (mean) => mean * 0.024),
      dryBulb: Array.from(monthlyMeans(dryBulb)),
      dailyRange: Array.from(
        monthlyMeans(Float64Array.from({ length: 8760 }, (_, hour) => range[Math.floor(hour / 24)]!)),
      ),
      ...(relativeHumidity && { relativeHumidity: Array.from(monthlyMeans(relativeHumidity)) }),
      ...(windSpeed && { windSpeed: Array.from(monthlyMeans(windSpeed)) }),
    },
  };
}

describe.skipIf(!hasRealFiles)('a synthetic year against the file that gave its means', () => {
  // The bound, 3 percentage points, was set before the first run.
  it.each(REAL_NAMES)('%s: annual solar fraction within 3 points [simulation on the file itself]', async (name) => {
    const year = await readReal(name);
    const real = solarFraction(year);
    const made = [1, 2, 3].map((seed) => solarFraction(synthesizeYear(handbook(year, seed))));
    if (process.env.SHOW !== undefined)
      console.log(name, real.toFixed(4), made.map((value) => (100 * (value - real)).toFixed(2)).join(' '));
    for (const value of made) expect(Math.abs(value - real)).toBeLessThan(0.03);
  });
});
