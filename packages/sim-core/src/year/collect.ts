/** Sun on the array, and the loop between it and the tank. */
import { lowest } from '../physics/column.ts';
import { decideCooling, decidePump, differenceWants } from '../physics/control/pump-control.ts';
import { sensedDifference } from '../physics/control/sensors.ts';
import { fluidDensity, fluidSpecificHeat, fluidViscosity } from '../physics/fluid/compile.ts';
import { settleBoiling } from '../physics/loop/boil.ts';
import { shareFlow } from '../physics/loop/branches.ts';
import { meanFluidTemperature } from '../physics/loop/circuit.ts';
import type { Circuit, StepConditions } from '../physics/loop/circuit-state.ts';
import { circulatePair } from '../physics/loop/coil-pair.ts';
import { circulate } from '../physics/loop/coil-step.ts';
import { type Drain, emptyLoop, fillLoop, takeDrained } from '../physics/loop/drain.ts';
import { fillForStep } from '../physics/loop/filling.ts';
import { circulatePlate } from '../physics/loop/plate.ts';
import { turnPump } from '../physics/loop/pump-drive.ts';
import { siphonStep } from '../physics/loop/siphon.ts';
import { standStill } from '../physics/loop/standing.ts';
import { WATER_HEAT_CAPACITY } from '../physics/tank/tank.ts';
import { limitedTop, turnValve } from './charge.ts';
import { setLight } from './groups.ts';
import { coldestOutdoors, settleLoop } from './loop-step.ts';
import type { Machine } from './machine.ts';

/** Irradiance on the collectors from which sun is said to fall on them; judgement: the light of dusk and of the darkest days is less. [W/m²] */
export const SUN_THRESHOLD = 50;

/** One step of the loop: pumped, by buoyancy, or standing. @returns Whether fluid moves. */
export function collectHeat(machine: Machine, hour: number, steps: number, at: number): boolean {
  const { columns, control, design, drivers, exchange, loop } = machine;
  const { circuit, drain, pressure, step } = loop;
  const { conditions } = step;
  const share = 1 / steps;
  const irradiance = at < 0 ? 0 : drivers.irradiance[at]!;
  // By day the rated losses hold the sky's share already: the test stood under one.
  conditions.absorbed = irradiance > 0 ? drivers.absorbed[at]! : -drivers.skyLoss[hour]!;
  conditions.ambient = drivers.ambient[hour]!;
  conditions.duration = 3600 / steps;
  if (machine.own !== null) gainOwn(machine.own, hour, irradiance, conditions);
  if (drivers.groups !== null) setLight(circuit.branches!, drivers.groups, hour, at, conditions);

  const flows = pumpLoop(machine, hour, at, share) || siphonLoop(machine, hour, share);
  if (!flows) {
    if (drain !== null && mayEmpty(drain, circuit, design.loop.drainBelow, conditions))
      emptyLoop(drain, circuit, conditions.ambient);
    standStill(circuit, steps, conditions, exchange);
  }
  settleLoop(machine, hour, !flows);
  if (drain !== null) takeDrained(drain, exchange);
  if (drain === null || (drain.toWaste && !drain.empty)) {
    settleBoiling(circuit, flows, pressure, conditions, exchange);
  }
  if (circuit.boiling) columns.boiling[hour]! += share;

  bookLoop(machine, hour);
  if (at >= 0) {
    columns.irradiance[hour]! += irradiance * share;
    columns.pvIrradiance[hour]! += drivers.pvIrradiance[at]! * share;
  }
  if (control.heldOff) columns.highLimit[hour]! += share;
  noteAbsorber(machine, hour, share, irradiance >= SUN_THRESHOLD && !flows);
  return flows;
}

/** Shows the user's own parts the step, and asks their gain. */
function gainOwn(
  { parts, state }: NonNullable<Machine['own']>,
  hour: number,
  irradiance: number,
  conditions: StepConditions,
): void {
  state.hour = hour;
  state.duration = conditions.duration;
  state.ambient = conditions.ambient;
  state.irradiance = irradiance;
  if (parts.gain !== undefined) conditions.absorbed = parts.gain(conditions.absorbed, state);
}

/** One step of the pumped loop through coil or plate exchanger. @returns Whether the pump moves fluid; where not, nothing is changed. */
function pumpLoop(machine: Machine, hour: number, at: number, share: number): boolean {
  const { columns, control, drivers, loop, second, tank } = machine;
  const { circuit, drain, fluid, offer, plate, shared, step } = loop;
  const { conditions, exchange, stream } = step;
  if (second !== null && second.valve !== null) turnValve(machine, second, second.valve, conditions.duration);
  const drive = loop.diverted === null || machine.charged === tank ? loop.drive : loop.diverted;
  const supply = drive.onMains ? Number.POSITIVE_INFINITY : at < 0 ? 0 : drivers.pumpSupply[at]!;
  const asked = pumpWanted(machine, hour);
  const { own } = machine;
  const wanted = own?.parts.wants === undefined ? asked : own.parts.wants(asked, own.state);
  if (!decidePump(control, supply, limitedTop(machine), wanted, conditions.duration)) {
    // What was lifted so far has fallen back.
    if (drain !== null && drain.filling !== null) drain.filling.done = 0;
    return false;
  }
  if (!canFlow(machine, hour, share)) return false;
  const sun = at < 0 ? 0 : drivers.pvIrradiance[at]!;
  const temperature = meanFluidTemperature(circuit);
  offer.supply = supply;
  offer.irradiance = sun;
  offer.cellTemperature = conditions.ambient + sun * drivers.cellRise;
  offer.fluidTemperature = temperature;
  const fills = drain?.empty ? drain.filling : null;
  if (fills !== null && !fillForStep(fills, offer, stream, conditions.duration)) {
    bookPump(machine, hour, fills.power);
    return false;
  }
  turnPump(drive, offer, stream);
  if (stream.flow <= 0) return false;
  if (drain?.empty) fillLoop(drain, circuit, drivers.mains[hour]!);
  if (fills !== null) {
    // The step's mean: what is left of it after the filling.
    stream.flow *= 1 - fills.part;
    stream.power += (fills.power - stream.power) * fills.part;
  }
  const density = fluidDensity(fluid, temperature);
  stream.capacityRate = stream.flow * density * fluidSpecificHeat(fluid, temperature);
  if (circuit.branches !== null) {
    shared.flow = stream.flow;
    shared.density = density;
    shared.viscosity = fluidViscosity(fluid, temperature);
    shareFlow(circuit.branches, shared);
  }
  // Without a loop of its own the tank's water is what goes round.
  if (drain?.toWaste) plate!.secondaryFlow = stream.capacityRate / WATER_HEAT_CAPACITY;
  if (circuit.further !== null) circulatePair(circuit, step);
  else if (plate === null) circulate(circuit, step);
  else circulatePlate(plate, circuit, tank, step);
  bookPump(machine, hour, stream.power);
  if (control.cooling) {
    control.cooledHours += share;
    control.cooledHeat -= exchange.coilHeat + (step.further === null ? 0 : step.further.exchange.coilHeat);
  }
  columns.pumpRunning[hour]! += share;
  columns.loopFlow[hour]! += stream.flow * share;
  columns.collectorOutletTemperature[hour]! += exchange.outlet * share;
  return true;
}

/** Electricity of the pump in a step. @param power - Its mean. [W] */
function bookPump({ columns, loop }: Machine, hour: number, power: number): void {
  const energy = loop.drive.onMains ? columns.pumpElectricity : columns.pumpPvEnergy;
  energy[hour]! += power * loop.step.conditions.duration;
}

/** Whether the controller asks for flow and the pump can give it. */
function pumpWanted(machine: Machine, hour: number): boolean {
  const { charged, control, design, drivers, loop } = machine;
  if (drivers.pumpOut[hour] === 1) return false;
  if (control.coolAbove < Number.POSITIVE_INFINITY && coolsByNight(machine, hour)) return true;
  if (control.mode === 'power') return true;
  if (control.mode === 'schedule') return control.scheduled[hour % 24] === 1;
  const sensed = sensedDifference(loop.circuit, charged, design.control.difference, control.running);
  return differenceWants(control, sensed);
}

/** Whether the pump runs to cool the tank: only in hours without light. */
function coolsByNight(machine: Machine, hour: number): boolean {
  const { charged, control, design, drivers, loop } = machine;
  const sensed = sensedDifference(loop.circuit, charged, design.control.difference, control.running);
  return decideCooling(control, drivers.lit[hour] === 0, limitedTop(machine), sensed);
}

/** Whether the loop passes a flow that the pump would drive: no steam in the collectors, and pressure enough; notes where that is too little. */
function canFlow({ columns, design, loop }: Machine, hour: number, share: number): boolean {
  const { circuit, drain } = loop;
  if (circuit.boiling || (drain?.toWaste && drain.empty && lowest(circuit.absorber) < refillFrom(design))) return false;
  if (loop.pressure.top >= design.loop.minimumPressure) return true;
  columns.lowPressure[hour]! += share;
  return false;
}

/** Absorber over the temperature at which a direct loop drained, at which it is filled again; judgement. [K] */
const REFILL_MARGIN = 10;
const refillFrom = ({ loop }: Machine['design']): number => (loop.drainBelow ?? -REFILL_MARGIN) + REFILL_MARGIN;

/** Whether a standing loop lets its water go: to its vessel at once, to waste in the cold, or where it is about to be cold: a valve does not wait for a step's end. */
function mayEmpty(drain: Drain, circuit: Circuit, below: number | null, conditions: StepConditions): boolean {
  if (drain.empty || !drain.toWaste) return !drain.empty;
  if (below === null) return false;
  const now = Math.min(lowest(circuit.absorber), coldestOutdoors(circuit.pipe));
  const towards = conditions.ambient + conditions.absorbed / circuit.a1;
  return now < below || (now < below + REFILL_MARGIN && towards < below);
}

/** One step by buoyancy alone, where no check valve forbids it. @returns Whether fluid moves; where not, nothing is changed. */
function siphonLoop({ columns, design, loop }: Machine, hour: number, share: number): boolean {
  const { circuit, pressure, siphon, step } = loop;
  if (siphon === null || circuit.boiling || pressure.top < design.loop.minimumPressure) return false;
  const flow = siphonStep(siphon, circuit, step);
  if (flow === 0) return false;
  columns.thermosiphonFlow[hour]! += flow * share;
  columns.thermosiphonHeat[hour]! -= step.exchange.coilHeat;
  return true;
}

/** Adds up what array and pipes exchanged. */
function bookLoop({ books, columns, exchange }: Machine, hour: number): void {
  columns.collectorHeat[hour]! += exchange.collectorHeat;
  columns.pipeLoss[hour]! += exchange.pipeLoss;
  books.absorbed[hour]! += exchange.absorbed;
  books.collectorLoss[hour]! += exchange.collectorLoss;
}

/** Highest and lowest absorber temperature, and standstill in sun. */
function noteAbsorber({ columns, loop }: Machine, hour: number, share: number, standsInSun: boolean): void {
  const { absorber } = loop.circuit;
  let highest = absorber[0]!;
  let lowest = highest;
  for (let node = 1; node < absorber.length; node++) {
    const here = absorber[node]!;
    if (here > highest) highest = here;
    if (here < lowest) lowest = here;
  }
  if (highest > columns.absorberTemperature[hour]!) columns.absorberTemperature[hour] = highest;
  if (lowest < columns.absorberMinimumTemperature[hour]!) columns.absorberMinimumTemperature[hour] = lowest;
  if (!standsInSun) return;
  columns.noFlowInSun[hour]! += share;
  if (highest > loop.stagnationLimit) columns.stagnation[hour]! += share;
}
