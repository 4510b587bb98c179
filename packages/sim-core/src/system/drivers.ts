import type { WeatherYear } from '@noonloop/weather-io';
import { mainsColumn } from '../draw/mains.ts';
import { drawSchedule } from '../draw/schedule.ts';
import type { DrawWithin } from '../draw/within.ts';
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
  /** Where inside its hour that water is wanted; `null`: evenly. */
  readonly within: DrawWithin | null;
  /** Hours in which taps no warmer than the mains kept a draw of a tapping profile from its heat. */
  readonly heldDrawHours: number;
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
  const mains = mainsColumn(draw.mains, weather);
  const schedule = drawSchedule(draw, mains);
  return {
    stepsPerHour,
    ...array,
    ...compilePumpDrivers(design, array.pvIrradiance, weather.columns.dryBulb, stepsPerHour),
    lit: litHours(array.irradiance, array.pvIrradiance, stepsPerHour),
    ambient: weather.columns.dryBulb,
    mains,
    tapVolume: schedule.volume,
    within: schedule.within,
    heldDrawHours: schedule.heldHours,
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
