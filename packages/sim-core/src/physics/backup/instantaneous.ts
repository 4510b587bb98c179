import type { HeaterDesign } from '../../design/design.ts';
import { WATER_HEAT_CAPACITY } from '../tank/tank.ts';

/** What an instantaneous heater looks at to decide how hard to fire. */
export type FiringLimits = Pick<HeaterDesign, 'setTemperature' | 'burnerPower' | 'minimumPower' | 'minimumRise'> &
  Partial<Pick<HeaterDesign, 'minimumFlow'>>;

/**
 * Temperature at which an instantaneous heater hands water on, given what the taps make of it. Allocates nothing.
 *
 *     s = (T_tap − T_mains)/(T_out − T_mains),   P = ρc V̇ s (T_out − T_in)
 *
 * s is the share of the taps' flow V̇ that comes hot (1 where the outlet is no warmer than the taps want). The heater holds its
 * set temperature while P lies within its range. It does not fire where the rise is below its least rise, P below its least
 * power, or s V̇, the flow through it, below its least flow: water passes as it came. Where P would exceed the most power, the
 * outlet falls short at just that power:
 *
 *     k = P_max/(ρc V̇ (T_tap − T_mains)),   T_out = (T_in − k T_mains)/(1 − k)   while that is at least T_tap,
 *     else                                  T_out = T_in + P_max/(ρc V̇)
 *
 * @param limits - Of the heater; without a least flow any flow will do.
 * @param inlet - Water that enters. [°C]
 * @param mains - Cold water that the taps mix in. [°C]
 * @param target - Mixed water wanted. [°C]
 * @param flow - Mixed flow at the taps while they run, > 0. [m³/s]
 * @returns Outlet; the inlet's own temperature where the heater does not fire. [°C]
 */
export function instantaneousOutlet(
  limits: FiringLimits,
  inlet: number,
  mains: number,
  target: number,
  flow: number,
): number {
  const { setTemperature, burnerPower, minimumPower, minimumRise, minimumFlow = 0 } = limits;
  const rise = setTemperature - inlet;
  if (rise <= 0 || rise < minimumRise) return inlet;
  const rate = WATER_HEAT_CAPACITY * flow;
  const share = setTemperature <= target ? 1 : target <= mains ? 0 : (target - mains) / (setTemperature - mains);
  const power = rate * share * rise;
  if (power < minimumPower || flow < minimumFlow) return inlet;
  if (power <= burnerPower) return flow * share < minimumFlow ? inlet : setTemperature;
  const whole = rate * (target - mains);
  if (burnerPower < whole) {
    const k = burnerPower / whole;
    const outlet = (inlet - k * mains) / (1 - k);
    if (outlet >= target) {
      const held = Math.min(outlet, setTemperature);
      return (flow * (target - mains)) / (held - mains) < minimumFlow ? inlet : held;
    }
  }
  return Math.min(inlet + burnerPower / rate, setTemperature);
}
