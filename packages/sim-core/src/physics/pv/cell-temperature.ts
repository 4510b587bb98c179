/** How warm the cells get: by the nominal operating cell temperature of the data sheet, or by Faiman. */
import type { PvModuleDesign } from '../../design/pump.ts';
import { requireNumber } from '../../input/errors.ts';

/** Irradiance and air at which the nominal operating cell temperature is measured (with 1 m/s of wind). */
const NOCT_IRRADIANCE = 800;
const NOCT_AMBIENT = 20;

/** Transmittance times absorptance of a module: the usual simplification, Duffie & Beckman (2013) §23.3. [-] */
const TAU_ALPHA = 0.9;

/** Faiman (2008): open rack, means of seven modules. [W/(m²·K)], [J/(m³·K)] */
const FAIMAN_U0 = 25;
const FAIMAN_U1 = 6.84;

/**
 * Cell temperature by the nominal operating cell temperature.
 *
 *     T_c = T_a + (NOCT − 20 °C) (S / 800 W/m²) (1 − η/(τα)),   τα = 0.9
 *
 * NOCT stands for an open rack and a wind of 1 m/s; wind is left out, so a module in the wind is cooler and gives more.
 *
 * @param irradiance - S on the module, ≥ 0. [W/m²]
 * @param ambient - Outdoor air T_a. [°C]
 * @param nominalOperatingCellTemperature - NOCT of the data sheet, usually 42 to 50. [°C]
 * @param efficiency - η, electric power over sunlight on the module. Default 0: no power leaves it, as in the test; with a
 *   working module of 15 % it is 17 % of the rise too warm, which costs some 2 % of power in full sun. [-]
 * @returns T_c. [°C]
 * @throws {@link DesignError} when an argument is outside its range.
 * @see Duffie & Beckman (2013) eq. 23.3.3 and 23.3.4 (numbers from memory).
 */
export function cellTemperature(
  irradiance: number,
  ambient: number,
  nominalOperatingCellTemperature: number,
  efficiency = 0,
): number {
  requireNumber('irradiance', irradiance, 0, 2000, 'W/m²');
  requireNumber('ambient', ambient, -90, 70, '°C');
  requireNumber('nominalOperatingCellTemperature', nominalOperatingCellTemperature, 20, 90, '°C');
  requireNumber('efficiency', efficiency, 0, 0.5, '');
  return ambient + irradiance * noctRise(nominalOperatingCellTemperature, efficiency);
}

/** Electrical power over light at the maximum of the data sheet; 0 where the module's area is not known. [-] @internal */
export const ratedEfficiency = (module: PvModuleDesign): number =>
  module.area === null ? 0 : (module.maximumPowerCurrent * module.maximumPowerVoltage) / (1000 * module.area);

/** Rise over the air per irradiance, constant for a module. [K·m²/W] @internal */
export const noctRise = (nominalOperatingCellTemperature: number, efficiency: number): number =>
  ((nominalOperatingCellTemperature - NOCT_AMBIENT) / NOCT_IRRADIANCE) * (1 - efficiency / TAU_ALPHA);

/**
 * Cell temperature with wind, by Faiman.
 *
 *     T_c = T_a + S / (u0 + u1 w)
 *
 * @param irradiance - S on the module, ≥ 0. [W/m²]
 * @param ambient - Outdoor air T_a. [°C]
 * @param windSpeed - w at the module, ≥ 0. [m/s]
 * @returns T_c. [°C]
 * @throws {@link DesignError} when an argument is outside its range.
 * @see Faiman (2008), Progress in Photovoltaics 16(4) 307: u0 25 W/(m²·K), u1 6.84 J/(m³·K).
 */
export function cellTemperatureInWind(irradiance: number, ambient: number, windSpeed: number): number {
  requireNumber('irradiance', irradiance, 0, 2000, 'W/m²');
  requireNumber('ambient', ambient, -90, 70, '°C');
  requireNumber('windSpeed', windSpeed, 0, 100, 'm/s');
  return ambient + irradiance / (FAIMAN_U0 + FAIMAN_U1 * windSpeed);
}
