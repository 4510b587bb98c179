/** Which of two tanks the loop charges, and which of them its limits look at. */
import { sensedDifference } from '../physics/control/sensors.ts';
import type { Machine } from './machine.ts';
import { type SecondTank, topOf } from './second-tank.ts';
import type { Valve } from './valve.ts';

/** While the second tank is charged the pump stops this often to see whether the collectors get warm enough for the first; common practice, no source. [s] */
const LOOK_EVERY = 1800;
/** It waits for that at most so long; common practice, no source. [s] */
const LOOK = 300;

/** Tank top that the high limit looks at: the hotter where the loop passes both tanks, else that of the tank which it charges. [°C] */
export const limitedTop = ({ charged, second, tank }: Machine): number =>
  second === null || second.charging !== 'series' ? topOf(charged) : Math.max(topOf(tank), topOf(second.tank));

/** Turns the valve for a step where it should. Allocates nothing. @param duration - Length of the step. [s] */
export function turnValve(machine: Machine, second: SecondTank, valve: Valve, duration: number): void {
  const { charged, loop, tank } = machine;
  valve.since += duration;
  valve.full = topOf(tank) >= (valve.full ? valve.resumeAt : valve.divertAt);
  valve.secondFull = topOf(second.tank) >= (valve.secondFull ? valve.release : valve.limit);
  const isSecond = charged === second.tank;
  if (toSecond(machine, second, valve, isSecond) === isSecond) return;
  valve.since = 0;
  machine.charged = isSecond ? tank : second.tank;
  loop.circuit.coil.open = isSecond;
  loop.circuit.further!.coil.open = !isSecond;
}

/** Whether the fluid should go to the second tank. */
function toSecond(machine: Machine, second: SecondTank, valve: Valve, isSecond: boolean): boolean {
  const { control, design, loop, tank } = machine;
  if (valve.secondFull) return false;
  if (valve.full) return true;
  const { difference } = design.control;
  const overFirst = sensedDifference(loop.circuit, tank, difference, control.running);
  if (!isSecond && control.running)
    return overFirst <= control.stopDifference && control.ranFor >= control.minimumRunTime;
  if (overFirst >= control.startDifference) return false;
  if (!isSecond) {
    const overSecond = sensedDifference(loop.circuit, second.tank, difference, false);
    return valve.since >= LOOK && overSecond >= control.startDifference;
  }
  if (control.mode !== 'difference' || !control.running || valve.since < LOOK_EVERY) return true;
  // The pump stands until the collectors are warm enough for the first tank, or until it has waited long enough.
  control.running = false;
  return false;
}

/** Whether the valve may turn within a step whose light could warm water by `rise`. [K] */
export function mayTurn({ control, design, loop, tank }: Machine, valve: Valve, rise: number, margin: number): boolean {
  if (valve.full || valve.secondFull) return false;
  if (topOf(tank) > valve.divertAt - margin - rise) return true;
  if (control.mode === 'difference' && control.running && valve.since > LOOK_EVERY - LOOK) return true;
  const over = sensedDifference(loop.circuit, tank, design.control.difference, control.running);
  return over > control.stopDifference - margin && over < control.startDifference + margin;
}
