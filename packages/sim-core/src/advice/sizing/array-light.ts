/** What a day of each month gives a square metre of panel at a working temperature: the numbers behind the count of panels. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { DAYS_OF_MONTH, MONTH_STARTS } from '../../physics/calendar.ts';
import { compileArrayDrivers } from '../../year/group-drivers.ts';

/** Steps of an hour. */
const STEPS = 2;
const SECONDS = 3600 / STEPS;
/** Temperatures between which the gain is read off straight. [K] */
const GRID = 5;
/** Hottest of them. [°C] */
const HOTTEST = 120;

/** A month's light that is worth having: the steps in which a panel at the working temperature gains. */
export interface UsefulLight {
  /** H_u: light in useful steps after incidence modifiers, less what wind and sky take of it, over η0; a mean day. [J/m²] */
  readonly usefulDaily: number;
  /** N_u: useful time, a mean day. [s] */
  readonly usefulTime: number;
  /** Air in useful steps; the mean of all where there are none. [°C] */
  readonly air: number;
  /** a1 with the wind of useful steps; a1 where there are none. [W/(m²·K)] */
  readonly a1: number;
  /** η0 H_u − Σ (a1 d + a2 d²), with d of each step: what a panel gains, a mean day. [J/m²] */
  readonly gain: number;
}

/** A year's light on a design's plane, behind horizon and obstacle, with its wind and sky. */
export interface ArrayLight {
  /** Light on the plane, a mean day. Shape [12]. [J/m²] */
  readonly daily: readonly number[];
  /** What is useful at a temperature of the fluid [°C] in a month, 0 to 11. */
  readonly useful: (month: number, fluidTemperature: number) => UsefulLight;
  /** The gain alone, straight between temperatures 5 K apart. [J/m²] */
  readonly gain: (month: number, fluidTemperature: number) => number;
}

/** Light and losses as a run meets them. */
export function arrayLight(design: SystemDesign, weather: WeatherYear): ArrayLight {
  const drivers = compileArrayDrivers(design, weather, STEPS);
  const { a1, a2, eta0 } = design.array.collector;
  const { dryBulb } = weather.columns;

  const useful = (month: number, fluidTemperature: number): UsefulLight => {
    const [start, end] = [MONTH_STARTS[month]!, MONTH_STARTS[month + 1]!];
    const days = DAYS_OF_MONTH[month]!;
    const sums = { absorbed: 0, time: 0, airTime: 0, lossTime: 0, gain: 0, air: 0 };
    for (let hour = start; hour < end; hour++) {
      const air = dryBulb[hour]!;
      const d = fluidTemperature - air;
      const linear = drivers.lossCoefficient?.[hour] ?? a1;
      const loss = (linear + a2 * Math.abs(d)) * d;
      sums.air += air;
      for (let step = hour * STEPS; step < (hour + 1) * STEPS; step++) {
        const flux = drivers.absorbed[step]! - loss;
        if (drivers.irradiance[step]! <= 0 || flux <= 0) continue;
        sums.absorbed += drivers.absorbed[step]! * SECONDS;
        sums.time += SECONDS;
        sums.airTime += air * SECONDS;
        sums.lossTime += linear * SECONDS;
        sums.gain += flux * SECONDS;
      }
    }
    const any = sums.time > 0;
    return {
      usefulDaily: sums.absorbed / eta0 / days,
      usefulTime: sums.time / days,
      air: any ? sums.airTime / sums.time : sums.air / (end - start),
      a1: any ? sums.lossTime / sums.time : a1,
      gain: sums.gain / days,
    };
  };

  const grid = DAYS_OF_MONTH.map((_, month) =>
    Float64Array.from({ length: HOTTEST / GRID + 1 }, (_, at) => useful(month, at * GRID).gain),
  );
  return {
    daily: DAYS_OF_MONTH.map((days, month) => {
      const steps = drivers.irradiance.subarray(MONTH_STARTS[month]! * STEPS, MONTH_STARTS[month + 1]! * STEPS);
      return (steps.reduce((sum, light) => sum + light, 0) * SECONDS) / days;
    }),
    useful,
    gain: (month, fluidTemperature) => {
      const place = Math.min(Math.max(fluidTemperature / GRID, 0), HOTTEST / GRID);
      const at = Math.min(Math.trunc(place), HOTTEST / GRID - 1);
      const row = grid[month]!;
      return row[at]! + (place - at) * (row[at + 1]! - row[at]!);
    },
  };
}
