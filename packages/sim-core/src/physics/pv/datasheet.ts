/** From the data sheet of a PV module to the five parameters of its single-diode equation. */

import type { PvDesign, PvModuleDesign } from '../../design/design.ts';
import { DesignError, type DesignIssue, quote, requireNumber } from '../../input/errors.ts';
import { BOLTZMANN_eV, type PvModuleParameters, REFERENCE_TEMPERATURE, stringOf, translateModule } from './module.ts';
import { openCircuitVoltage } from './single-diode.ts';

/** What a data sheet or plate says of a module. */
export type PvPlate = Omit<PvModuleDesign, 'ivPoints'>;

/** Ideality factors searched; real silicon modules lie between 0.7 and 2. [-] */
const LOWEST_IDEALITY = 0.5;
const HIGHEST_IDEALITY = 4;

/** Warming over which the voltage coefficient is met; De Soto et al. found 1 to 10 K all the same. [K] */
const WARMING = 10;

/** Halvings of a bracket: down to the last bits of a double. */
const HALVINGS = 60;

/**
 * Five-parameter module from its data sheet.
 *
 *     I(0) = I_sc,   I(V_oc) = 0,   I(V_mp) = I_mp,   dP/dV(V_mp) = 0,   V_oc(35 °C) = V_oc + 10 K β
 *
 * For a trial a (ideality × cells × thermal voltage) and R_s the first three are linear in I_L, I_0 and G_sh; the fourth
 * falls with R_s and the fifth with a. Both are bracketed and halved, so no starting value can fail.
 *
 * @param sheet - Values at 1000 W/m² and 25 °C.
 * @param path - Place of the module in the design, for errors.
 * @returns Parameters for `pvOperatingPoint` and `compilePvPower`.
 * @throws {@link DesignError} when a value is out of range, or no silicon module can have these values together; then it
 *   says which voltage temperature coefficients would fit the other values.
 * @see De Soto, Klein & Beckman (2006), Solar Energy 80(1) 78.
 */
export function moduleParameters(sheet: PvPlate, path = 'pv.module'): PvModuleParameters {
  requireSheet(sheet, path);
  const wanted = sheet.voltageTemperatureCoefficient;
  const flattest = fitCurve(sheet, LOWEST_IDEALITY * thermalVoltage(sheet));
  if (flattest === null) throw unfittable(sheet, path);
  const fit = steepestFit(sheet, flattest, wanted);
  if (Math.abs(voltageCoefficient(sheet, fit) - wanted) <= 1e-9 * Math.abs(wanted)) return fit;
  const steepest = steepestFit(sheet, flattest, Number.NEGATIVE_INFINITY);
  throw contradictory(sheet, path, voltageCoefficient(sheet, steepest), voltageCoefficient(sheet, flattest));
}

/** Fit with the largest a that still has real resistances and a voltage coefficient not below `limit` [V/K]. */
function steepestFit(sheet: PvPlate, flattest: PvModuleParameters, limit: number): PvModuleParameters {
  let low = LOWEST_IDEALITY * thermalVoltage(sheet);
  let high = HIGHEST_IDEALITY * thermalVoltage(sheet);
  let fit = flattest;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    const trial = fitCurve(sheet, middle);
    if (trial !== null && voltageCoefficient(sheet, trial) >= limit) {
      low = middle;
      fit = trial;
    } else {
      high = middle;
    }
  }
  return fit;
}

/** Parameters of one string of a design's modules. */
export function stringParameters({ inSeries, module }: PvDesign): PvModuleParameters {
  const one = moduleParameters(module);
  return inSeries === 1 ? one : stringOf(one, inSeries);
}

/** kT/q of all cells at 25 °C. [V] */
const thermalVoltage = (sheet: PvPlate): number => sheet.cells * BOLTZMANN_eV * (REFERENCE_TEMPERATURE + 273.15);

/**
 * Parameters that meet the three points and the maximum for one a; `null` when that takes a negative resistance, which
 * happens from some a on.
 */
function fitCurve(sheet: PvPlate, a: number): PvModuleParameters | null {
  let low = 0;
  let high = (sheet.openCircuitVoltage - sheet.maximumPowerVoltage) / sheet.maximumPowerCurrent;
  if (powerSlope(sheet, a, low, solvePoints(sheet, a, low)) < 0) return null;
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = (low + high) / 2;
    if (powerSlope(sheet, a, middle, solvePoints(sheet, a, middle)) >= 0) low = middle;
    else high = middle;
  }
  const { atOpenCircuit, shuntConductance } = solvePoints(sheet, a, low);
  if (!(shuntConductance >= 0 && atOpenCircuit > 0)) return null;
  const saturationCurrent = atOpenCircuit * Math.exp(-sheet.openCircuitVoltage / a);
  return {
    photocurrent: atOpenCircuit - saturationCurrent + shuntConductance * sheet.openCircuitVoltage,
    saturationCurrent,
    seriesResistance: low,
    shuntConductance,
    modifiedIdeality: a,
    currentTemperatureCoefficient: sheet.currentTemperatureCoefficient,
  };
}

/** Diode current at open circuit I_0 e^(V_oc/a) [A] and G_sh [S] that meet the three points: two linear equations. */
function solvePoints(sheet: PvPlate, a: number, seriesResistance: number) {
  const { shortCircuitCurrent, openCircuitVoltage: voc, maximumPowerCurrent, maximumPowerVoltage } = sheet;
  const atShort = shortCircuitCurrent * seriesResistance;
  const atMaximum = maximumPowerVoltage + maximumPowerCurrent * seriesResistance;
  const diodeShort = 1 - Math.exp((atShort - voc) / a);
  const diodeMaximum = 1 - Math.exp((atMaximum - voc) / a);
  const determinant = diodeShort * (voc - atMaximum) - diodeMaximum * (voc - atShort);
  return {
    atOpenCircuit: (shortCircuitCurrent * (voc - atMaximum) - maximumPowerCurrent * (voc - atShort)) / determinant,
    shuntConductance: (diodeShort * maximumPowerCurrent - diodeMaximum * shortCircuitCurrent) / determinant,
  };
}

/** dP/dV at the maximum power point; falls with R_s. [A] */
function powerSlope(
  sheet: PvPlate,
  a: number,
  seriesResistance: number,
  points: { readonly atOpenCircuit: number; readonly shuntConductance: number },
): number {
  const { maximumPowerCurrent, maximumPowerVoltage, openCircuitVoltage: voc } = sheet;
  const atMaximum = maximumPowerVoltage + maximumPowerCurrent * seriesResistance;
  const slope = (-points.atOpenCircuit / a) * Math.exp((atMaximum - voc) / a) - points.shuntConductance;
  return maximumPowerCurrent + (maximumPowerVoltage * slope) / (1 - seriesResistance * slope);
}

/** Change of open-circuit voltage with cell temperature that a fit has. [V/K] */
function voltageCoefficient(sheet: PvPlate, fit: PvModuleParameters): number {
  const warm = new Float64Array(5);
  translateModule(fit, 1000, REFERENCE_TEMPERATURE + WARMING, warm);
  return (openCircuitVoltage(warm) - sheet.openCircuitVoltage) / WARMING;
}

function requireSheet(sheet: PvPlate, path: string): void {
  requireNumber(`${path}.shortCircuitCurrent`, sheet.shortCircuitCurrent, 1e-3, 100, 'A');
  requireNumber(`${path}.openCircuitVoltage`, sheet.openCircuitVoltage, 0.1, 500, 'V');
  requireNumber(`${path}.cells`, sheet.cells, 1, 1000, '');
  requireNumber(`${path}.currentTemperatureCoefficient`, sheet.currentTemperatureCoefficient, -0.1, 0.5, 'A/K');
  const { shortCircuitCurrent: isc, openCircuitVoltage: voc } = sheet;
  requireNumber(`${path}.maximumPowerCurrent`, sheet.maximumPowerCurrent, 0.5 * isc, 0.999 * isc, 'A (below I_sc)');
  requireNumber(`${path}.maximumPowerVoltage`, sheet.maximumPowerVoltage, 0.5 * voc, 0.999 * voc, 'V (below V_oc)');
}

/** No curve of a diode goes through the points of the sheet. */
function unfittable(sheet: PvPlate, path: string): DesignError {
  const fillFactor =
    (sheet.maximumPowerCurrent * sheet.maximumPowerVoltage) / (sheet.shortCircuitCurrent * sheet.openCircuitVoltage);
  return new DesignError([
    {
      path,
      found: `maximum power that is ${fillFactor.toFixed(3)} of I_sc times V_oc`,
      expected: `a curve that ${sheet.cells} cells in series can have`,
      remedy: 'Compare the four values and the number of cells with the data sheet.',
    },
  ]);
}

/** The points fit, but not together with the voltage temperature coefficient. */
function contradictory(sheet: PvPlate, path: string, steepest: number, flattest: number): DesignError {
  const issue: DesignIssue = {
    path: `${path}.voltageTemperatureCoefficient`,
    found: quote(sheet.voltageTemperatureCoefficient),
    expected: `${steepest.toPrecision(4)} to ${flattest.toPrecision(4)} V/K for the module's other values`,
    remedy: 'Check its unit (V/K of the module, not % or mV of a cell), then currents, voltages and number of cells.',
  };
  return new DesignError([issue]);
}
