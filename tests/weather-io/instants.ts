// Instants at some minutes of each hour, and what stands in an hour by hand.
import type { WeatherYear } from '@noonloop/weather-io';
import { expect } from 'vitest';
import { nsrdbLines, sampleYear } from './samples.ts';

/** Temperature numbers the rows: this is the row, or what lies between two rows, that stands in an hour. [rows] */
export const rowAt = ({ columns }: WeatherYear, hour: number): number =>
  Number((columns.dryBulb[hour]! * 1000).toFixed(6));

/** Minutes of the instants, and what of the rows is the mean of the hour from 4001:00. */
export const NSRDB_MINUTES: readonly (readonly [minutes: number[], row: number])[] = [
  [[0, 30], 8002.25 + 0.75], // ¼ · 8002 + ½ · 8003 + ¼ · 8004
  [[20, 50], (8001 / 6 + 8002 + (8003 * 5) / 6) / 2],
  [[15, 45], 8002.5],
  [[10, 30, 50], 12_004],
  [[0, 15, 30, 45], (16_004 / 2 + 16_005 + 16_006 + 16_007 + 16_008 / 2) / 4],
];

/** Each instant stands for the time about it, in hours of the clock, and the energy is kept. */
export function ofInstants(minutes: number[], row: number): void {
  const year = sampleYear('nsrdb', { minutes });
  expect(rowAt(year, 4001)).toBeCloseTo(row, 5);
  expect(year.irradianceMidpoint).toBe(0.5);
  const light = nsrdbLines({ minutes })
    .slice(3)
    .reduce((sum, line) => sum + Number(line.split(',')[5]), 0);
  expect(year.columns.ghi.reduce((sum, value) => sum + value, 0)).toBeCloseTo(light / minutes.length, 6);
  expect(year.assumptions.map(({ code }) => code)).toContain('averaged-to-hours');
}
