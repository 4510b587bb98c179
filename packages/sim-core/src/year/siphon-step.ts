import { fluidDensity, fluidSpecificHeat, fluidViscosity } from '../physics/fluid/compile.ts';
import { circulate } from '../physics/loop/circuit.ts';
import type { Circuit } from '../physics/loop/circuit-state.ts';
import { coilUA } from '../physics/loop/coil.ts';
import { buoyancyPressure, buoyantFlow } from '../physics/loop/thermosiphon.ts';
import { meanFluidTemperature } from './loop-step.ts';
import type { Machine } from './machine.ts';

/**
 * One step without the pump in a loop without a check valve: what buoyancy moves, forwards or backwards. Allocates nothing.
 *
 * @param light - Light turned into heat, less the extra loss to the night sky. [W/m²]
 * @returns Whether anything flows; where nothing does, nothing is changed.
 */
export function siphon(machine: Machine, hour: number, steps: number, light: number): boolean {
  const { circuit, columns, drivers, fluid, loopPressure, tank, thermosiphon } = machine;
  if (thermosiphon === null || loopPressure.top < machine.design.loop.minimumPressure) return false;
  const drive = buoyancyPressure(thermosiphon.rises, fluid, circuit, tank);
  const mean = meanFluidTemperature(circuit);
  const density = fluidDensity(fluid, mean);
  const flow = buoyantFlow(thermosiphon.hydraulics, Math.abs(drive), density, fluidViscosity(fluid, mean));
  if (flow <= 0) return false;
  const { mirror } = thermosiphon;
  const backwards = drive < 0;
  const inCoil = circuit.pipe[(circuit.pipe.length >> 1) - (backwards ? 0 : 1)]!;
  const beside = tank.temperature[circuit.coilBottom + (circuit.coilShare.length >> 1)]!;
  const conductance = coilUA(machine.coil, flow, inCoil, beside);
  const rate = flow * density * fluidSpecificHeat(fluid, mean);
  const duration = 3600 / steps;
  const ambient = drivers.ambient[hour]!;
  if (backwards) {
    reverse(circuit, mirror);
    circulate(mirror, tank, rate, conductance, light, ambient, tank.room, duration);
    reverse(mirror, circuit);
  } else {
    circulate(circuit, tank, rate, conductance, light, ambient, tank.room, duration);
  }
  columns.thermosiphonFlow[hour]! += (backwards ? -flow : flow) / steps;
  return true;
}

/** Copies one circuit's state into another that sees it against the flow. */
function reverse(from: Circuit, to: Circuit): void {
  const nodes = from.absorber.length - 1;
  for (let node = 0; node <= nodes; node++) to.absorber[node] = from.absorber[nodes - node]!;
  const sections = from.pipe.length - 1;
  for (let section = 0; section <= sections; section++) to.pipe[section] = from.pipe[sections - section]!;
  to.flows.set(from.flows);
  to.a1 = from.a1;
}
