import type { Site, WeatherColumns, WeatherYear } from '@noonloop/weather-io';
import { fact, type Saying, say } from '../../input/saying.ts';
import { airPressureAt } from '../fluid/air-pressure.ts';

/** Stefan-Boltzmann constant, 2019 SI. [W/(m²·K⁴)] */
const STEFAN_BOLTZMANN = 5.670374419e-8;
const KELVIN = 273.15;
/** Air pressure at which the correction for altitude vanishes. [Pa] */
const PRESSURE_OF_FIT = 1e5;

/**
 * Emissivity of a cloudless sky by the hour of the day and the station's air pressure.
 *
 *     ε = 0.711 + 0.56 (t_dp/100) + 0.73 (t_dp/100)² + 0.013 cos(2π h/24) + 0.00012 (p − 1000 mbar)/mbar
 *
 * @param dewPoint - Near the ground. [°C]
 * @param hour - h, from midnight; left out, the mean of the day. [h]
 * @param pressure - p; left out, 1000 mbar. [Pa]
 * @returns 0 to 1. [-]
 * @see P. Berdahl and M. Martin, Emissivity of clear skies, Solar Energy 32 (1984) 663 (from memory)
 */
export function clearSkyEmissivity(dewPoint: number, hour?: number, pressure = PRESSURE_OF_FIT): number {
  const hundredth = dewPoint / 100;
  const ofDay = hour === undefined ? 0 : 0.013 * Math.cos((2 * Math.PI * hour) / 24);
  const atHeight = (0.00012 * (pressure - PRESSURE_OF_FIT)) / 100;
  return Math.min(1, Math.max(0, 0.711 + 0.56 * hundredth + 0.73 * hundredth ** 2 + ofDay + atHeight));
}

/**
 * Emissivity of a sky with clouds.
 *
 *     ε = (0.787 + 0.764 ln(T_dp/273 K)) (1 + 0.0224 N − 0.0035 N² + 0.00028 N³)
 *
 * @param dewPoint - Near the ground. [°C]
 * @param cover - Share of the sky behind opaque clouds, 0 to 1; N is ten times that. [-]
 * @returns 0 to 1. [-]
 * @see G. Clark and C. Allen (1978) for the clear sky, G. N. Walton (1983) for the clouds; both as the data dictionary of EPW
 *   files gives them for its horizontal infrared radiation (from memory)
 */
export function cloudySkyEmissivity(dewPoint: number, cover: number): number {
  const tenths = 10 * cover;
  const clear = 0.787 + 0.764 * Math.log((dewPoint + KELVIN) / 273);
  const clouds = 1 + 0.0224 * tenths - 0.0035 * tenths ** 2 + 0.00028 * tenths ** 3;
  return Math.min(1, Math.max(0, clear * clouds));
}

/**
 * Dew point by the Magnus formula over water.
 *
 * @param dryBulb - Air. [°C]
 * @param relativeHumidity - 0 to 1; taken as at least 0.01. [-]
 * @see D. Sonntag, Z. Meteorol. 40 (1990): 17.62 and 243.12 °C
 */
export function dewPointOf(dryBulb: number, relativeHumidity: number): number {
  const gamma = Math.log(Math.max(relativeHumidity, 0.01)) + (17.62 * dryBulb) / (243.12 + dryBulb);
  return (243.12 * gamma) / (17.62 - gamma);
}

/** What the night sky takes from a plane, hour by hour, and how it was found. */
export interface NightSky {
  /** σ T_a⁴ less what the surroundings send, for a black plane at air temperature. Shape [8760]. [W/m²] */
  readonly deficit: Float64Array;
  /** Where the long-wave irradiance came from. */
  readonly basis: Saying<SkyBasisCode>;
}

/** Where the long-wave irradiance of the sky comes from; `-dry`: with an assumed dew point. */
export const SKY_BASES = [
  'sky-longwave',
  'sky-cloudless',
  'sky-cloudless-dry',
  'sky-cloudy',
  'sky-cloudy-dry',
] as const;
/** One of {@link SKY_BASES}. */
type SkyBasisCode = (typeof SKY_BASES)[number];

/** Dew point below air where the weather gives no moisture at all; judgement. [K] */
const DRY_SPREAD = 6;

/**
 * Long-wave deficit of a tilted plane: the share of sky it sees, times what a black body at air temperature sends more than
 * the sky does. The ground is taken at air temperature.
 *
 * The sky is taken from the best that the weather has: its long-wave column; its cloud cover ({@link cloudySkyEmissivity}); else a
 * cloudless sky ({@link clearSkyEmissivity}) at the station's pressure, or at that of its elevation in the standard atmosphere.
 * Cloudless nights are the coldest, so that the last errs to the safe side for freezing.
 *
 * @param weather - One year.
 * @param tilt - Of the plane. [°]
 */
export function nightSky({ columns, site }: Pick<WeatherYear, 'columns' | 'site'>, tilt: number): NightSky {
  const { dryBulb, skyLongwave } = columns;
  const skyShare = (1 + Math.cos((tilt * Math.PI) / 180)) / 2;
  const emissivity = skyLongwave === null ? emissivityOf(columns, site) : null;
  const deficit = dryBulb.map((air, hour) => {
    const black = STEFAN_BOLTZMANN * (air + KELVIN) ** 4;
    return skyShare * (emissivity === null ? black - skyLongwave![hour]! : black * (1 - emissivity(hour)));
  });
  return { deficit, basis: basisOf(columns) };
}

/** Emissivity of the sky by the hour of the year, where the weather has no long-wave column. */
function emissivityOf(columns: WeatherColumns, site: Site): (hour: number) => number {
  const { cloudCover, dryBulb, dewPoint, pressure, relativeHumidity } = columns;
  const standard = airPressureAt(site.elevation);
  return (hour) => {
    const air = dryBulb[hour]!;
    const dew =
      dewPoint?.[hour] ?? (relativeHumidity === null ? air - DRY_SPREAD : dewPointOf(air, relativeHumidity[hour]!));
    return cloudCover === null
      ? clearSkyEmissivity(dew, (hour % 24) + 0.5, pressure?.[hour] ?? standard)
      : cloudySkyEmissivity(dew, cloudCover[hour]!);
  };
}

function basisOf({ cloudCover, dewPoint, relativeHumidity, skyLongwave }: WeatherColumns): NightSky['basis'] {
  if (skyLongwave !== null) return say('sky-longwave');
  const sky = cloudCover === null ? 'sky-cloudless' : 'sky-cloudy';
  if (dewPoint === null && relativeHumidity === null) return say(`${sky}-dry`, { spread: fact(DRY_SPREAD, 'K') });
  return say(sky, { moisture: dewPoint === null ? 'humidity' : 'dew-point' });
}
