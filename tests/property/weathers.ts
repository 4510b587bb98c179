/** Random weather, made of a year that is given. */
import type { FineLight, WeatherYear } from '@noonloop/weather-io';
import fc from 'fast-check';
import type { Hours } from './bounds.ts';
import { number } from './number.ts';

/** What is done to a year of weather to make another. */
export interface WeatherChange {
  /** Added to air and dew point. [K] */
  readonly warmer: number;
  /** Factor on all light. [-] */
  readonly brighter: number;
  /** Added to the latitude. [°] */
  readonly north: number;
  /** Half a year later, on the other side of the equator. */
  readonly southern: boolean;
  /** Without wind, and without what tells how moist the air is. */
  readonly bare: boolean;
  /** Depth of snow in the hours below freezing; `null`: no such column. [m] */
  readonly snow: number | null;
  /** Reflectance of the ground; `null`: the year's own column, if it has one. [-] */
  readonly ground: number | null;
  /** Steps of light in an hour, clouds passing from one to the next; 1: none but the hour's. */
  readonly lightSteps: number;
}

/** Changes from none to a climate that nobody has measured. */
export const weatherChanges: fc.Arbitrary<WeatherChange> = fc.record({
  warmer: number(-25, 12),
  brighter: number(0.3, 1.2),
  north: number(-15, 15),
  southern: fc.boolean(),
  bare: fc.boolean(),
  snow: fc.constantFrom(null, null, 0, 0.2),
  ground: fc.constantFrom(null, null, 0.1, 0.6),
  lightSteps: fc.constantFrom(1, 1, 1, 2, 4, 6),
});

/** Beam of a step over that of its hour, in turn; their mean is 1. */
const CLOUDS = [0.4, 1.6];

/** The hour's light in steps, its beam under passing clouds. */
function broken({ dhi, dni, ghi }: WeatherYear['columns'], stepsPerHour: number): FineLight {
  const inSteps = (value: (hour: number, clear: number) => number): Float64Array =>
    Float64Array.from({ length: dni.length * stepsPerHour }, (_, step) =>
      value(Math.trunc(step / stepsPerHour), CLOUDS[step % CLOUDS.length]!),
    );
  return {
    stepsPerHour,
    midpoint: 0.5,
    dni: inSteps((hour, clear) => dni[hour]! * clear),
    dhi: inSteps((hour) => dhi[hour]!),
    ghi: inSteps((hour, clear) => Math.max(dhi[hour]! + (ghi[hour]! - dhi[hour]!) * clear, 0)),
  };
}

/**
 * Another year made of one; the first is left as it is.
 *
 * @param lit - Hours that keep their light; all others are dark, which spares a short run most of the sun's work.
 */
export function changeWeather(year: WeatherYear, change: WeatherChange, lit?: Hours): WeatherYear {
  const { columns, site } = year;
  // Whole days: noon stays noon.
  const shift = change.southern ? 182 * 24 : 0;
  const roll = (column: Float64Array, value: (old: number) => number = (old) => old) =>
    column.map((_, hour) => value(column[(hour + shift) % column.length]!));
  const optional = (column: Float64Array | null, value?: (old: number) => number) =>
    column === null || change.bare ? null : roll(column, value);
  const light = (column: Float64Array): Float64Array => {
    const changed = roll(column, (old) => old * change.brighter);
    return lit === undefined ? changed : changed.fill(0, 0, lit.from).fill(0, lit.to);
  };
  const air = (old: number) => old + change.warmer;
  const dryBulb = roll(columns.dryBulb, air);
  const latitude = site.latitude + change.north;
  const changed = {
    ...columns,
    ghi: light(columns.ghi),
    dni: light(columns.dni),
    dhi: light(columns.dhi),
    dryBulb,
    dewPoint: optional(columns.dewPoint, air),
    relativeHumidity: optional(columns.relativeHumidity),
    windSpeed: optional(columns.windSpeed),
    pressure: optional(columns.pressure),
    skyLongwave: null,
    cloudCover: null,
    albedo: change.ground === null ? optional(columns.albedo) : dryBulb.map(() => change.ground!),
    snowDepth: change.snow === null ? null : dryBulb.map((value) => (value < 0 ? change.snow! : 0)),
  };
  return {
    ...year,
    source: 'invented, changed at random',
    site: { ...site, latitude: change.southern ? -latitude : latitude },
    columns: changed,
    ...(change.lightSteps === 1 ? {} : { fineLight: broken(changed, change.lightSteps) }),
  };
}
