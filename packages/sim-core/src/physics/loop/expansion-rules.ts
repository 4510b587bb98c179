import type { LoopFluid } from '../../design/design.ts';
/** Pressures and reserve that EN 12828 gives where the user gives none; all from memory of the standard. */
import { DesignError, requireNumber } from '../../input/errors.ts';
import { GRAVITY } from './pump.ts';
import { largeReserve, SMALL_RESERVE, SMALL_VESSEL } from './vessel.ts';

/** What `sizeExpansionVessel` is asked. Pressures are gauge. */
export interface ExpansionInput {
  /** Fluid of the loop. */
  readonly fluid: LoopFluid;
  /** Glycol by mass, 0 to 0.6; 0 (the default) for water. [-] */
  readonly glycolMassFraction?: number;
  /** All the liquid in the loop. [m³] */
  readonly systemVolume: number;
  /** At which the loop is filled, 10 by default. [°C] */
  readonly fillTemperature?: number;
  /** Highest mean temperature of the liquid. [°C] */
  readonly maximumTemperature: number;
  /** Liquid that steam may push out: collectors and what pipe the steam reaches; 0 by default. [m³] */
  readonly steamVolume?: number;
  /** Water reserve; by default EN 12828's. [m³] */
  readonly reserveVolume?: number;
  /** Of the empty vessel's gas; by default from {@link staticHeight}. [Pa] */
  readonly prechargePressure?: number;
  /** Highest point of the loop above the vessel; needed where no pre-charge is given. [m] */
  readonly staticHeight?: number;
  /** Highest in normal service; by default from {@link reliefPressure}. [Pa] */
  readonly endPressure?: number;
  /** At which the relief valve opens; needed where no end pressure is given. [Pa] */
  readonly reliefPressure?: number;
  /** Pressure of the air; by default EN 12828's 1 bar. [Pa] */
  readonly airPressure?: number;
  /** A vessel at hand, whose pressures are wanted; by default the smallest that does. [m³] */
  readonly vesselVolume?: number;
}

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
