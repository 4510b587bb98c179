/** Pressures and reserve that EN 12828 gives where the user gives none; all from memory of the standard. */
import { DesignError, requireNumber } from '../../input/errors.ts';
import type { ExpansionInput } from './expansion.ts';
import { GRAVITY } from './pump.ts';
import { largeReserve, SMALL_RESERVE, SMALL_VESSEL } from './vessel.ts';

/** Highest pressure in normal service: the relief pressure less 0.5 bar, above 5 bar less 10 %. [Pa gauge] */
export const endPressureFor = (reliefPressure: number): number =>
  reliefPressure > 5e5 ? 0.9 * reliefPressure : reliefPressure - 0.5e5;

const missing = (path: string, other: string): DesignError =>
  new DesignError([
    {
      path,
      found: 'nothing',
      expected: `${path} or ${other}`,
      remedy: `Give one of the two; both are gauge or metres.`,
    },
  ]);

/** Given, or static height plus 0.3 bar. [Pa gauge] */
export function prechargePressure(input: ExpansionInput, density: number): number {
  if (input.prechargePressure !== undefined) {
    requireNumber('prechargePressure', input.prechargePressure, 0, 1e7, 'Pa gauge');
    return input.prechargePressure;
  }
  if (input.staticHeight === undefined) throw missing('prechargePressure', 'staticHeight');
  requireNumber('staticHeight', input.staticHeight, 0, 200, 'm');
  return density * GRAVITY * input.staticHeight + 0.3e5;
}

/** Given, or by the relief pressure. [Pa gauge] */
export function endPressure(input: ExpansionInput): number {
  if (input.endPressure !== undefined) {
    requireNumber('endPressure', input.endPressure, 0, 1e7, 'Pa gauge');
    return input.endPressure;
  }
  if (input.reliefPressure === undefined) throw missing('endPressure', 'reliefPressure');
  requireNumber('reliefPressure', input.reliefPressure, 0, 1e7, 'Pa gauge');
  return endPressureFor(input.reliefPressure);
}

/**
 * Given; or 20 % of the vessel where that makes one of up to 15 L, else 0.5 % of the system and at least 3 L. [m³]
 *
 * @param given - The user's own, if any. [m³]
 * @param systemVolume - [m³]
 * @param moved - Expansion and steam volume. [m³]
 * @param factor - Vessel volume over stored volume, (p_end + 1 bar)/(p_end − p_pre). [-]
 */
export function reserveRule(given: number | undefined, systemVolume: number, moved: number, factor: number): number {
  if (given !== undefined) {
    requireNumber('reserveVolume', given, 0, systemVolume, 'm³');
    return given;
  }
  // V_N = (moved + 0.2 V_N) factor, which has no solution when the gas can take up less than a fifth.
  const small = (moved * factor) / (1 - SMALL_RESERVE * factor);
  if (small > 0 && small <= SMALL_VESSEL) return SMALL_RESERVE * small;
  return largeReserve(systemVolume);
}
