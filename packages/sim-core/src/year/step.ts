import { collectHeat } from './collect.ts';
import { hasEvent, isQuiet, mayPumpInDark } from './events.ts';
import { setLosses } from './groups.ts';
import { closeHour, openHour } from './hour.ts';
import { drawHotWater, feedLoad, heatTankByElement, keepHeaterWarm, stepBaseline } from './house.ts';
import type { Machine } from './machine.ts';
import { type Recorder, recordStep } from './recorder.ts';
import { FINENESS } from './stepping.ts';
import { restStorage } from './storage.ts';

/**
 * Steps the system through one hour and writes its row of every column. Allocates nothing.
 *
 * Within a step the parts act one after the other, each exactly or implicitly for the whole step: the draw through tank and
 * heater, the sun through the circuit, then the tank at rest. What leaves one part in a step is what the next receives in it. Every
 * other step has the draw last: taken in turn, the two orders are of the second order in the step's length, one alone of the
 * first (Strang 1968).
 *
 * @param machine - From `assemble`; its state is that at the end of the hour before.
 * @param hour - 0 to 8759; hours are stepped in order.
 * @param recorder - Keeps the steps of some days.
 */
export function stepHour(machine: Machine, hour: number, recorder: Recorder | null = null): void {
  const { drivers, loop, stepping } = machine;
  const lit = drivers.lit[hour] === 1;
  const fine = lit || mayPumpInDark(machine, hour);
  const steps = fine ? stepping.stepsPerHour : isQuiet(machine, hour) ? 1 : stepping.darkSteps;
  if (drivers.lossCoefficient !== null) loop.circuit.a1 = drivers.lossCoefficient[hour]!;
  if (drivers.groups !== null) setLosses(loop.circuit.branches!, drivers.groups, hour);
  openHour(machine, hour);
  for (let step = 0; step < steps; step++) {
    const at = lit ? hour * stepping.stepsPerHour + step : -1;
    const parts = fine ? (hasEvent(machine, hour, at) ? FINENESS : stepping.siphonParts) : 1;
    for (let part = 0; part < parts; part++) advance(machine, hour, step * parts + part, steps * parts, at);
    if (recorder !== null) recordStep(machine, recorder, hour, step, steps);
  }
  stepBaseline(machine, hour, drivers.within === null ? 1 : steps);
  closeHour(machine, hour);
}

/** One step: of `steps` in the hour the one numbered `step`; `at` is its place in the sub-hourly drivers, -1 in the dark. */
function advance(machine: Machine, hour: number, step: number, steps: number, at: number): void {
  const drawsFirst = step % 2 === 0;
  if (drawsFirst) useWater(machine, hour, step, steps);
  if (drawsFirst) heatTankByElement(machine, hour, steps);
  const flows = collectHeat(machine, hour, steps, at);
  if (machine.house.loadNode >= 0) feedLoad(machine, hour, steps);
  restStorage(machine, hour, steps, flows);
  if (!drawsFirst) heatTankByElement(machine, hour, steps);
  if (!drawsFirst) useWater(machine, hour, step, steps);
}

/** Draw through tank and heater. */
function useWater(machine: Machine, hour: number, step: number, steps: number): void {
  if (machine.drivers.tapVolume[hour]! > 0) drawHotWater(machine, hour, step, steps);
  else keepHeaterWarm(machine, hour, steps);
}
