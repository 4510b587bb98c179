/** Pressure of the air, between gauge and absolute pressure. */
import { requireNumber } from '../../input/errors.ts';

/** Of the standard atmosphere at sea level, ISO 2533. [Pa] */
export const STANDARD_ATMOSPHERE = 101_325;

/**
 * Pressure of the air at a height, p = 101,325 Pa (1 − 2.25577e-5 h)^5.25588.
 *
 * @param altitude - h, above sea level, −500 to 9000. [m]
 * @returns [Pa]
 * @throws {@link DesignError} outside it.
 * @see ISO 2533, troposphere.
 */
export function airPressureAt(altitude: number): number {
  requireNumber('altitude', altitude, -500, 9000, 'm');
  return STANDARD_ATMOSPHERE * (1 - 2.25577e-5 * altitude) ** 5.25588;
}

/**
 * Pressure of the air at a site: the mean of the weather's own column, or that of its height.
 *
 * @param elevation - Above sea level. [m]
 * @param measured - At the station; `null` where there is none. [Pa]
 */
export function siteAirPressure(elevation: number, measured: Float64Array | null): number {
  if (measured === null || measured.length === 0) return airPressureAt(elevation);
  return measured.reduce((sum, value) => sum + value, 0) / measured.length;
}
