import { requireNumber } from '../../input/errors.ts';
import { WATER_HEAT_CAPACITY } from '../tank/tank.ts';

const HOUR = 3600;
const DAY = 24 * HOUR;
const US_GALLON = 0.003785411784;
const fahrenheit = (temperature: number): number => (temperature - 32) / 1.8;

/** Difference between store and room in European standing-loss tests: 65 and 20 °C (EN 12897, EN 60379; from memory). [K] */
const EU_TEST_DIFFERENCE = 45;

/** Water drawn in the 24-hour test of the US uniform energy factor, by draw pattern. [m³] */
const UEF_DAY: Readonly<Record<UefDrawPattern, number>> = {
  'very-small': 10 * US_GALLON,
  low: 38 * US_GALLON,
  medium: 55 * US_GALLON,
  high: 84 * US_GALLON,
};

/** Temperatures of that test: delivery 125 °F, supply 58 °F, room 67.5 °F. [°C] */
const UEF_TEST = { delivery: fahrenheit(125), supply: fahrenheit(58), room: fahrenheit(67.5) } as const;

/** Draw pattern of a US uniform energy factor: by it the label's number has a meaning. */
export type UefDrawPattern = 'very-small' | 'low' | 'medium' | 'high';

/**
 * Loss coefficient of a store or stored heater from its standing heat loss as Europe states it.
 *
 *     UA = S/(24 h · ΔT)
 *
 * @param energyPerDay - S, heat lost in 24 hours at constant temperature; 2 kWh is 7.2e6 J. [J]
 * @param difference - Store over room in the test; 45 K by default. [K]
 * @returns UA, for `tank.lossCoefficient` or `heater.lossCoefficient`. [W/K]
 * @throws {@link DesignError} for a value out of range.
 * @see EN 12897 and EN 60379, to which the label of Regulation (EU) No 812/2013 refers (from memory).
 * @example
 * lossFromStandingLoss(2 * 3.6e6); // 2 kWh in 24 h → 1.852 W/K
 */
export function lossFromStandingLoss(energyPerDay: number, difference = EU_TEST_DIFFERENCE): number {
  requireNumber('energyPerDay', energyPerDay, 0, 1e9, 'J');
  requireNumber('difference', difference, 5, 100, 'K');
  return energyPerDay / (DAY * difference);
}

/**
 * Loss coefficient from a US standby loss in percent an hour: the share of the heat stored above the room that is lost in an
 * hour.
 *
 *     UA = S ρc V η/1 h
 *
 * For a burning heater the label counts fuel, of which η reaches the water; for an electric one η is 1.
 *
 * @param share - S, 1 %/h is 0.01. [1/h]
 * @param volume - V, measured storage volume. [m³]
 * @param efficiency - η, thermal or recovery efficiency of a burner; 1 by default. [-]
 * @returns UA. [W/K]
 * @throws {@link DesignError} for a value out of range.
 * @see 10 CFR 431 Subpart G, ANSI Z21.10.3 (from memory).
 */
export function lossFromStandbyShare(share: number, volume: number, efficiency = 1): number {
  requireNumber('share', share, 0, 1, '1/h');
  requireNumber('volume', volume, 0.001, 50, 'm³');
  requireNumber('efficiency', efficiency, 0.2, 1, '');
  return (share * WATER_HEAT_CAPACITY * volume * efficiency) / HOUR;
}

/**
 * Loss coefficient of a stored heater from its US uniform energy factor.
 *
 * Over the test's day the heater's water ends as it began, so what its burner or element gives is what the draws take and what
 * the room gets:
 *
 *     η Q_fuel = Q_draw + UA (T_set − T_room) 24 h,   UEF = Q_draw/Q_fuel
 *     UA = Q_draw (η/UEF − 1)/((T_set − T_room) 24 h),   Q_draw = ρc V_day (T_set − T_mains)
 *
 * That is the balance of this library's own stored heater, for which the label is then exact. The water-heater analysis model of
 * the US rulemakings (Lutz et al. 1998) leaves the loss out while the burner fires and comes some per cent lower or higher.
 *
 * @param factor - UEF, as labelled. [-]
 * @param recoveryEfficiency - η, heat into the water over fuel or electricity; above the UEF. [-]
 * @param pattern - Draw pattern for which the label holds.
 * @returns UA. [W/K]
 * @throws {@link DesignError} for a value out of range, or an efficiency below the factor.
 * @see 10 CFR 430 Subpart B, Appendix E: volumes and temperatures of the test (from memory).
 * @example
 * lossFromUniformEnergyFactor(0.58, 0.78, 'medium'); // → 4.06 W/K
 */
export function lossFromUniformEnergyFactor(
  factor: number,
  recoveryEfficiency: number,
  pattern: UefDrawPattern,
): number {
  requireNumber('factor', factor, 0.1, 1, '');
  requireNumber('recoveryEfficiency', recoveryEfficiency, factor, 1, '(at least the energy factor)');
  requireNumber('pattern', UEF_DAY[pattern] ?? Number.NaN, 0, 1, 'm³ (very-small, low, medium or high)');
  const drawn = WATER_HEAT_CAPACITY * UEF_DAY[pattern] * (UEF_TEST.delivery - UEF_TEST.supply);
  return (drawn * (recoveryEfficiency / factor - 1)) / ((UEF_TEST.delivery - UEF_TEST.room) * DAY);
}

/**
 * Loss coefficient at the limit between European label classes of hot water storage tanks.
 *
 *     S = (a + b V^0.4) W,  V in litres:   A 8.5 + 4.25,   B 12 + 5.93,   C 16.66 + 8.33
 *
 * @param volume - V. [m³]
 * @param labelClass - Class of which this is the worst.
 * @returns UA = S/45 K. [W/K]
 * @throws {@link DesignError} for a volume out of range.
 * @see Regulation (EU) No 812/2013, Annex II, Table 2 (from memory).
 */
export function lossOfLabelClass(volume: number, labelClass: 'A' | 'B' | 'C'): number {
  requireNumber('volume', volume, 0.001, 2, 'm³');
  const [a, b] = CLASS_LIMITS[labelClass];
  return (a + b * (volume * 1000) ** 0.4) / EU_TEST_DIFFERENCE;
}

const CLASS_LIMITS = { A: [8.5, 4.25], B: [12, 5.93], C: [16.66, 8.33] } as const;
