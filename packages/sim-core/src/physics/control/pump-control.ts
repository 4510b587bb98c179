import type { ControlDesign, ControlMode, PumpDesign } from '../../design/design.ts';
import { compileMotor, motorCurrent } from '../loop/motor.ts';
import { pumpPower, pumpSpeed } from '../loop/pump.ts';

/** Who starts and stops the pump, and whether it turns. */
export interface PumpControl {
  /** Whether the pump turned in the last step. */
  running: boolean;
  /** Whether the high limit holds the pump off. */
  limited: boolean;
  /** Whether it did so in the last step though there was supply and the controller asked for flow. */
  heldOff: boolean;
  /** Whether it cools the tank by night. */
  cooling: boolean;
  /** Tank top at which that starts, infinite for never, and at which it stops. [°C] */
  readonly coolAbove: number;
  readonly coolUntil: number;
  /** Hours and heat of it since the start. [h], [J] */
  cooledHours: number;
  cooledHeat: number;
  /** Time since the last start, at the end of the last step. [s] */
  ranFor: number;
  readonly mode: ControlMode;
  /** Supply needed to break away and to keep turning: power with a booster [W], current with a direct drive [A]. */
  readonly startSupply: number;
  readonly stopSupply: number;
  readonly limit: number;
  readonly release: number;
  /** Collector over tank. [K] */
  readonly startDifference: number;
  readonly stopDifference: number;
  /** [s] */
  readonly minimumRunTime: number;
  /** Whether the clock lets the pump run in an hour of the day. Shape [24]. */
  readonly scheduled: Uint8Array;
}

/** Supply at which the pump has a head [m] without flow: power with a booster [W], current with a direct drive [A]. */
function supplyToLift(pump: PumpDesign, head: number): number {
  const speed = pumpSpeed(pump, head, 0);
  return pump.drive === 'direct' ? motorCurrent(compileMotor(pump), speed, 0) : pumpPower(pump, speed, 0);
}

/** Prepares the control, pump standing. @param lift - Head that a start must have. [m] */
export function compilePumpControl(pump: PumpDesign, control: ControlDesign, lift = 0): PumpControl {
  const { difference, highLimit, highLimitHysteresis, mode, schedule } = control;
  const limit = highLimit ?? Number.POSITIVE_INFINITY;
  const isDirect = pump.drive === 'direct';
  const scheduled = new Uint8Array(24);
  for (const [from, to] of schedule) scheduled.fill(1, from, to);
  return {
    running: false,
    limited: false,
    heldOff: false,
    cooling: false,
    coolAbove: control.nightCooling?.above ?? Number.POSITIVE_INFINITY,
    coolUntil: control.nightCooling?.until ?? Number.POSITIVE_INFINITY,
    cooledHours: 0,
    cooledHeat: 0,
    ranFor: 0,
    mode,
    startSupply: Math.max(
      isDirect ? pump.motor.startCurrent : pump.startPower,
      lift > 0 ? supplyToLift(pump, lift) : 0,
    ),
    stopSupply: isDirect ? pump.motor.frictionCurrent : pump.stopPower,
    limit,
    release: limit - highLimitHysteresis,
    startDifference: difference.start,
    stopDifference: difference.stop,
    minimumRunTime: difference.minimumRunTime,
    scheduled,
  };
}

/**
 * Decides for one step whether the pump turns. A standing rotor needs more than a turning one, so start and stop have their own
 * thresholds; so have the high limit and the controller by temperature difference.
 *
 * @param supply - Power or current at the pump, see {@link PumpControl.startSupply}; infinite with the mains.
 * @param tankTop - Top node of the tank. [°C]
 * @param wanted - Whether the controller asks for flow.
 * @param duration - Length of the step that is decided. [s]
 */
export function decidePump(
  control: PumpControl,
  supply: number,
  tankTop: number,
  wanted: boolean,
  duration: number,
): boolean {
  if (tankTop >= control.limit) control.limited = true;
  else if (tankTop <= control.release) control.limited = false;
  const enough = supply > 0 && supply >= (control.running ? control.stopSupply : control.startSupply);
  const ranFor = control.running ? control.ranFor : 0;
  const would = enough && wanted;
  const limited = control.limited && !control.cooling;
  control.running = would && !limited;
  control.heldOff = would && limited;
  control.ranFor = control.running ? ranFor + duration : 0;
  return control.running;
}

/**
 * Decides whether the pump cools the tank: from its start until its stop, in the dark, while the collector is the colder.
 *
 * @param difference - Collector's sensor over the tank's. [K]
 */
export function decideCooling(control: PumpControl, dark: boolean, tankTop: number, difference: number): boolean {
  const from = control.cooling ? control.coolUntil : control.coolAbove;
  control.cooling = dark && tankTop > from && difference < 0;
  return control.cooling;
}

/**
 * Whether a controller by temperature difference asks for flow. Once started the pump runs for its minimum time.
 *
 * @param difference - Collector's sensor over the tank's. [K]
 */
export function differenceWants(control: PumpControl, difference: number): boolean {
  if (!control.running) return difference >= control.startDifference;
  return difference > control.stopDifference || control.ranFor < control.minimumRunTime;
}
