/** Maximum power of a module as a table over irradiance and cell temperature, so that the year needs no solver. */
import { type PvModuleParameters, translateModule } from './module.ts';
import { maximumPower } from './single-diode.ts';

/** Grid: irradiance 0 to 1500 by 20 W/m², cell temperature −40 to 100 by 5 K. */
const IRRADIANCE_STEP = 20;
const IRRADIANCES = 76;
const COLDEST = -40;
const TEMPERATURE_STEP = 5;
const TEMPERATURES = 29;

/** Where the table ends: light [W/m²] and cell temperatures [°C]. */
export const PV_TABLE = {
  mostLight: (IRRADIANCES - 1) * IRRADIANCE_STEP,
  coldest: COLDEST,
  warmest: COLDEST + (TEMPERATURES - 1) * TEMPERATURE_STEP,
} as const;

/**
 * Compiles the maximum power of a module into a table for {@link tablePower}.
 *
 * @param module - Parameters at 1000 W/m² and 25 °C.
 * @returns Maximum power at each irradiance (0 to 1500 by 20 W/m²) for each cell temperature (−40 to 100 by 5 °C), one
 *   temperature after the other. Shape [29 × 76]. [W]
 */
export function compilePvPower(module: PvModuleParameters): Float64Array {
  const table = new Float64Array(TEMPERATURES * IRRADIANCES);
  const p = new Float64Array(5);
  for (let row = 0; row < TEMPERATURES; row++) {
    for (let column = 1; column < IRRADIANCES; column++) {
      translateModule(module, column * IRRADIANCE_STEP, COLDEST + row * TEMPERATURE_STEP, p);
      table[row * IRRADIANCES + column] = maximumPower(p);
    }
  }
  return table;
}

/**
 * Maximum power by a table of {@link compilePvPower}, bilinear; clamped to the table's edges (0 to 1500 W/m², −40 to
 * 100 °C). Off the exact solution by less than 0.1 % of rated power; worst in the first 20 W/m².
 *
 * @param table - Of `compilePvPower`. [W]
 * @param irradiance - On the module. [W/m²]
 * @param cellTemperature - Of the cells. [°C]
 * @returns Maximum power. [W]
 */
export function tablePower(table: Float64Array, irradiance: number, cellTemperature: number): number {
  let x = irradiance * (1 / IRRADIANCE_STEP);
  let y = (cellTemperature - COLDEST) * (1 / TEMPERATURE_STEP);
  if (!(x > 0)) return 0;
  if (x > IRRADIANCES - 1) x = IRRADIANCES - 1;
  if (!(y > 0)) y = 0;
  else if (y > TEMPERATURES - 1) y = TEMPERATURES - 1;
  let column = x | 0;
  if (column > IRRADIANCES - 2) column = IRRADIANCES - 2;
  let row = y | 0;
  if (row > TEMPERATURES - 2) row = TEMPERATURES - 2;
  const at = row * IRRADIANCES + column;
  const right = x - column;
  const up = y - row;
  const cold = table[at]! + right * (table[at + 1]! - table[at]!);
  const warm = table[at + IRRADIANCES]! + right * (table[at + IRRADIANCES + 1]! - table[at + IRRADIANCES]!);
  return cold + up * (warm - cold);
}
