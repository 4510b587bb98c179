// Global irradiance into beam and diffuse, where only the global is known.
import type { HourlySun } from '../sun/hourly.ts';
import { LIGHT_LIMITS, lightLimit } from './limits.ts';

/**
 * Below this mean cos Z over the sunlit part of an hour (sun 3.7° high) all light counts as diffuse: dividing by less makes
 * beams of errors. Judgement; common practice lies between 0.05 and 0.1. [-]
 */
const LOW_SUN = 0.065;

/**
 * Diffuse share of an hour's global irradiance by the correlation of Erbs, Klein & Duffie.
 *
 *     k ≤ 0.22          1 − 0.09 k
 *     0.22 < k ≤ 0.80   0.9511 − 0.1604 k + 4.388 k² − 16.638 k³ + 12.336 k⁴
 *     0.80 < k          0.165
 *
 * Fitted to four stations of the United States; single hours scatter by about 0.1 to 0.15, sums over months by a few per
 * cent. Clearness above 1, as under broken clouds at low sun, counts as clear.
 *
 * @param clearness - k, the hour's global irradiance over that at the top of the air on the horizontal, ≥ 0. [-]
 * @returns Diffuse over global, 0.165 to 1. [-]
 * @throws RangeError if the clearness is negative or no number.
 * @see Erbs, Klein & Duffie (1982), Estimation of the diffuse radiation fraction for hourly, daily and monthly-average global
 * radiation, Solar Energy 28(4) 293 (coefficients as in Duffie & Beckman, Solar Engineering of Thermal Processes, eq. 2.10.1).
 * @example
 * erbsDiffuseFraction(0.5); // 0.6592
 */
export function erbsDiffuseFraction(clearness: number): number {
  if (!(clearness >= 0))
    throw new RangeError(`erbsDiffuseFraction: clearness is ${String(clearness)}, expected 0 or more.`);
  return erbsFraction(clearness);
}

/** Kernel of {@link erbsDiffuseFraction}. Unchecked. */
export function erbsFraction(k: number): number {
  if (k <= 0.22) return 1 - 0.09 * k;
  if (k > 0.8) return 0.165;
  return 0.9511 + k * (-0.1604 + k * (4.388 + k * (-16.638 + k * 12.336)));
}

/**
 * Kernel: splits an hour's global irradiance; the rest after the diffuse share is beam.
 *
 *     DHI = f(k) GHI,   DNI = (GHI − DHI) lit / light,   k = GHI / (normal light)
 *
 * so that GHI = DHI + DNI cos Z over the sunlit part of the hour. With the sun below {@link LOW_SUN} all is diffuse. DNI
 * stays below the rare limit of the Baseline Surface Radiation Network; what is above goes to DHI, and the sum is kept.
 *
 * @param ghi - Mean of the hour. [W/m²]
 * @param sun - Of the year.
 * @param hour - Of the year, from 0.
 * @param out - Receives DNI and DHI, means of the hour, in its first two places. [W/m²]
 */
export function splitHour(ghi: number, sun: HourlySun, hour: number, out: Float64Array): void {
  const light = sun.light[hour]!;
  const share = light > 0 ? erbsFraction(ghi / (sun.normal[hour]! * light)) : 1;
  beamFromRest(ghi, ghi * share, sun, hour, out);
}

/** Kernel: DNI from what DHI leaves of GHI, with the same guards; arguments as in {@link splitHour}. */
export function beamFromRest(ghi: number, dhi: number, sun: HourlySun, hour: number, out: Float64Array): void {
  const light = sun.light[hour]!;
  const lit = sun.lit[hour]!;
  out[0] = 0;
  out[1] = Math.max(ghi, 0);
  if (!(lit > 0 && light / lit >= LOW_SUN)) return;
  const most = lightLimit(LIGHT_LIMITS.dni.rare, sun.normal[hour]!, light / lit) * lit;
  const beam = Math.min((Math.max(ghi - dhi, 0) * lit) / light, most);
  out[0] = beam;
  out[1] = Math.max(ghi - (beam * light) / lit, 0);
}
