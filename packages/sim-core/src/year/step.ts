import { decidePump, differenceWants } from '../physics/control/pump-control.ts';
import { sensedDifference } from '../physics/control/sensors.ts';
import { fluidDensity, fluidSpecificHeat } from '../physics/fluid/compile.ts';
import { settleBoiling } from '../physics/loop/boil.ts';
import { circulate } from '../physics/loop/circuit.ts';
import { CIRCUIT } from '../physics/loop/circuit-state.ts';
import { coilUA } from '../physics/loop/coil.ts';
import { circulatePlate } from '../physics/loop/plate.ts';
import { driveFlow } from '../physics/loop/pump-drive.ts';
import { standStill } from '../physics/loop/standing.ts';
import { relieveTank, restTank } from '../physics/tank/tank.ts';
import { closeHour, openHour } from './hour.ts';
import { drawHotWater, heatTankByElement, keepHeaterWarm, stepBaseline } from './house.ts';
import { canCirculate, meanFluidTemperature, settleLoop } from './loop-step.ts';
import { FINENESS, type Machine, SUN_THRESHOLD } from './machine.ts';
import { siphon } from './siphon-step.ts';

/** A rise that the bound below does not see: heat left in the circuit, pump and draw within the step; judgement. [K] */
const LIMIT_MARGIN = 1;
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
  const fine = lit || machine.thermosiphon !== null || mayPumpInDark(machine, hour);
  const steps = fine ? drivers.stepsPerHour : drawn ? machine.darkSteps : 1;
  if (drivers.lossCoefficient !== null) machine.circuit.a1 = drivers.lossCoefficient[hour]!;
  openHour(machine, hour);
  for (let step = 0; step < steps; step++) {
    const at = lit ? hour * drivers.stepsPerHour + step : -1;
    const parts = fine && (nearLimit(machine, at) || maySwitch(machine, hour, at)) ? FINENESS : 1;
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
  collectHeat(machine, hour, steps, at);
  restStorage(machine, hour, steps);
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

/** Sun on the array, and the loop between it and the tank. */
function collectHeat(machine: Machine, hour: number, steps: number, at: number): void {
  const { circuit, columns, control, drivers, tank } = machine;
  const duration = 3600 / steps;
  const share = 1 / steps;
  const ambient = drivers.ambient[hour]!;
  const room = tank.room;
  const irradiance = at < 0 ? 0 : drivers.irradiance[at]!;
  const supply = machine.drive.onMains ? Number.POSITIVE_INFINITY : at < 0 ? 0 : drivers.pumpSupply[at]!;
  // By day the rated losses hold the sky's share already: the test stood under one.
  const light = irradiance > 0 ? drivers.absorbed[at]! : -drivers.skyLoss[hour]!;
  const top = tank.temperature[tank.temperature.length - 1]!;

  let flow = 0;
  let outlet = circuit.absorber[circuit.absorber.length - 1]!;
  if (decidePump(control, supply, top, pumpWanted(machine, hour), duration) && canFlow(machine, hour, share)) {
    const fluidTemperature = meanFluidTemperature(circuit);
    const sun = at < 0 ? 0 : drivers.pvIrradiance[at]!;
    flow = driveFlow(machine.drive, supply, sun, ambient + sun * drivers.cellRise, fluidTemperature);
    if (flow > 0) {
      const rate =
        flow * fluidDensity(machine.fluid, fluidTemperature) * fluidSpecificHeat(machine.fluid, fluidTemperature);
      outlet = pumpRound(machine, flow, rate, light, ambient, duration);
      columns.pumpRunning[hour]! += share;
      machine.pumpEnergy[hour]! += machine.drive.power * duration;
      columns.loopFlow[hour]! += flow * share;
      columns.collectorOutletTemperature[hour]! += outlet * share;
    }
  }
  if (flow <= 0) {
    if (!circuit.boiling && siphon(machine, hour, steps, light))
      columns.thermosiphonHeat[hour]! -= circuit.flows[CIRCUIT.coilHeat]!;
    else standStill(circuit, steps, light, ambient, room);
  }
  settleLoop(machine, hour, flow <= 0);
  settleBoiling(circuit, circuit.flows[CIRCUIT.collectorHeat] !== 0, machine.loopPressure.boilingPoint, light, ambient);
  if (circuit.boiling) columns.boiling[hour]! += share;

  const { flows } = circuit;
  columns.collectorHeat[hour]! += flows[CIRCUIT.collectorHeat]!;
  columns.pipeLoss[hour]! += flows[CIRCUIT.pipeLoss]!;
  const coilHeat = flows[CIRCUIT.coilHeat]!;
  columns.coilHeat[hour]! += coilHeat;
  if (coilHeat < 0) columns.heatGivenBack[hour]! -= coilHeat;
  machine.absorbedHeat[hour]! += flows[CIRCUIT.absorbed]!;
  machine.collectorLoss[hour]! += flows[CIRCUIT.collectorLoss]!;
  columns.irradiance[hour]! += irradiance * share;
  if (at >= 0) columns.pvIrradiance[hour]! += drivers.pvIrradiance[at]! * share;
  if (control.heldOff) columns.highLimit[hour]! += share;
  noteAbsorber(machine, hour, share, irradiance >= SUN_THRESHOLD && flow <= 0);
}

/** One step of the pumped loop through coil or plate exchanger. @returns Fluid that leaves the array, mean. [°C] */
function pumpRound(
  machine: Machine,
  flow: number,
  rate: number,
  light: number,
  ambient: number,
  duration: number,
): number {
  const { circuit, plate, tank } = machine;
  if (plate !== null) return circulatePlate(plate, circuit, tank, rate, light, ambient, tank.room, duration);
  const beside = tank.temperature[circuit.coilBottom + (circuit.coilShare.length >> 1)]!;
  const conductance = coilUA(machine.coil, flow, circuit.pipe[(circuit.pipe.length >> 1) - 1]!, beside);
  return circulate(circuit, tank, rate, conductance, light, ambient, tank.room, duration);
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

/** The tank at rest: losses, conduction, turnover, and the relief valve. */
function restStorage(machine: Machine, hour: number, steps: number): void {
  const { columns, drivers, tank } = machine;
  columns.tankLoss[hour]! += restTank(tank, steps);
  // After the turnover the top is the hottest node.
  const top = tank.temperature[tank.temperature.length - 1]!;
  if (top > columns.tankMaximumTemperature[hour]!) columns.tankMaximumTemperature[hour] = top;
  columns.reliefVolume[hour]! += relieveTank(tank, drivers.mains[hour]!, columns.reliefHeat, hour) * tank.nodeVolume;
}
