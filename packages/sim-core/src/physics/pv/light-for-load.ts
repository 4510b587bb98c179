import {
  MODIFIED_IDEALITY,
  PHOTOCURRENT,
  SATURATION_CURRENT,
  SERIES_RESISTANCE,
  SHUNT_CONDUCTANCE,
} from './single-diode.ts';

/**
 * Irradiance at which a module gives a current at a voltage: the single-diode equation read backwards, closed because photocurrent
 * and shunt conductance are in proportion to the light. Infinite where no light does it.
 *
 *     S/1000 W/m² = (I + I_0 (e^(V_d/a) − 1))/(I_L − G_sh V_d),   V_d = V + I R_s
 *
 * @param p - The module at 1000 W/m² and the cells' temperature, from `translateModule`.
 * @param current - Of one module. [A]
 * @param voltage - At its terminals. [V]
 * @returns S. [W/m²]
 */
export function lightForLoad(p: Float64Array, current: number, voltage: number): number {
  const diodeVoltage = voltage + current * p[SERIES_RESISTANCE]!;
  const perLight = p[PHOTOCURRENT]! - p[SHUNT_CONDUCTANCE]! * diodeVoltage;
  if (!(perLight > 0)) return Number.POSITIVE_INFINITY;
  return (1000 * (current + p[SATURATION_CURRENT]! * Math.expm1(diodeVoltage / p[MODIFIED_IDEALITY]!))) / perLight;
}
