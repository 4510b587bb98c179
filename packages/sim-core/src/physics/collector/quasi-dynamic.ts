/** Wind and sky in a collector's balance through a year, by the further coefficients of the quasi-dynamic test. */
import { REFERENCE_WIND } from './efficiency.ts';

/** Wind along the collectors at which a3 and a6 are held: tests end well below; judgement. [m/s] */
export const HIGHEST_WIND = 10;

/** Coefficients of wind and sky, see `CollectorRating`. */
export interface WindAndSky {
  /** Heat loss without wind terms. [W/(m²·K)] */
  readonly a1: number;
  /** Growth of a1 with wind. [J/(m³·K)] */
  readonly a3: number;
  /** Share of the sky's long-wave deficit by day; `null`: the rated losses hold it. [-] */
  readonly a4: number | null;
  /** Fall of the zero-loss efficiency with wind. [s/m] */
  readonly a6: number;
}

/**
 * Wind along the collectors less that of the test: u = min(f w, 10 m/s) − 3 m/s.
 *
 * @param stationWind - w, hour by hour. [m/s]
 * @param factor - f, wind along the roof over that of the station; a judgement of the site. [-]
 * @returns Shape of `stationWind`. [m/s]
 */
export const windOverTest = (stationWind: Float64Array, factor: number): Float64Array =>
  stationWind.map((wind) => Math.min(factor * wind, HIGHEST_WIND) - REFERENCE_WIND);

/**
 * Takes what wind and sky take from the absorbed light, whatever the fluid's temperature:
 *
 *     S = max(η0 G' − a6 u G, 0) − a4 D        D = σ T_a⁴ − E_L
 *
 * Steps without light are left alone: there the run takes `skyCoefficient` D by itself.
 *
 * @param absorbed - η0 G' of each step; changed into S. [W/m²]
 * @param irradiance - G of each step, before incidence modifiers. [W/m²]
 * @param over - u of each hour, from {@link windOverTest}; `null` where the weather has no wind. [m/s]
 * @param deficit - D of each hour. [W/m²]
 * @see ISO 9806:2017, quasi-dynamic model (from memory).
 */
export function applyWindAndSky(
  absorbed: Float64Array,
  irradiance: Float64Array,
  over: Float64Array | null,
  deficit: Float64Array,
  { a4, a6 }: WindAndSky,
): void {
  const byWind = over !== null && a6 > 0;
  if (!byWind && a4 === null) return;
  const stepsPerHour = absorbed.length / deficit.length;
  for (let at = 0; at < absorbed.length; at++) {
    if (irradiance[at] === 0) continue;
    const hour = Math.trunc(at / stepsPerHour);
    if (byWind) absorbed[at] = Math.max(absorbed[at]! - a6 * over[hour]! * irradiance[at]!, 0);
    if (a4 !== null) absorbed[at]! -= a4 * deficit[hour]!;
  }
}

/** Heat loss coefficient of each hour, a1 + a3 u, or `null` where it never changes. Shape of `over`. [W/(m²·K)] */
export const lossInWind = (over: Float64Array | null, { a1, a3 }: WindAndSky): Float64Array | null =>
  over === null || a3 === 0 ? null : over.map((wind) => a1 + a3 * wind);
