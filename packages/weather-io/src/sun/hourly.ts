// The sun over whole hours: how long it is up and how high, for everything that reckons with means of an hour.
import { hourStarts } from '../time/hours.ts';
import { extraterrestrialNormal } from './extraterrestrial.ts';
import { INSTANTS, type SunOfYear, sunInstants } from './instants.ts';

const HOUR_MS = 3_600_000;
const RAD = Math.PI / 180;

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
export function hourlySun(year: SunOfYear): HourlySun {
  const starts = hourStarts(year);
  const positions = sunInstants(year, starts);
  const hours = starts.length;
  const light = new Float64Array(hours);
  const lit = new Float64Array(hours);
  const highest = new Float64Array(hours);
  const normal = new Float64Array(hours);
  for (let hour = 0; hour < hours; hour++) {
    normal[hour] = extraterrestrialNormal(starts[hour]! + year.irradianceMidpoint * HOUR_MS);
    for (let step = 0; step < INSTANTS; step++) {
      const zenith = positions[2 * (INSTANTS * hour + step)]!;
      if (!(zenith < 90)) continue;
      const cosine = Math.cos(zenith * RAD);
      light[hour] = light[hour]! + cosine / INSTANTS;
      highest[hour] = Math.max(highest[hour]!, cosine);
      lit[hour] = lit[hour]! + 1 / INSTANTS;
    }
  }
  return { light, lit, highest, normal };
}
