import type { SparePvDesign } from '../../design/design.ts';

/** Light at which a module's peak power is stated. [W/m²] */
const STANDARD_LIGHT = 1000;
/** Cell temperature at which it is stated. [°C] */
const STANDARD_CELL = 25;

/**
 * Power that a house's own PV has to spare for a heater: what its modules give at their plane's light and cell temperature, less
 * what the house takes.
 *
 *     P = P_peak (G/1000) (1 + γ (T_air + r G − 25)) η − P_house,   at least 0
 *
 * @param pv - Peak power, temperature coefficient γ, efficiency η of inverter and cables, and the house's load.
 * @param light - G on the modules. [W/m²]
 * @param air - Outdoor air. [°C]
 * @param cellRise - r, cell over air per light. [K·m²/W]
 * @returns P. [W]
 * @internal
 */
export function sparePower(pv: SparePvDesign, light: number, air: number, cellRise: number): number {
  if (!(light > 0)) return 0;
  const cell = air + cellRise * light;
  const share = (light / STANDARD_LIGHT) * (1 + pv.temperatureCoefficient * (cell - STANDARD_CELL));
  return Math.max(pv.peakPower * pv.systemEfficiency * share - pv.houseLoad, 0);
}
