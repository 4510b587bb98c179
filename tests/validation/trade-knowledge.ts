import { defineSystem, type RunColumns, type SystemInput } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { plainInput } from '../examples.ts';
import { liveSpan } from '../property/span.ts';

/**
 * A large black-painted plate under one glass, computed from its build (Hottel, Whillier, Klein: plate emittance 0.95, transmittance
 * times absorptance 0.82, W 0.15 m, bond 20 W/(m·K)) and fitted, independently: collector-and-tank.json, second build.
 */
export const blackPlate = { area: 2.88, eta0: 0.6636899467, a1: 5.668461581, a2: 0.009978072546 };

/** Days that are lived, from the first to before the last. */
type Days = readonly [from: number, to: number];

/** Steps of ten minutes. */
const run = (weather: WeatherYear, change: Partial<SystemInput>, [from, to]: Days): RunColumns =>
  liveSpan(defineSystem({ ...plainInput, ...change }), weather, 24 * from, 24 * to, 6).columns;

const hoursWhere = ({ irradiance }: RunColumns, chosen: (hour: number) => boolean): number[] =>
  Array.from(irradiance, (_, hour) => hour).filter(chosen);

/** The middle one of some values. */
export const middle = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

/**
 * Heat from one black plate over the light on it, in hours of full sun with its tank, kept large and drawn from, no warmer than the air.
 * The light comes at up to 40° from the normal. [-]
 */
export function plateShares(weather: WeatherYear, days: Days = [0, 365]): number[] {
  const array = { panels: 1, tilt: 36, azimuth: 180, collector: blackPlate };
  const columns = run(weather, { array, tank: { volume: 1.5 }, draw: { dailyVolume: 1 } }, days);
  const bright = hoursWhere(
    columns,
    (hour) =>
      columns.irradiance[hour]! > 900 &&
      columns.pumpRunning[hour]! > 0.99 &&
      columns.tankMeanTemperature[hour]! < columns.ambientTemperature[hour]!,
  );
  return bright.map((hour) => columns.collectorHeat[hour]! / 3600 / blackPlate.area / columns.irradiance[hour]!);
}

/** Share of the time with sun above 300 W/m² in which a module of some watts runs the pump, and the flow above 800 W/m² [L/min]. */
export function pumpOfModule(
  weather: WeatherYear,
  watts: number,
  days: Days = [0, 365],
): { running: number; flow_L_per_min: number } {
  const size = watts / 20;
  const module = {
    shortCircuitCurrent: 1.24 * size,
    maximumPowerCurrent: 1.14 * size,
    currentTemperatureCoefficient: 0.0007 * size,
  };
  const columns = run(weather, { pv: { module }, control: { highLimit: null } }, days);
  const sunny = hoursWhere(columns, (hour) => columns.irradiance[hour]! > 300);
  const bright = hoursWhere(columns, (hour) => columns.irradiance[hour]! > 800);
  return {
    running: sunny.reduce((sum, hour) => sum + columns.pumpRunning[hour]!, 0) / sunny.length,
    flow_L_per_min: middle(bright.map((hour) => columns.loopFlow[hour]! * 6e4)),
  };
}

/** Hottest layer from June to August, lived from May on, with some panels on the default tank and no high limit. [°C] */
export function summerPeak(weather: WeatherYear, panels: number): number {
  const columns = run(weather, { array: { ...plainInput.array, panels }, control: { highLimit: null } }, [120, 243]);
  return Math.max(...columns.tankMaximumTemperature.subarray(31 * 24));
}
