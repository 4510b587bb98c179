import type { WeatherColumns } from '@noonloop/weather-io';

/** Stefan-Boltzmann constant, 2019 SI. [W/(m²·K⁴)] */
const STEFAN_BOLTZMANN = 5.670374419e-8;
const KELVIN = 273.15;

/**
 * Emissivity of a cloudless sky at night.
 *
 *     ε = 0.711 + 0.56 (t_dp/100) + 0.73 (t_dp/100)²
 *
 * @param dewPoint - Near the ground. [°C]
 * @returns 0 to 1. [-]
 * @see P. Berdahl and M. Martin, Emissivity of clear skies, Solar Energy 32 (1984) 663 (from memory)
 */
export function clearSkyEmissivity(dewPoint: number): number {
  const hundredth = dewPoint / 100;
  return Math.min(1, 0.711 + 0.56 * hundredth + 0.73 * hundredth ** 2);
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
  /** Where the long-wave irradiance came from, in words. */
  readonly basis: string;
}

/**
 * Temperature of black surroundings that send as much as a plane's sky and ground do: the coldest that radiation can make it.
 *
 * @param air - Taken for the ground too. [°C]
 * @param deficit - Of {@link NightSky}, for the plane. [W/m²]
 * @returns [°C]
 */
export const radiatingTemperature = (air: number, deficit: number): number =>
  ((air + KELVIN) ** 4 - deficit / STEFAN_BOLTZMANN) ** 0.25 - KELVIN;

/** Dew point below air where the weather gives no moisture at all; judgement. [K] */
const DRY_SPREAD = 6;

/**
 * Long-wave deficit of a tilted plane: the share of sky it sees, times what a black body at air temperature sends more than
 * the sky does. The ground is taken at air temperature.
 *
 * Without a long-wave column the sky is taken as cloudless: the coldest case, on the safe side for freezing.
 *
 * @param columns - Weather.
 * @param tilt - Of the plane. [°]
 */
export function nightSky(columns: WeatherColumns, tilt: number): NightSky {
  const { dryBulb, dewPoint, relativeHumidity, skyLongwave } = columns;
  const skyShare = (1 + Math.cos((tilt * Math.PI) / 180)) / 2;
  const deficit = dryBulb.map((air, hour) => {
    const black = STEFAN_BOLTZMANN * (air + KELVIN) ** 4;
    if (skyLongwave !== null) return skyShare * (black - skyLongwave[hour]!);
    const dew =
      dewPoint?.[hour] ?? (relativeHumidity === null ? air - DRY_SPREAD : dewPointOf(air, relativeHumidity[hour]!));
    return skyShare * black * (1 - clearSkyEmissivity(dew));
  });
  if (skyLongwave !== null) return { deficit, basis: 'long-wave irradiance of the sky from the weather file' };
  const moisture =
    dewPoint !== null ? 'dew point' : relativeHumidity !== null ? 'humidity' : 'a dew point 6 K below air';
  return { deficit, basis: `taken as cloudless, from ${moisture} (Berdahl & Martin 1984)` };
}
