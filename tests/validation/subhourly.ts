/** Days of shared subhourly.csv as a year of weather. */
import type { WeatherYear } from '@noonloop/weather-io';
import { sum } from '../examples.ts';
import { moreCase } from './more-cases.ts';
import { number, type ReferenceRow, referenceTable } from './reference-table.ts';

export const HOURS = 8760;
export const STEPS = 6;
export const rows = referenceTable('reference/more/subhourly.csv');

interface Site {
  readonly latitude: number;
  readonly longitude: number;
  readonly elevation_m: number;
  readonly utc_offset: number;
}

/** Place of a row's 10 minutes in the local year. */
export function stepOf(row: ReferenceRow, offset: number): number {
  const local = new Date(Date.parse(String(row.time_utc)) + offset * 3_600_000);
  const start = Date.UTC(local.getUTCFullYear(), 0, 1);
  return Math.floor((local.getTime() - start) / 600_000);
}

const years = new Map<string, WeatherYear>();

/** A year that holds the table's days of one sky: at their own step, or as hourly means of it. Made once: planes share its sun. */
export function yearOf(sky: string, own: boolean): WeatherYear {
  const key = `${sky} ${own}`;
  const year = years.get(key) ?? makeYear(sky, own);
  years.set(key, year);
  return year;
}

function makeYear(sky: string, own: boolean): WeatherYear {
  const site = moreCase<Site>('subhourly', 'site');
  const fine = Object.fromEntries(['ghi', 'dni', 'dhi'].map((key) => [key, new Float64Array(HOURS * STEPS)])) as Record<
    'ghi' | 'dni' | 'dhi',
    Float64Array
  >;
  for (const row of rows) {
    if (row.sky !== sky) continue;
    const at = stepOf(row, site.utc_offset);
    for (const key of ['ghi', 'dni', 'dhi'] as const) fine[key][at] = number(row, `${key}_W_m2`);
  }
  const hourly = (column: Float64Array) =>
    new Float64Array(HOURS).map((_, hour) => sum(column.subarray(hour * STEPS, (hour + 1) * STEPS)) / STEPS);
  const none = null;
  return {
    site: { ...site, name: 'shared cases', elevation: site.elevation_m, utcOffset: site.utc_offset },
    format: 'plain',
    source: 'subhourly.csv',
    columns: {
      ghi: hourly(fine.ghi),
      dni: hourly(fine.dni),
      dhi: hourly(fine.dhi),
      dryBulb: new Float64Array(HOURS).fill(15),
      dewPoint: none,
      relativeHumidity: none,
      windSpeed: none,
      pressure: none,
      skyLongwave: none,
      cloudCover: none,
      albedo: none,
      snowDepth: none,
    },
    irradianceMidpoint: 0.5,
    calendarYears: new Int16Array(HOURS).fill(2017),
    assumptions: [],
    ...(own && { fineLight: { stepsPerHour: STEPS, midpoint: 0.5, ...fine } }),
  };
}
