// The sun over whole hours: how long it is up and how high, for everything that reckons with means of an hour.
import { hourStarts } from '../time/hours.ts';
import type { WeatherYear } from '../year.ts';
import { extraterrestrialNormal } from './extraterrestrial.ts';
import { sunPositionInto } from './position.ts';

const HOUR_MS = 3_600_000;
const RAD = Math.PI / 180;

/** Instants in an hour at which the sun is looked at; as many as the simulation takes by default. */
const STEPS = 6;

/** The sun of each hour of a year, over the hour that is centred at row start + `irradianceMidpoint`. */
export interface HourlySun {
  /** Mean of max(cos Z, 0) over the hour. Shape [8760]. [-] */
  readonly light: Float64Array;
  /** Share of the hour with the sun up, 0 to 1. Shape [8760]. [-] */
  readonly lit: Float64Array;
  /** Greatest cos Z in the hour, 0 where the sun is down. Shape [8760]. [-] */
  readonly highest: Float64Array;
  /** Irradiance at the top of the air, facing the sun. Shape [8760]. [W/m²] */
  readonly normal: Float64Array;
}

/**
 * Sun of each hour of a year, from six instants an hour.
 *
 * @param year - Of it, the place, the calendar years and the midpoint are used.
 * @returns Columns of 8760 values; `normal × light` is the horizontal irradiance at the top of the air.
 */
export function hourlySun(year: Pick<WeatherYear, 'site' | 'calendarYears' | 'irradianceMidpoint'>): HourlySun {
  const starts = hourStarts(year);
  const { latitude, longitude } = year.site;
  const hours = starts.length;
  const light = new Float64Array(hours);
  const lit = new Float64Array(hours);
  const highest = new Float64Array(hours);
  const normal = new Float64Array(hours);
  const position = new Float64Array(2);
  for (let hour = 0; hour < hours; hour++) {
    const middle = starts[hour]! + year.irradianceMidpoint * HOUR_MS;
    normal[hour] = extraterrestrialNormal(middle);
    sunPositionInto(position, 0, middle, latitude, longitude);
    if (position[0]! > 100) continue; // half an hour moves the sun by at most 7.5°
    for (let step = 0; step < STEPS; step++) {
      const time = middle + ((step + 0.5) / STEPS - 0.5) * HOUR_MS;
      sunPositionInto(position, 0, time, latitude, longitude);
      if (!(position[0]! < 90)) continue;
      const cosine = Math.cos(position[0]! * RAD);
      light[hour] = light[hour]! + cosine / STEPS;
      highest[hour] = Math.max(highest[hour]!, cosine);
      lit[hour] = lit[hour]! + 1 / STEPS;
    }
  }
  return { light, lit, highest, normal };
}
