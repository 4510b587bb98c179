import type { LoopFluid } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { GLYCOLS, MAXIMUM_MASS_FRACTION } from './melinder.ts';
import { KELVIN } from './water.ts';

/** Molar mass of water. [kg/mol] */
const WATER_MOLAR_MASS = 0.018015268;

// IAPWS R7-97(2012) (IF97), region 4, table 34.
const N1 = 0.11670521452767e4;
const N2 = -0.72421316703206e6;
const N3 = -0.17073846940092e2;
const N4 = 0.1202082470247e5;
const N5 = -0.32325550322333e7;
const N6 = 0.1491510861353e2;
const N7 = -0.48232657361591e4;
const N8 = 0.40511340542057e6;
const N9 = -0.23855557567849;
const N10 = 0.65017534844798e3;

/** Pressures of the saturation equation, from the triple point to the critical point. [Pa] */
const LOWEST_PRESSURE = 611.213;
const HIGHEST_PRESSURE = 22.064e6;

/**
 * Saturation temperature of water: backward equation of IF97 region 4.
 *
 * @param pressure - Absolute, 611.213 Pa to 22.064 MPa; not checked. [Pa]
 * @returns [°C]
 */
export function saturationTemperature(pressure: number): number {
  const beta = Math.sqrt(Math.sqrt(pressure * 1e-6));
  const E = beta * beta + N3 * beta + N6;
  const F = N1 * beta * beta + N4 * beta + N7;
  const G = N2 * beta * beta + N5 * beta + N8;
  const D = (2 * G) / (-F - Math.sqrt(F * F - 4 * E * G));
  const sum = N10 + D;
  return (sum - Math.sqrt(sum * sum - 4 * (N9 + N10 * D))) / 2 - KELVIN;
}

/** Above this pressure no water boils that is colder: 47.4 kPa at 80 °C. [Pa], [°C] */
const SURE_PRESSURE = 48e3;
const SURE_TEMPERATURE = 80;

/** Whether water at a temperature [°C] is above its boiling point at a pressure [Pa]; where that is far off, without the equation. */
export const boilsAt = (pressure: number, temperature: number): boolean =>
  !(temperature <= SURE_TEMPERATURE && pressure >= SURE_PRESSURE) && temperature > saturationTemperature(pressure);

/**
 * Saturation pressure of water: basic equation of IF97 region 4.
 *
 * @param temperature - 0 to 373 °C; held at these ends. [°C]
 * @returns Absolute. [Pa]
 */
export function saturationPressure(temperature: number): number {
  const t = Math.min(Math.max(temperature, 0), 373) + KELVIN;
  const theta = t + N9 / (t - N10);
  const A = theta * theta + N1 * theta + N2;
  const B = N3 * theta * theta + N4 * theta + N5;
  const C = N6 * theta * theta + N7 * theta + N8;
  const root = (2 * C) / (-B + Math.sqrt(B * B - 4 * A * C));
  const square = root * root;
  return 1e6 * square * square;
}

/**
 * Temperature at which a liquid boils.
 *
 * Water by the IF97 saturation equation. Glycol mixtures by the ideal solution, whose vapour is all water (Raoult):
 *
 *     y p_sat(T) = p,   y = mole fraction of water in the liquid
 *
 * an estimate, not measured data.
 *
 * @param fluid - Kind of fluid.
 * @param glycolMassFraction - Glycol by mass, 0 to 0.6; 0 for water. [-]
 * @param absolutePressure - Gauge pressure plus that of the air. [Pa]
 * @returns Boiling point. [°C]
 * @throws {@link DesignError} for a mass fraction or pressure out of range.
 * @see IAPWS R7-97(2012), region 4.
 */
export function boilingPoint(fluid: LoopFluid, glycolMassFraction: number, absolutePressure: number): number {
  requireNumber('glycolMassFraction', glycolMassFraction, 0, fluid === 'water' ? 0 : MAXIMUM_MASS_FRACTION, '');
  const y = waterMoleFraction(fluid, glycolMassFraction);
  requireNumber('absolutePressure', absolutePressure, LOWEST_PRESSURE, HIGHEST_PRESSURE * y, 'Pa');
  return saturationTemperature(absolutePressure / y);
}

/**
 * Mole fraction of water in a mixture; not checked.
 *
 * @param fluid - Kind of fluid.
 * @param x - Glycol by mass. [-]
 * @returns y. [-]
 */
export function waterMoleFraction(fluid: LoopFluid, x: number): number {
  if (fluid === 'water') return 1;
  const water = (1 - x) / WATER_MOLAR_MASS;
  return water / (water + x / GLYCOLS[fluid].molarMass);
}
