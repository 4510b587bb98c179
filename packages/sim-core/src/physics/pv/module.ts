/** How the five parameters of a module follow irradiance and cell temperature: De Soto et al. (2006). */
import { requireNumber } from '../../input/errors.ts';
import {
  type DiodeParameters,
  MODIFIED_IDEALITY,
  PHOTOCURRENT,
  SATURATION_CURRENT,
  SERIES_RESISTANCE,
  SHUNT_CONDUCTANCE,
} from './single-diode.ts';

/** Parameters of a module at 1000 W/m² and 25 °C. */
export interface PvModuleParameters extends DiodeParameters {
  /** Change of short-circuit current with cell temperature. [A/K] */
  readonly currentTemperatureCoefficient: number;
}

/**
 * Equal modules together, as one: m in series and p such strings side by side.
 *
 *     V = m V₁, I = p I₁   →   p I_L, p I_0, p α, m a, m/p R_s, p/m G_sh
 *
 * @param module - One of them.
 * @param series - m, 1 to 100.
 * @param parallel - p, 1 to 100; 1 by default.
 * @throws {@link DesignError} for a number out of its range.
 */
export function stringOf(module: PvModuleParameters, series: number, parallel = 1): PvModuleParameters {
  requireNumber('series', series, 1, 100, '');
  requireNumber('parallel', parallel, 1, 100, '');
  return {
    photocurrent: parallel * module.photocurrent,
    saturationCurrent: parallel * module.saturationCurrent,
    seriesResistance: (series / parallel) * module.seriesResistance,
    shuntConductance: (parallel / series) * module.shuntConductance,
    modifiedIdeality: series * module.modifiedIdeality,
    currentTemperatureCoefficient: parallel * module.currentTemperatureCoefficient,
  };
}

/** Light and warmth of the cells. */
export interface PvConditions {
  /** On the module's plane, 0 to 2000. [W/m²] */
  readonly irradiance: number;
  /** Of the cells, −60 to 150. [°C] */
  readonly cellTemperature: number;
}

/** Irradiance of standard test conditions. [W/m²] @internal */
const REFERENCE_IRRADIANCE = 1000;
/** Cell temperature of standard test conditions. [°C] @internal */
export const REFERENCE_TEMPERATURE = 25;

/** Band gap of silicon at 25 °C and its relative change. De Soto et al. (2006). [eV], [1/K] */
const BAND_GAP = 1.121;
const BAND_GAP_SLOPE = -0.0002677;
/** Boltzmann constant, exact by the 2019 SI. [eV/K] @internal */
export const BOLTZMANN_eV = 1.380649e-23 / 1.602176634e-19;

/**
 * Single-diode parameters at an irradiance S and cell temperature T.
 *
 *     I_L = S/S_ref (I_L,ref + α (T − T_ref)),   I_0 = I_0,ref (T/T_ref)³ exp(E_ref/(k T_ref) − E/(k T))
 *     a = a_ref T/T_ref,   G_sh = G_sh,ref S/S_ref,   R_s constant,   E = 1.121 eV (1 − 0.0002677 (T − T_ref))
 *
 * The spectral (air mass) factor of the source is taken as 1.
 *
 * @param module - At 1000 W/m² and 25 °C, from a data sheet by `moduleParameters`.
 * @param conditions - Irradiance and cell temperature.
 * @returns Parameters for the single-diode equation.
 * @throws {@link DesignError} when a condition is outside its range.
 * @see De Soto, Klein & Beckman (2006), Solar Energy 80(1) 78.
 */
export function diodeParameters(module: PvModuleParameters, conditions: PvConditions): DiodeParameters {
  requirePvConditions(conditions);
  const p = new Float64Array(5);
  translateModule(module, conditions.irradiance, conditions.cellTemperature, p);
  return {
    photocurrent: p[PHOTOCURRENT]!,
    saturationCurrent: p[SATURATION_CURRENT]!,
    seriesResistance: p[SERIES_RESISTANCE]!,
    shuntConductance: p[SHUNT_CONDUCTANCE]!,
    modifiedIdeality: p[MODIFIED_IDEALITY]!,
  };
}

/** Kernel of {@link diodeParameters}: writes the five parameters to `out`. @internal */
export function translateModule(
  module: PvModuleParameters,
  irradiance: number,
  cellTemperature: number,
  out: Float64Array,
): void {
  const light = irradiance / REFERENCE_IRRADIANCE;
  const warmer = cellTemperature - REFERENCE_TEMPERATURE;
  const ratio = (cellTemperature + 273.15) / (REFERENCE_TEMPERATURE + 273.15);
  out[PHOTOCURRENT] = light * (module.photocurrent + module.currentTemperatureCoefficient * warmer);
  out[SATURATION_CURRENT] = module.saturationCurrent * saturationRatio(cellTemperature);
  out[SERIES_RESISTANCE] = module.seriesResistance;
  out[SHUNT_CONDUCTANCE] = module.shuntConductance * light;
  out[MODIFIED_IDEALITY] = module.modifiedIdeality * ratio;
}

/** I_0 at a cell temperature over I_0 at 25 °C. [-] @internal */
function saturationRatio(cellTemperature: number): number {
  const reference = REFERENCE_TEMPERATURE + 273.15;
  const kelvin = cellTemperature + 273.15;
  const gap = BAND_GAP * (1 + BAND_GAP_SLOPE * (kelvin - reference));
  return (kelvin / reference) ** 3 * Math.exp((BAND_GAP / reference - gap / kelvin) / BOLTZMANN_eV);
}

/** @throws DesignError when irradiance or cell temperature is out of range. @internal */
export function requirePvConditions(conditions: PvConditions): void {
  requireNumber('irradiance', conditions.irradiance, 0, 2000, 'W/m²');
  requireNumber('cellTemperature', conditions.cellTemperature, -60, 150, '°C');
}
