/** Wind and sky in a collector's balance through a year, by the further coefficients of the quasi-dynamic test. */
import type { WeatherYear } from '@noonloop/weather-io';
import { REFERENCE_WIND } from './efficiency.ts';

/** Wind along the collectors at which a3, a6 and a7 are held: tests end well below; judgement. [m/s] */
export const HIGHEST_WIND = 10;

/** Height of a station's anemometer where the weather says none: that of the World Meteorological Organization. [m] */
const STATION_HEIGHT = 10;
/** Roughness length of open grassland, World Meteorological Organization, Guide to Instruments (from memory). [m] */
const OPEN_GROUND = 0.03;

/** Coefficients of wind and sky, see `CollectorRating`. */
interface WindAndSky {
  /** Heat loss without wind terms. [W/(m²·K)] */
  readonly a1: number;
  /** Growth of a1 with wind. [J/(m³·K)] */
  readonly a3: number;
  /** Share of the sky's long-wave deficit by day; `null`: the rated losses hold it. [-] */
  readonly a4: number | null;
  /** Fall of the zero-loss efficiency with wind. [s/m] */
  readonly a6: number;
  /** Fall of a4 with wind. [s/m] */
  readonly a7: number;
  /** Share of the sky's long-wave deficit at night; a4 where that is given. [-] */
  readonly skyCoefficient: number;
}

/**
 * Wind at a height over that at 10 m, above open ground.
 *
 *     w(z)/w(10 m) = ln(z/z0)/ln(10 m/z0),   z0 = 0.03 m
 *
 * @param height - z, at least 0.5. [m]
 * @returns 0.72 at 2 m. [-]
 * @see Logarithmic wind profile, any textbook of boundary-layer meteorology.
 */
export const windAtHeight = (height: number): number =>
  Math.log(height / OPEN_GROUND) / Math.log(STATION_HEIGHT / OPEN_GROUND);

/**
 * Wind along the collectors over that of the weather's column: the design's factor holds for the wind at 10 m.
 *
 * @param site - Where and how high the wind was measured.
 * @param factor - `array.windFactor`. [-]
 */
export const windShare = ({ windHeight }: WeatherYear['site'], factor: number): number =>
  windHeight === undefined ? factor : factor / windAtHeight(windHeight);

/**
 * Wind along the collectors less that of the test: u = min(f w, 10 m/s) − 3 m/s.
 *
 * @param stationWind - w, hour by hour. [m/s]
 * @param factor - f, wind along the roof over that of the station, see {@link windShare}. [-]
 * @returns Shape of `stationWind`. [m/s]
 */
export const windOverTest = (stationWind: Float64Array, factor: number): Float64Array =>
  stationWind.map((wind) => Math.min(factor * wind, HIGHEST_WIND) - REFERENCE_WIND);

/** Share of the sky's deficit with wind, s − a7 u, never below 0. [-] */
const skyShare = (share: number, a7: number, over: number): number => Math.max(share - a7 * over, 0);

/**
 * Takes what wind and sky take from the absorbed light, whatever the fluid's temperature:
 *
 *     S = max(η0 G' − a6 u G, 0) − (a4 − a7 u) D        D = σ T_a⁴ − E_L
 *
 * Steps without light are left alone: there the run takes {@link skyLoss} by itself.
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
  { a4, a6, a7 }: WindAndSky,
): void {
  const byWind = over !== null && a6 > 0;
  if (!byWind && a4 === null) return;
  const stepsPerHour = absorbed.length / deficit.length;
  for (let at = 0; at < absorbed.length; at++) {
    if (irradiance[at] === 0) continue;
    const hour = Math.trunc(at / stepsPerHour);
    if (byWind) absorbed[at] = Math.max(absorbed[at]! - a6 * over[hour]! * irradiance[at]!, 0);
    if (a4 !== null) absorbed[at]! -= skyShare(a4, a7, over?.[hour] ?? 0) * deficit[hour]!;
  }
}

/** What the sky takes in hours without light, (s − a7 u) D with s `skyCoefficient`. Shape of `deficit`. [W/m²] */
export const skyLoss = (
  over: Float64Array | null,
  deficit: Float64Array,
  { a7, skyCoefficient }: WindAndSky,
): Float64Array => deficit.map((lacking, hour) => skyShare(skyCoefficient, a7, over?.[hour] ?? 0) * lacking);

/** Heat loss coefficient of each hour, a1 + a3 u, or `null` where it never changes. Shape of `over`. [W/(m²·K)] */
export const lossInWind = (over: Float64Array | null, { a1, a3 }: WindAndSky): Float64Array | null =>
  over === null || a3 === 0 ? null : over.map((wind) => a1 + a3 * wind);
