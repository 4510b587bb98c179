/** Which steps are cut finer than the rest, and which hours need more than one. Nothing here changes the state. */
import { sensedDifference } from '../physics/control/sensors.ts';
import { outletEnd } from '../physics/loop/circuit-state.ts';
import type { Tank } from '../physics/tank/tank.ts';
import { limitedTop, mayTurn } from './charge.ts';
import type { Machine } from './machine.ts';
import { topOf } from './second-tank.ts';

/** A rise that the bound below does not see: heat left in the circuit, pump and draw within the step; judgement. [K] */
const LIMIT_MARGIN = 1;
/** Absorber over the pipe behind it from which a start is followed in finer steps; judgement. [K] */
export const HOT_START = 30;
/** Difference over the controller's stop from which the pump is taken to run on for a step; judgement. [K] */
const SPARE_DIFFERENCE = 3;

/** Whether something may happen within a step that would come up to its length too late. @param at - Place in the sub-hourly drivers, -1 in the dark. */
export const hasEvent = (machine: Machine, hour: number, at: number): boolean =>
  nearLimit(machine, at) ||
  maySwitch(machine, hour, at) ||
  startsHot(machine, hour, at) ||
  mayDivert(machine, at) ||
  mayFill(machine, hour, at);

/** Whether the pump may turn in an hour without light: only one on the mains can. */
export function mayPumpInDark(machine: Machine, hour: number): boolean {
  const { charged, control, design, loop } = machine;
  if (!loop.drive.onMains) return false;
  if (limitedTop(machine) > Math.min(control.coolAbove, control.coolUntil)) return true;
  if (control.mode === 'schedule') return control.scheduled[hour % 24] === 1;
  const { difference } = design.control;
  return control.running || sensedDifference(loop.circuit, charged, difference, false) > 0;
}

/** Whether an hour without light and pump is taken in one step: no draw, no element, no load, no flow by buoyancy. */
export const isQuiet = ({ drivers, house, loop }: Machine, hour: number): boolean =>
  drivers.tapVolume[hour] === 0 && loop.siphon === null && house.elementNode < 0 && house.loadNode < 0;

/**
 * Whether the high limit or the tank's relief valve may act in this step: a step's length late they would show in the peak temperature.
 * Below the limit the step's light, all of it in the water from the coil's foot upwards, bounds how far the top may rise.
 */
function nearLimit(machine: Machine, at: number): boolean {
  const { control, drivers, loop, second, tank } = machine;
  if (control.limited) return limitedTop(machine) < control.release + LIMIT_MARGIN;
  if (at < 0) return false;
  const rise = drivers.absorbed[at]! * loop.risePerLight;
  if (mayReach(tank, control.limit, rise)) return true;
  return second !== null && mayReach(second.tank, control.limit, rise);
}

/** Whether a tank's top may come to the high limit or its relief valve's setting. @param rise - Most that it may rise. [K] */
const mayReach = (tank: Tank, limit: number, rise: number): boolean =>
  topOf(tank) > Math.min(limit, tank.reliefTemperature) - LIMIT_MARGIN - rise;

/** Whether the valve between two tanks may turn. */
function mayDivert(machine: Machine, at: number): boolean {
  const { drivers, loop, second } = machine;
  if (second === null || second.valve === null || at < 0) return false;
  return mayTurn(machine, second.valve, drivers.absorbed[at]! * loop.risePerLight, LIMIT_MARGIN);
}

/**
 * Whether a controller by temperature difference may switch: false if the running pump is well above its stop difference, or the standing
 * absorber cannot reach the start difference within this step. Where the sun hardly carries the flow, the pump cycles within minutes.
 */
function maySwitch({ charged, control, design, drivers, loop }: Machine, hour: number, at: number): boolean {
  if (control.mode !== 'difference' || control.limited || drivers.pumpOut[hour] === 1) return false;
  const { circuit } = loop;
  const { difference } = design.control;
  const sensed = sensedDifference(circuit, charged, difference, control.running);
  if (control.running) return sensed < difference.stop + SPARE_DIFFERENCE;
  const absorbed = at < 0 ? 0 : drivers.absorbed[at]!;
  const rise = (absorbed * 3600 * circuit.nodeArea) / (drivers.stepsPerHour * circuit.nodeCapacity);
  return sensed + rise > difference.start - SPARE_DIFFERENCE;
}

/** Whether the pump may start in this step under an absorber whose content would go round many times before the step ends. */
function startsHot({ control, drivers, loop }: Machine, hour: number, at: number): boolean {
  if (control.running || control.limited || at < 0 || drivers.pumpOut[hour] === 1) return false;
  return outletEnd(loop.circuit) - loop.circuit.pipe[0]! > HOT_START;
}

/** Whether an empty loop may be filled in this step, which takes minutes; a controller by difference is followed as it is. */
function mayFill({ control, drivers, loop }: Machine, hour: number, at: number): boolean {
  const { drain, drive } = loop;
  if (drain === null || !drain.empty || drain.filling === null) return false;
  if (control.limited || drivers.pumpOut[hour] === 1) return false;
  if (drive.onMains) return control.mode === 'schedule' && control.scheduled[hour % 24] === 1;
  return at >= 0 && drivers.pumpSupply[at]! >= control.startSupply;
}
