import { fileURLToPath } from 'node:url';
import { defineSystem, type SystemDesign, type SystemInput } from '@noonloop/sim-core';
import { readWeather, type WeatherYear } from '@noonloop/weather-io';

let valley: Promise<WeatherYear> | undefined;

/** The demo's invented weather, read once. */
export function inventedValley(): Promise<WeatherYear> {
  valley ??= readWeather(fileURLToPath(new URL('../docs/examples/weather/invented-valley.csv', import.meta.url)));
  return valley;
}

/** What a household of our own invention writes down; the rest is defaults. */
export const plainInput: SystemInput = {
  name: 'two panels',
  array: { panels: 2, tilt: 40, azimuth: 180, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: 0.3 },
  draw: { dailyVolume: 0.2 },
};

/** The same with another number of panels. */
export const withPanels = (panels: number): SystemDesign =>
  defineSystem({ ...plainInput, name: `${panels} panels`, array: { ...plainInput.array, panels } });

/** Sum of a column. */
export const sum = (column: Float64Array): number => column.reduce((total, value) => total + value, 0);
