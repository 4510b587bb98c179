/** What the six lessons share: one house, one invented year, and pictures of lines. */
import { defineSystem, type RunResult, type SystemInput, simulate } from '@noonloop/sim-core';
import { readWeather } from '@noonloop/weather-io';

export { draw } from './picture.ts';

/** The invented year. */
export const weather = await readWeather(new URL('../examples/weather/invented-valley.csv', import.meta.url).pathname);

/** The house of the lessons: two panels of 2 m², 300 L, 200 L a day at 45 °C, no high limit. */
export const house: SystemInput = {
  name: 'house of the lessons',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: '2 m2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '300 L' },
  draw: { dailyVolume: '200 L' },
  control: { highLimit: null },
};

/** A year of that house with something changed; each part given replaces that part. */
export const yearOf = (change: Partial<SystemInput> = {}): RunResult =>
  simulate(defineSystem({ ...house, ...change }), weather, { keepTankNodes: true });

/** Sum of a column over some hours, the year by default. */
export const total = (column: Float64Array, from = 0, to = 8760): number =>
  column.subarray(from, to).reduce((sum, value) => sum + value, 0);

/** The same in kWh. */
export const kWh = (column: Float64Array, from = 0, to = 8760): number => total(column, from, to) / 3.6e6;

/** Highest value of a column. */
export const highest = (column: Float64Array): number => column.reduce((high, value) => Math.max(high, value));

/** First hour of a day of the year; 0 is 1 January. */
export const hourOfDay = (day: number): number => 24 * day;

/** A line of a table in plain text: the first cell to the left, the others to the right. */
export const row = (cells: readonly (string | number)[], first = 26, width = 12): string =>
  cells.map((cell, index) => (index === 0 ? String(cell).padEnd(first) : String(cell).padStart(width))).join('');
