import { readFileSync } from 'node:fs';
import { hourStarts } from '@noonloop/weather-io/sun';
import { describe, expect, it } from 'vitest';
import { closureRms } from '../../packages/weather-io/src/closure.ts';
import { sharedFile } from '../shared.ts';
import { hasRealFiles, REAL_FILES as names, readReal as read } from '../weather-io/real-files.ts';

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
const mean = (values: Float64Array): number => sum(values) / values.length;

describe.skipIf(!hasRealFiles)('real weather files', () => {
  it.each([
    ['greensboro', 1566.2, 1476.5, 682.2, 14.422, 3.054, -16.7, 35.6],
    ['sandPoint', 829.2, 819.2, 460.9, 4.421, 5.072, -10.6, 19],
    ['pvgis', 1435.9, 1591.6, 570.9, 13.564, 1.209, -2.11, 34.27],
    ['epw', 1435.9, 1591.6, 570.9, 13.564, 1.21, -2.11, 34.27],
    ['nsrdbTypical', 1809.9, 2152.5, 580.1, 7.699, 2.392, -16.3, 36.2],
  ] as const)(
    '%s: sums %f, %f, %f kWh/m² and means to the last digit, extremes between stamps [pandas and Python, independent]',
    async (name, ghiSum, dniSum, dhiSum, meanAir, meanWind, coldest, warmest) => {
      const { ghi, dni, dhi, dryBulb, windSpeed } = (await read(name)).columns;
      expect(sum(ghi) / 1000).toBeCloseTo(ghiSum, 1);
      expect(sum(dni) / 1000).toBeCloseTo(dniSum, 1);
      expect(sum(dhi) / 1000).toBeCloseTo(dhiSum, 1);
      expect(Math.abs(mean(dryBulb) - meanAir)).toBeLessThan(0.00051);
      expect(Math.abs(mean(windSpeed!) - meanWind)).toBeLessThan(0.00051);
      expect(Math.abs(Math.min(...dryBulb) - coldest)).toBeLessThan(0.051);
      expect(Math.abs(Math.max(...dryBulb) - warmest)).toBeLessThan(0.051);
    },
  );

  it('nsrdb in half hours: sums and means kept, each hour ¼, ½ and ¼ of its instants [pandas; rows from the file]', async () => {
    const { ghi, dni, dhi, dryBulb, windSpeed } = (await read('nsrdb')).columns;
    expect(sum(ghi) / 1000).toBeCloseTo(1748.9, 1);
    expect(sum(dni) / 1000).toBeCloseTo(2173.1, 1);
    expect(sum(dhi) / 1000).toBeCloseTo(528.1, 1);
    expect(Math.abs(mean(dryBulb) - 8.076)).toBeLessThan(0.00051);
    expect(Math.abs(mean(windSpeed!) - 2.645)).toBeLessThan(0.00051);
    const rows = readFileSync(sharedFile(names.nsrdb), 'utf8').trim().split('\n').slice(3);
    const air = rows.map((row) => Number(row.split(',')[20]));
    expect([Math.min(...air), Math.max(...air)]).toEqual([-27.7, 35]);
    expect(
      dryBulb.every(
        (value, hour) =>
          Math.abs(value - (air[2 * hour]! / 4 + air[2 * hour + 1]! / 2 + air[(2 * hour + 2) % 17_520]! / 4)) < 1e-9,
      ),
    ).toBe(true);
  });

  it.each([
    ['greensboro', 8.18, 69.516, 98691.7],
    ['sandPoint', 0.126, 73.487, 101200],
    ['epw', 8.631, 75.124, 99854.9],
    ['nsrdb', -2.88, 53.382, 78842.2],
    ['nsrdbTypical', -3.273, 53.709, 78999.8],
  ] as const)(
    '%s: mean dew point %f °C, humidity %f %%, pressure %f Pa [pandas, independent]',
    async (name, dew, humidity, pascal) => {
      const { dewPoint, relativeHumidity, pressure } = (await read(name)).columns;
      expect(Math.abs(mean(dewPoint!) - dew)).toBeLessThan(0.0051);
      expect(Math.abs(mean(relativeHumidity!) * 100 - humidity)).toBeLessThan(0.00051);
      expect(Math.abs(mean(pressure!) - pascal)).toBeLessThan(0.051);
    },
  );

  it.each([
    ['greensboro', 0.5, 1.6],
    ['sandPoint', 0.5, 0.47],
    ['pvgis', 0.1761, 0.55],
    ['epw', 0.1761, 0.55],
    ['nsrdbTypical', 0.5, 0.46],
  ] as const)(
    '%s: irradiance stands %f h into the row, where the closure is %f W/m² [SPA and pandas, independent]',
    async (name, midpoint, rms) => {
      const year = await read(name);
      expect(year.irradianceMidpoint).toBe(midpoint);
      const { latitude, longitude } = year.site;
      const input = { columns: year.columns, starts: hourStarts(year), latitude, longitude };
      // 0.013° between the two sun positions is 0.2 W/m² of 1000.
      expect(Math.abs(closureRms(input, midpoint) - rms)).toBeLessThan(0.05);
      expect(closureRms(input, midpoint + 0.25)).toBeGreaterThan(3 * rms);
      expect(year.assumptions.map(({ code }) => code)).not.toContain('closure-mismatch');
    },
  );

  it('nsrdb pairs at :00 and :30 make hours of the clock [rule of the format]', async () => {
    expect((await read('nsrdb')).irradianceMidpoint).toBe(0.5);
  });

  it('the EPW has the sun of the PVGIS CSV, row by row, and says what it found [the same rows in two files]', async () => {
    const [fromCsv, fromEpw] = [await read('pvgis'), await read('epw')];
    expect(fromEpw.site.utcOffset).toBe(fromCsv.site.utcOffset);
    expect(fromEpw.irradianceMidpoint).toBe(fromCsv.irradianceMidpoint);
    expect(hourStarts(fromEpw)).toEqual(hourStarts(fromCsv));
    for (const key of ['ghi', 'dni', 'dhi', 'dryBulb', 'relativeHumidity', 'pressure', 'skyLongwave'] as const) {
      expect(fromEpw.columns[key]).toEqual(fromCsv.columns[key]);
    }
    expect(fromEpw.assumptions.map(({ code }) => code)).toContain('instant-from-closure');
  });

  it('months keep their calendar years [TMY3: January 1988, December 1980; PVGIS: February 2007, November 2007]', async () => {
    const years = (await read('greensboro')).calendarYears;
    expect([years[0], years[8759]]).toEqual([1988, 1980]);
    const pvgisYears = (await read('pvgis')).calendarYears;
    expect([pvgisYears[1], pvgisYears[32 * 24], pvgisYears[310 * 24], pvgisYears[8759]]).toEqual([
      2018, 2007, 2007, 2016,
    ]);
  });

  it('an albedo that was not measured is none [read from the files: Greensboro 0 throughout, Sand Point measured]', async () => {
    expect((await read('greensboro')).columns.albedo).toBeNull();
    expect((await read('sandPoint')).columns.albedo).not.toBeNull();
  });
});
