import type { WeatherYear } from '@noonloop/weather-io';
import { mainsColumn } from '../draw/mains.ts';
import { type ArrayDrivers, compileArrayDrivers } from './array-drivers.ts';
import type { SystemDesign } from './design.ts';
import { compilePumpDrivers, type PumpDrivers } from './pump-drivers.ts';

/** All that acts on the system from outside, computed before the year starts: nothing in it depends on the state. */
export interface Drivers extends Omit<ArrayDrivers, 'arrayAssumptions'>, PumpDrivers {
  /** Steps in each hour of the sub-hourly columns. */
  readonly stepsPerHour: number;
  /** Whether any light falls in the hour. Shape [8760]. */
  readonly lit: Uint8Array;
  /** Outdoor air. Shape [8760]. [°C] */
  readonly ambient: Float64Array;
  /** Cold mains. Shape [8760]. [°C] */
  readonly mains: Float64Array;
  /** Mixed water wanted at the taps. Shape [8760]. [m³] */
  readonly tapVolume: Float64Array;
  /** What was taken for granted about the weather, in words. */
  readonly assumptions: readonly string[];
}

/**
 * Turns weather and habits into what the system meets, step by step.
 *
 * @param design - The system.
 * @param weather - One year.
 * @param stepsPerHour - Steps in each hour.
 */
export function compileDrivers(design: SystemDesign, weather: WeatherYear, stepsPerHour: number): Drivers {
  const { draw } = design;
  const { arrayAssumptions, ...array } = compileArrayDrivers(design, weather, stepsPerHour);
  return {
    stepsPerHour,
    ...array,
    ...compilePumpDrivers(design, array.pvIrradiance, weather.columns.dryBulb, stepsPerHour),
    lit: litHours(array.irradiance, array.pvIrradiance, stepsPerHour),
    ambient: weather.columns.dryBulb,
    mains: mainsColumn(draw.mains, weather),
    tapVolume: tapVolumes(draw.dailyVolume, draw.hourlyShares),
    assumptions: [...weather.assumptions.map((assumption) => assumption.text), ...arrayAssumptions],
  };
}

function litHours(first: Float64Array, second: Float64Array, stepsPerHour: number): Uint8Array {
  const lit = new Uint8Array(first.length / stepsPerHour);
  for (let step = 0; step < first.length; step++) {
    if (first[step]! > 0 || second[step]! > 0) lit[Math.trunc(step / stepsPerHour)] = 1;
  }
  return lit;
}

/** The same day, every day of the year. */
function tapVolumes(dailyVolume: number, shares: readonly number[]): Float64Array {
  const sum = shares.reduce((total, share) => total + share, 0);
  return Float64Array.from({ length: 8760 }, (_, hour) => (dailyVolume * shares[hour % 24]!) / sum);
}
