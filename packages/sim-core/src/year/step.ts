import { decidePump, differenceWants } from '../physics/control/pump-control.ts';
import { sensedDifference } from '../physics/control/sensors.ts';
import { fluidDensity, fluidSpecificHeat } from '../physics/fluid/compile.ts';
import { settleBoiling } from '../physics/loop/boil.ts';
import { meanFluidTemperature } from '../physics/loop/circuit.ts';
import { CIRCUIT } from '../physics/loop/circuit-state.ts';
import { circulate } from '../physics/loop/coil-step.ts';
import { circulatePlate } from '../physics/loop/plate.ts';
import { driveFlow } from '../physics/loop/pump-drive.ts';
import { siphonStep } from '../physics/loop/siphon.ts';
import { restCoil, standStill } from '../physics/loop/standing.ts';
import { relieveTank, restParts, restTank, warmTank } from '../physics/tank/tank.ts';
import { closeHour, openHour } from './hour.ts';
import { drawHotWater, heatTankByElement, keepHeaterWarm, stepBaseline } from './house.ts';
import { canCirculate, settleLoop } from './loop-step.ts';
import { FINENESS, type Machine, SUN_THRESHOLD } from './machine.ts';

/** A rise that the bound below does not see: heat left in the circuit, pump and draw within the step; judgement. [K] */
const LIMIT_MARGIN = 1;
/** Absorber over the pipe behind it from which a start is followed in finer steps; judgement. [K] */
export const HOT_START = 30;
/** Difference over the controller's stop from which the pump is taken to run on for a step; judgement. [K] */
const SPARE_DIFFERENCE = 3;

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
 */
export function stepHour(machine: Machine, hour: number): void {
  const { drivers } = machine;
  const lit = drivers.lit[hour] === 1;
  const drawn = drivers.tapVolume[hour]! > 0;
  const fine = lit || mayPumpInDark(machine, hour);
  const steps = fine
    ? drivers.stepsPerHour
    : drawn || machine.thermosiphon !== null || machine.elementNode >= 0
      ? machine.darkSteps
      : 1;
  if (drivers.lossCoefficient !== null) machine.circuit.a1 = drivers.lossCoefficient[hour]!;
  openHour(machine, hour);
  for (let step = 0; step < steps; step++) {
    const at = lit ? hour * drivers.stepsPerHour + step : -1;
    const event = fine && (nearLimit(machine, at) || maySwitch(machine, hour, at) || startsHot(machine, hour, at));
    const parts = event ? FINENESS : fine ? machine.siphonParts : 1;
    for (let part = 0; part < parts; part++) advance(machine, hour, step * parts + part, steps * parts, at);
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
  restStorage(machine, hour, steps, flows);
  if (!drawsFirst) heatTankByElement(machine, hour, steps);
  if (!drawsFirst) useWater(machine, hour, step, steps);
}

/** Draw through tank and heater. */
function useWater(machine: Machine, hour: number, step: number, steps: number): void {
  if (machine.drivers.tapVolume[hour]! > 0) drawHotWater(machine, hour, step, steps);
  else keepHeaterWarm(machine, hour, steps);
}

/**
 * Whether the high limit or the tank's relief valve may act in this step: these are events, and a step's length late at them would
 * show in the peak temperature, so such steps are cut finer. Below the limit the step's light, all of it in the water from the coil's foot upwards,
 * bounds how far the top may rise.
 */
function nearLimit(machine: Machine, at: number): boolean {
  const { control, drivers, tank } = machine;
  const top = tank.temperature[tank.temperature.length - 1]!;
  if (control.limited) return top < control.release + LIMIT_MARGIN;
  const event = Math.min(control.limit, tank.reliefTemperature);
  return at >= 0 && top > event - LIMIT_MARGIN - drivers.absorbed[at]! * machine.risePerLight;
}

/** Whether the pump may start in this step under an absorber whose content would go round many times before the step ends. */
function startsHot({ circuit, control, drivers }: Machine, hour: number, at: number): boolean {
  if (control.running || control.limited || at < 0 || drivers.pumpOut[hour] === 1) return false;
  return circuit.absorber[circuit.absorber.length - 1]! - circuit.pipe[0]! > HOT_START;
}

/** Sun on the array, and the loop between it and the tank. @returns Whether fluid moves. */
function collectHeat(machine: Machine, hour: number, steps: number, at: number): boolean {
  const { circuit, columns, conditions, control, drivers, loopPressure } = machine;
  const share = 1 / steps;
  const irradiance = at < 0 ? 0 : drivers.irradiance[at]!;
  // By day the rated losses hold the sky's share already: the test stood under one.
  conditions.absorbed = irradiance > 0 ? drivers.absorbed[at]! : -drivers.skyLoss[hour]!;
  conditions.ambient = drivers.ambient[hour]!;
  conditions.duration = 3600 / steps;

  const flows = pumpLoop(machine, hour, at, share) || siphonLoop(machine, hour, share);
  if (!flows) standStill(circuit, steps, conditions);
  settleLoop(machine, hour, !flows);
  settleBoiling(circuit, flows, loopPressure.boilingPoint, conditions);
  if (circuit.boiling) columns.boiling[hour]! += share;

  bookLoop(machine, hour);
  columns.irradiance[hour]! += irradiance * share;
  if (at >= 0) columns.pvIrradiance[hour]! += drivers.pvIrradiance[at]! * share;
  if (control.heldOff) columns.highLimit[hour]! += share;
  noteAbsorber(machine, hour, share, irradiance >= SUN_THRESHOLD && !flows);
  return flows;
}

/** One step of the pumped loop through coil or plate exchanger. @returns Whether the pump moves fluid; where not, nothing is changed. */
function pumpLoop(machine: Machine, hour: number, at: number, share: number): boolean {
  const { circuit, columns, conditions, control, drive, drivers, fluid, plate, stream, tank } = machine;
  const { ambient, duration } = conditions;
  const supply = drive.onMains ? Number.POSITIVE_INFINITY : at < 0 ? 0 : drivers.pumpSupply[at]!;
  const top = tank.temperature[tank.temperature.length - 1]!;
  if (!decidePump(control, supply, top, pumpWanted(machine, hour), duration) || !canFlow(machine, hour, share))
    return false;
  const fluidTemperature = meanFluidTemperature(circuit);
  const sun = at < 0 ? 0 : drivers.pvIrradiance[at]!;
  const flow = driveFlow(drive, supply, sun, ambient + sun * drivers.cellRise, fluidTemperature);
  if (flow <= 0) return false;
  stream.flow = flow;
  stream.capacityRate = flow * fluidDensity(fluid, fluidTemperature) * fluidSpecificHeat(fluid, fluidTemperature);
  const outlet =
    plate === null
      ? circulate(circuit, tank, stream, conditions, machine.coil)
      : circulatePlate(plate, circuit, tank, stream.capacityRate, conditions);
  columns.pumpRunning[hour]! += share;
  machine.pumpEnergy[hour]! += drive.power * duration;
  columns.loopFlow[hour]! += flow * share;
  columns.collectorOutletTemperature[hour]! += outlet * share;
  return true;
}

/** One step by buoyancy alone, where no check valve forbids it. @returns Whether fluid moves; where not, nothing is changed. */
function siphonLoop(machine: Machine, hour: number, share: number): boolean {
  const { circuit, columns, conditions, design, loopPressure, tank, thermosiphon } = machine;
  if (thermosiphon === null || circuit.boiling || loopPressure.top < design.loop.minimumPressure) return false;
  const flow = siphonStep(thermosiphon, circuit, tank, conditions);
  if (flow === 0) return false;
  columns.thermosiphonFlow[hour]! += flow * share;
  columns.thermosiphonHeat[hour]! -= circuit.flows[CIRCUIT.coilHeat]!;
  return true;
}

/** Adds up what array and pipes exchanged. */
function bookLoop(machine: Machine, hour: number): void {
  const { columns } = machine;
  const { flows } = machine.circuit;
  columns.collectorHeat[hour]! += flows[CIRCUIT.collectorHeat]!;
  columns.pipeLoss[hour]! += flows[CIRCUIT.pipeLoss]!;
  machine.absorbedHeat[hour]! += flows[CIRCUIT.absorbed]!;
  machine.collectorLoss[hour]! += flows[CIRCUIT.collectorLoss]!;
}

/**
 * Whether a controller by temperature difference may switch in this step: unless the pump turns into it with difference to spare, or
 * stands and the step's light cannot warm the absorber enough. Where the sun hardly carries the flow, the pump cycles within
 * minutes; finer steps follow it.
 */
function maySwitch(machine: Machine, hour: number, at: number): boolean {
  const { circuit, control, design, drivers, tank } = machine;
  if (control.mode !== 'difference' || control.limited || drivers.pumpOut[hour] === 1) return false;
  const { difference } = design.control;
  const sensed = sensedDifference(circuit, tank, difference, control.running);
  if (control.running) return sensed < difference.stop + SPARE_DIFFERENCE;
  const light = at < 0 ? 0 : drivers.absorbed[at]!;
  const rise = (light * 3600 * circuit.nodeArea) / (drivers.stepsPerHour * circuit.absorberCapacity);
  return sensed + rise > difference.start - SPARE_DIFFERENCE;
}

/** Whether the loop passes a flow that the pump would drive: no steam in the collectors, and pressure enough. */
function canFlow(machine: Machine, hour: number, share: number): boolean {
  return !machine.circuit.boiling && canCirculate(machine, hour, share);
}

/** Whether the pump may turn in an hour without light: only one on the mains can. */
function mayPumpInDark(machine: Machine, hour: number): boolean {
  const { circuit, control, design, drive, tank } = machine;
  if (!drive.onMains) return false;
  if (control.mode === 'schedule') return control.scheduled[hour % 24] === 1;
  const { difference } = design.control;
  return control.running || sensedDifference(circuit, tank, difference, false) > 0;
}

/** Whether the controller asks for flow and the pump can give it. */
function pumpWanted(machine: Machine, hour: number): boolean {
  const { circuit, control, design, drivers, tank } = machine;
  if (drivers.pumpOut[hour] === 1) return false;
  if (control.mode === 'power') return true;
  if (control.mode === 'schedule') return control.scheduled[hour % 24] === 1;
  return differenceWants(control, sensedDifference(circuit, tank, design.control.difference, control.running));
}

/** Highest and lowest absorber temperature, and standstill in sun. */
function noteAbsorber(machine: Machine, hour: number, share: number, standsInSun: boolean): void {
  const { columns, stagnationLimit } = machine;
  const { absorber } = machine.circuit;
  let hottest = absorber[0]!;
  let coldest = hottest;
  for (let node = 1; node < absorber.length; node++) {
    const here = absorber[node]!;
    if (here > hottest) hottest = here;
    if (here < coldest) coldest = here;
  }
  if (hottest > columns.absorberTemperature[hour]!) columns.absorberTemperature[hour] = hottest;
  if (coldest < columns.absorberMinimumTemperature[hour]!) columns.absorberMinimumTemperature[hour] = coldest;
  if (!standsInSun) return;
  columns.noFlowInSun[hour]! += share;
  if (hottest > stagnationLimit) columns.stagnation[hour]! += share;
}

/** Tank and standing coil, in turn: a sharp front between cold and warm water does not wait for an hour. */
function restBoth(machine: Machine, hour: number, steps: number): void {
  const { circuit, columns, tank } = machine;
  const parts = restParts(steps);
  let coilHeat = 0;
  for (let part = 0; part < parts; part++) {
    columns.tankLoss[hour]! += restTank(tank, steps * parts);
    if (!restCoil(circuit, tank, 3600 / (steps * parts))) continue;
    warmTank(tank, circuit.coilRise);
    coilHeat += circuit.flows[CIRCUIT.coilHeat]!;
  }
  circuit.flows[CIRCUIT.coilHeat] = coilHeat;
}

/** The tank at rest: losses, conduction, turnover, the coil's heat, and the relief valve. */
function restStorage(machine: Machine, hour: number, steps: number, flows: boolean): void {
  const { circuit, columns, drivers, plate, relieved, tank } = machine;
  if (flows) columns.tankLoss[hour]! += restTank(tank, steps, plate === null ? circuit.coilRise : null);
  else restBoth(machine, hour, steps);
  const coilHeat = circuit.flows[CIRCUIT.coilHeat]!;
  columns.coilHeat[hour]! += coilHeat;
  if (coilHeat < 0) columns.heatGivenBack[hour]! -= coilHeat;

  const top = tank.temperature.length - 1;
  // After the turnover the top is the hottest node; where it passes the valve's setting, the valve holds it there.
  const hottest = Math.min(tank.temperature[top]!, tank.reliefTemperature);
  if (hottest > columns.tankMaximumTemperature[hour]!) columns.tankMaximumTemperature[hour] = hottest;
  if (!relieveTank(tank, drivers.mains[hour]!, relieved)) return;
  columns.reliefVolume[hour]! += relieved.volume;
  columns.reliefHeat[hour]! += relieved.heat;
}
