import type { HeaterFuel } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';

/**
 * Net (lower) over gross (upper) calorific value. Natural gas and LPG by the UK government conversion factors on both bases
 * (read in a transcription); propane by heats of formation, 46.33 over 50.32 MJ/kg; oils and wood as such factors commonly
 * have it (from memory). Heat from a network has one value.
 */
const NET_OVER_GROSS: Readonly<Record<HeaterFuel, number>> = {
  'natural-gas': 0.9026,
  propane: 0.9207,
  lpg: 0.9313,
  'heating-oil': 0.94,
  kerosene: 0.95,
  wood: 0.9,
  'wood-pellets': 0.92,
  'district-heat': 1,
};

/** Fuels that a heater may burn, or be fed with. */
export const HEATER_FUELS = Object.keys(NET_OVER_GROSS) as readonly HeaterFuel[];

/**
 * Efficiency by gross calorific value of a burner whose papers give it by net: η_gross = η_net H_net/H_gross. Bills and reports
 * count by gross; a condensing boiler of 1.05 by net is one of 0.95.
 *
 * @param fuel - What it burns.
 * @param netEfficiency - Heat into the water over fuel by net calorific value, 0.2 to 1.11. [-]
 * @returns Over fuel by gross calorific value. [-]
 * @throws {@link DesignError} for a value out of range.
 * @example
 * grossEfficiency('heating-oil', 0.9); // 0.846
 */
export function grossEfficiency(fuel: HeaterFuel, netEfficiency: number): number {
  requireNumber('netEfficiency', netEfficiency, 0.2, 1.11, '');
  requireNumber('fuel', NET_OVER_GROSS[fuel] ?? Number.NaN, 0, 1, `(${HEATER_FUELS.join(', ')})`);
  return netEfficiency * NET_OVER_GROSS[fuel];
}
