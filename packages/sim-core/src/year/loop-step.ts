import { MONTH_STARTS } from '../physics/calendar.ts';
import { lowest } from '../physics/column.ts';
import { fluidDensity } from '../physics/fluid/compile.ts';
import { freezingPointOf } from '../physics/fluid/mixture.ts';
import { type Circuit, coilTemperature } from '../physics/loop/circuit-state.ts';
import { makeUpWith, settlePressure, takeOut } from '../physics/loop/pressure.ts';
import { renewFluid } from './collector-loop.ts';
import type { Machine } from './machine.ts';

/** Hours of the year at which tables are made anew: each month after January. */
const RENEWALS = MONTH_STARTS.slice(1, 12);
/** In place of a freezing point where no water stands in what is below 0 °C. [°C] */
const EMPTY = -90;
/** A mixture that has thinned by less keeps its tables. [-] */
const SAME_MIXTURE = 1e-4;

/** Pressure at the end of a step, and the coldest of the outdoor pipes. */
export function settleLoop({ columns, design, loop }: Machine, hour: number, standing: boolean): void {
  const { circuit, drain, ledger, pressure } = loop;
  const colder = coldestOutdoors(circuit.pipe);
  if (colder < columns.pipeMinimumTemperature[hour]!) columns.pipeMinimumTemperature[hour] = colder;
  if (drain !== null) {
    if (!drain.empty && Math.min(colder, lowest(circuit.absorber)) < 0) drain.frost = true;
    return;
  }
  const inCoil = circuit.further === null ? coilTemperature(circuit.coil) : coilsTemperature(circuit, circuit.further);
  const lost = settlePressure(pressure, circuit.absorber, circuit.pipe, inCoil, standing);
  // A valve that opened has seen its setting, whatever is left at the step's end.
  const peak = lost > 0 ? pressure.reliefPressure : pressure.gauge;
  if (lost > 0) columns.loopReliefVolume[hour]! += lost;
  if (pressure.hasRelieved && design.loop.makeUp && pressure.gauge < pressure.fillPressure) {
    // The filling valve does not wait for the hour's end.
    ledger.madeUp += makeUpWith(pressure, 0);
    settlePressure(pressure, circuit.absorber, circuit.pipe, inCoil, standing);
  }
  if (peak > columns.loopMaximumPressure[hour]!) columns.loopMaximumPressure[hour] = peak;
}

/** Mean of two coils' contents. [°C] */
function coilsTemperature({ coil }: Circuit, { coil: behind }: Circuit): number {
  const whole = coil.capacity + behind.capacity;
  return (coil.capacity * coilTemperature(coil) + behind.capacity * coilTemperature(behind)) / whole;
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
export function tendLoop({ columns, design, loop }: Machine, hour: number): void {
  const { ledger, pressure } = loop;
  const { leak, makeUp } = design.loop;
  columns.loopPressure[hour] = pressure.gauge;
  const volume = pressure.gauge > 0 ? leak * 3600 : 0;
  if (makeUp) {
    ledger.leaked += volume;
    ledger.madeUp += makeUpWith(pressure, volume);
  } else if (volume > 0) {
    const density = fluidDensity(pressure.fluid, pressure.fillTemperature);
    ledger.leaked += takeOut(pressure, volume * density) / density;
  }
  const fraction = pressure.glycol / pressure.mass;
  columns.glycolMassFraction[hour] = fraction;
  // Frost does not wait for the month in which the tables are made anew.
  columns.freezingPoint[hour] = makeUp ? freezingPointOf(pressure.fluid.fluid, fraction) : loop.fluid.freezingPoint;
  if (loop.drain !== null) {
    columns.freezingPoint[hour] = loop.drain.frost ? loop.fluid.freezingPoint : EMPTY;
    loop.drain.frost = false;
  }
  // The only allocation of the year, at most once a month.
  const hasThinned = loop.fluid.glycolMassFraction - fraction >= SAME_MIXTURE;
  if (makeUp && hasThinned && RENEWALS.includes(hour + 1)) renewFluid(loop, design, fraction);
}
