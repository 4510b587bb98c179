import { compileFluid, fluidDensity } from '../physics/fluid/compile.ts';
import { freezingPointOf } from '../physics/fluid/mixture.ts';
import { coilTemperature } from '../physics/loop/circuit-state.ts';
import { compileCoil } from '../physics/loop/coil.ts';
import { compileHydraulics } from '../physics/loop/hydraulics.ts';
import { changeFluid, makeUpWith, settlePressure, takeOut } from '../physics/loop/pressure.ts';
import { compileDrive } from '../physics/loop/pump-drive.ts';
import type { Machine } from './machine.ts';

/** Hour of the year at which each month after January starts. */
const MONTH_STARTS = [744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016];
/** A mixture that has thinned by less keeps its tables. [-] */
const SAME_MIXTURE = 1e-4;

/** Whether there is pressure enough at the collectors for the fluid to circulate; notes it where there is not. */
export function canCirculate(machine: Machine, hour: number, share: number): boolean {
  if (machine.loopPressure.top >= machine.design.loop.minimumPressure) return true;
  machine.columns.lowPressure[hour]! += share;
  return false;
}

/** Pressure at the end of a step, and the coldest of the outdoor pipes. */
export function settleLoop(machine: Machine, hour: number, standing: boolean): void {
  const { circuit, columns, loopPressure } = machine;
  const { pipe } = circuit;
  const lost = settlePressure(loopPressure, circuit.absorber, pipe, coilTemperature(circuit), standing);
  if (lost > 0) columns.loopReliefVolume[hour]! += lost;
  if (loopPressure.gauge > columns.loopMaximumPressure[hour]!) columns.loopMaximumPressure[hour] = loopPressure.gauge;
  const colder = coldestOutdoors(pipe);
  if (colder < columns.pipeMinimumTemperature[hour]!) columns.pipeMinimumTemperature[hour] = colder;
}

/** Coldest of the outdoor pipes: first and last quarter of the nodes. [°C] */
export function coldestOutdoors(pipe: Float64Array): number {
  let coldest = pipe[0]!;
  for (let at = 0; 4 * at < pipe.length; at++) {
    coldest = Math.min(coldest, pipe[at]!, pipe[pipe.length - 1 - at]!);
  }
  return coldest;
}

/** Leak and make-up of an hour, and what they leave of the glycol. */
export function tendLoop(machine: Machine, hour: number): void {
  const { columns, loopPressure } = machine;
  const { leak, makeUp } = machine.design.loop;
  columns.loopPressure[hour] = loopPressure.gauge;
  const volume = loopPressure.gauge > 0 ? leak * 3600 : 0;
  if (makeUp) {
    machine.loopLedger.leaked += volume;
    machine.loopLedger.madeUp += makeUpWith(loopPressure, volume);
  } else if (volume > 0) {
    const density = fluidDensity(loopPressure.fluid, loopPressure.fillTemperature);
    machine.loopLedger.leaked += takeOut(loopPressure, volume * density) / density;
  }
  const fraction = loopPressure.glycol / loopPressure.mass;
  columns.glycolMassFraction[hour] = fraction;
  // Frost does not wait for the month in which the tables are made anew.
  columns.freezingPoint[hour] = makeUp
    ? freezingPointOf(loopPressure.fluid.fluid, fraction)
    : machine.fluid.freezingPoint;
  if (makeUp && MONTH_STARTS.includes(hour + 1)) renewFluid(machine, fraction);
}

/** Works a thinned mixture into the tables: properties, flow and coil. The only allocation of the year, at most once a month. */
function renewFluid(machine: Machine, fraction: number): void {
  if (machine.fluid.glycolMassFraction - fraction < SAME_MIXTURE) return;
  const { array, coil, loop, pump, pv } = machine.design;
  machine.fluid = compileFluid(loop.fluid, fraction);
  const hydraulics = compileHydraulics({ pump, loop, coil, array }, machine.fluid);
  machine.drive = compileDrive(pump, pv, hydraulics);
  machine.coil = compileCoil(coil, machine.fluid, machine.water);
  if (machine.thermosiphon !== null) {
    machine.thermosiphon.hydraulics = hydraulics;
    machine.thermosiphon.films = machine.coil;
  }
  changeFluid(machine.loopPressure, machine.fluid);
}
