import { fileURLToPath } from 'node:url';
import { defineSystem, type RunResult, type SystemDesign, type SystemInput, simulate } from '@noonloop/sim-core';
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

const years = new WeakMap<WeatherYear, Map<string, RunResult>>();
/** Years of a weather that are kept; each is 4 MB. */
const MOST_YEARS = 30;

/** What `simulate` says, computed once for designs that are alike in one weather: many tests read the same year, and none changes it. */
export function yearOf(design: SystemDesign, weather: WeatherYear): RunResult {
  const known = years.get(weather) ?? new Map<string, RunResult>();
  years.set(weather, known);
  const key = JSON.stringify(design, (_, value) => (value === Number.POSITIVE_INFINITY ? 'without end' : value));
  const kept = known.get(key);
  if (kept !== undefined) return kept;
  if (known.size >= MOST_YEARS) known.delete(known.keys().next().value!);
  const run = simulate(design, weather);
  known.set(key, run);
  return run;
}

/** Sum of a column. */
export const sum = (column: Float64Array): number => column.reduce((total, value) => total + value, 0);
