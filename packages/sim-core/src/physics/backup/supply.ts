import { WATER_HEAT_CAPACITY } from '../tank/tank.ts';
import { type Heater, stepHeater, tryStep } from './heater.ts';
import { instantaneousOutlet } from './instantaneous.ts';

/** Times that the mixing is set by the outlet it brings. */
const TRIALS = 2;

/** What the taps want in a step. */
export interface TapDraw {
  /** Mixed water. [m³] */
  wanted: number;
  /** Cold mains. [°C] */
  mains: number;
  /** Temperature of the mixed water. [°C] */
  readonly target: number;
  /** Mixed flow while they run. [m³/s] */
  flow: number;
  /** Length of the step. [s] */
  duration: number;
}

/** Share of the taps' water that must come hot: what a mixing valve, or a hand, lets through; none where the mains are warm enough. [-] */
export const hotShare = (target: number, mains: number, hot: number): number =>
  mains >= target ? 0 : hot <= target ? 1 : (target - mains) / (hot - mains);

/**
 * Share of a step's water that comes hot, the taps following the heater's outlet through the step. Allocates nothing.
 *
 * A store's outlet moves while it is drawn from: the share is first set by its temperature at the start, then twice by the mean
 * outlet that this share would bring. An instantaneous heater holds its outlet, and remembers here whether it fires.
 *
 * @param heater - Its state is as before, but for an instantaneous one's decision.
 * @param inlet - Water ready to enter the heater. [°C]
 * @param taps - What they want in the step.
 */
export function settleMixing(
  heater: Heater,
  inlet: number,
  { wanted, mains, target, flow, duration }: TapDraw,
): number {
  if (heater.stored) {
    let share = hotShare(target, mains, heater.temperature);
    for (let trial = 0; trial < TRIALS; trial++) {
      tryStep(heater, wanted * share, inlet, duration);
      share = hotShare(target, mains, heater.outlet);
    }
    return share;
  }
  if (!heater.instantaneous) return hotShare(target, mains, inlet);
  heater.temperature = heater.out ? inlet : instantaneousOutlet(heater.design, inlet, mains, target, flow);
  heater.firing = heater.temperature > inlet;
  return hotShare(target, mains, heater.temperature);
}

/**
 * Sends a step's hot water through the heater. Allocates nothing.
 *
 * @param heater - Changed in place: outlet, burnerHeat, loss. An instantaneous one fires as {@link settleMixing} decided.
 * @param volume - Hot water. [m³]
 * @param inlet - Its mean temperature. [°C]
 * @param flow - Hot flow while the taps run. [m³/s]
 * @param duration - Length of the step. [s]
 */
export function heatWater(heater: Heater, volume: number, inlet: number, flow: number, duration: number): void {
  if (heater.stored) {
    stepHeater(heater, volume, inlet, duration);
    return;
  }
  heater.loss = 0;
  if (volume <= 0) {
    heater.burnerHeat = 0;
    heater.outlet = inlet;
    return;
  }
  const most = heater.firing ? (heater.design.burnerPower * volume) / flow : 0;
  const asked = volume * WATER_HEAT_CAPACITY * (heater.temperature - inlet);
  heater.burnerHeat = Math.min(Math.max(asked, 0), most);
  heater.outlet = inlet + heater.burnerHeat / (volume * WATER_HEAT_CAPACITY);
}

/** A step in which no water flows. Allocates nothing. */
export function keepWarm(heater: Heater, duration: number): void {
  if (heater.stored) stepHeater(heater, 0, 0, duration);
}
