/** How long a loop that drains back takes to fill at a start, and what its pump draws meanwhile. Nothing here allocates but {@link compileFilling}. */
import type { SystemDesign } from '../../design/design.ts';
import type { CompiledFluid } from '../fluid/compile.ts';
import { compileHydraulics } from './hydraulics.ts';
import { type CompiledDrive, compileDrive, turnPump } from './pump-drive.ts';
import type { PumpAnswer, PumpOffer } from './pump-offer.ts';

/** A pump that would take longer does not lift the water to the top; judgement. [s] */
const NEVER = 3600;
/** Part of a step from which a filling is taken to last all of it. [-] */
const ALMOST = 0.999;

/** The start of a loop that drains back: its state, and what the year's starts came to. */
export interface Filling {
  /** The pump against the whole lift, the return open, and without lift. */
  readonly lifting: CompiledDrive;
  readonly level: CompiledDrive;
  /** Water of the rising pipe out of doors; of collectors and return. [m³] */
  readonly rising: number;
  readonly rest: number;
  /** Of the pump against the whole lift. */
  readonly lifted: PumpAnswer;
  /** Share of the start at hand that is done. [-] */
  done: number;
  /** Part of the step at hand in which the pump filled, and its power in that part. [-], [W] */
  part: number;
  power: number;
  /** Of the year. [s] */
  time: number;
  /** Of the year: the pump turned and did not lift the water to the top. [s] */
  inVain: number;
}

/**
 * A design's filling; its loop must drain back.
 *
 * @param drive - That of the full loop: without lift where the return runs full, else with it.
 * @param inCollectors - Water of the collectors that drains. [m³]
 * @param inPipes - Water of the outdoor pipes, there and back. [m³]
 */
export function compileFilling(
  { array, coil, loop, pump, pv, tank }: SystemDesign,
  fluid: CompiledFluid,
  drive: CompiledDrive,
  inCollectors: number,
  inPipes: number,
): Filling {
  const { drainBack } = loop;
  const turned = { ...loop, drainBack: { ...drainBack, siphon: !drainBack.siphon } };
  const other = compileDrive(pump, pv, compileHydraulics({ pump, coil, array, tank, loop: turned }, fluid));
  return {
    lifting: drainBack.siphon ? other : drive,
    level: drainBack.siphon ? drive : other,
    rising: inPipes / 2,
    rest: inCollectors + inPipes / 2,
    lifted: { flow: 0, power: 0 },
    done: 0,
    part: 0,
    power: 0,
    time: 0,
    inVain: 0,
  };
}

/**
 * Fills for one step, or for that part of it which is still needed. The lift grows from none to all of it in the rising pipe, then stays:
 *
 *     t = V_rising 2/(Q_0 + Q_L) + V_rest/Q_L
 *
 * Q_0 and Q_L the flows without and with the lift. For H0 − c Q² against b Q² that is the integral of `fillTime`, but for the fall of the vessel's level.
 *
 * @param answer - Scratch.
 * @param duration - Of the step. [s]
 * @returns Whether all is full before the step ends; {@link Filling.part} says when.
 */
export function fillForStep(filling: Filling, offer: PumpOffer, answer: PumpAnswer, duration: number): boolean {
  const { level, lifted, lifting, rest, rising } = filling;
  turnPump(lifting, offer, lifted);
  turnPump(level, offer, answer);
  filling.power = lifted.power;
  filling.part = 1;
  const all = (2 * rising) / (answer.flow + lifted.flow) + rest / lifted.flow;
  if (!(all < NEVER)) {
    filling.inVain += duration;
    return false;
  }
  const left = (1 - filling.done) * all;
  // A rest too short for a flow of its own is the next step's.
  const isFull = left < ALMOST * duration;
  if (isFull) filling.part = left / duration;
  filling.done = isFull ? 0 : filling.done + duration / all;
  filling.time += filling.part * duration;
  return isFull;
}
