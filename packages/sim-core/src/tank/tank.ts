import type { TankDesign } from '../system/design.ts';
import { type ConductionFactors, conduct, conductionFactors } from './conduction.ts';
import { mixInversions } from './inversion.ts';
import { loseToRoom, nodeConductances, nodeDecays } from './losses.ts';
import { drawThrough } from './transport.ts';

/**
 * Heat capacity of a cubic metre of water, held constant so that heat and mass are kept together: 992.2 kg/m³ times
 * 4179 J/(kg·K), water at 40 °C (IAPWS-95). From 10 to 90 °C the true value runs from 1.1 % above to 2.1 % below it. [J/(m³·K)]
 */
export const WATER_HEAT_CAPACITY = 4.1468e6;

/** Fall of the top node below the opening temperature at which the relief valve shuts again; judgement. [K] */
const RELIEF_RESEAT = 5;

/** What a step length needs, computed once. */
interface TankStep {
  readonly decay: Float64Array;
  readonly conduction: ConductionFactors;
}

/** A tank ready to be stepped: its state and what does not depend on it. */
export interface Tank {
  /** Nodes, bottom first. Shape [nodes]. [°C] */
  readonly temperature: Float64Array;
  /** Water in one node. [m³] */
  readonly nodeVolume: number;
  /** Heat capacity of one node. [J/K] */
  readonly nodeCapacity: number;
  /** Air around it. [°C] */
  readonly room: number;
  /** Opening temperature of the relief valve. [°C] */
  readonly reliefTemperature: number;
  /** Steps in an hour → factors, for the step lengths that the run uses. */
  readonly steps: ReadonlyMap<number, TankStep>;
  readonly poolSum: Float64Array;
  readonly poolSize: Int32Array;
}

/**
 * Prepares a tank.
 *
 * @param design - The tank.
 * @param stepsPerHour - Every number of steps an hour that the run may use.
 */
export function compileTank(design: TankDesign, stepsPerHour: readonly number[]): Tank {
  const { nodes, volume, height } = design;
  const nodeVolume = volume / nodes;
  const nodeCapacity = nodeVolume * WATER_HEAT_CAPACITY;
  const conductance = nodeConductances(design.lossCoefficient, volume, height, nodes);
  const diffusivity = design.verticalConductivity / WATER_HEAT_CAPACITY;
  const steps = new Map<number, TankStep>();
  for (const count of stepsPerHour) {
    const duration = 3600 / count;
    steps.set(count, {
      decay: nodeDecays(conductance, nodeCapacity, duration),
      conduction: conductionFactors(diffusivity, height / nodes, duration, nodes),
    });
  }
  return {
    temperature: new Float64Array(nodes).fill(design.initialTemperature),
    nodeVolume,
    nodeCapacity,
    room: design.roomTemperature,
    reliefTemperature: design.reliefTemperature,
    steps,
    poolSum: new Float64Array(nodes),
    poolSize: new Int32Array(nodes),
  };
}

/** Heat in the tank above 0 °C. [J] */
export function tankHeat(tank: Tank): number {
  let sum = 0;
  for (let node = 0; node < tank.temperature.length; node++) sum += tank.temperature[node]!;
  return sum * tank.nodeCapacity;
}

/**
 * Mean temperature of the uppermost water: what a draw of it would bring by plug flow. Allocates nothing.
 *
 * @param volume - Water, at most the tank's. [m³]
 */
export function outletOf(tank: Tank, volume: number): number {
  const { temperature } = tank;
  let node = temperature.length - 1;
  let left = volume / tank.nodeVolume;
  if (left <= 1 || node === 0) return temperature[node]!;
  const drawn = Math.min(left, node + 1);
  left = drawn;
  let sum = 0;
  for (; left > 0; node--) {
    sum += Math.min(left, 1) * temperature[node]!;
    left--;
  }
  return sum / drawn;
}

/**
 * Draws a volume from the top, mains water following at the bottom.
 *
 * @returns Mean temperature of what left. [°C]
 */
export const drawFromTank = (tank: Tank, volume: number, mains: number): number =>
  drawThrough(tank.temperature, volume / tank.nodeVolume, mains);

/**
 * Lets the tank lose heat, conduct and turn over for one step.
 *
 * @param stepsPerHour - One of those that the tank was compiled for.
 * @returns Heat lost to the room. [J]
 */
export function restTank(tank: Tank, stepsPerHour: number): number {
  const step = tank.steps.get(stepsPerHour)!;
  const lost = loseToRoom(tank.temperature, step.decay, tank.nodeCapacity, tank.room);
  conduct(tank.temperature, step.conduction);
  mixInversions(tank.temperature, tank.poolSum, tank.poolSize);
  return lost;
}

/**
 * Lets hot water out while the top is too hot: from the opening temperature until the top has fallen by 5 K, at most the whole
 * tank at once. The valve's capacity is far above what the sun brings, so the event takes no time here.
 *
 * @returns Nodes of water let out; their heat above mains is added to `relievedHeat`. [-]
 */
export function relieveTank(tank: Tank, mains: number, relievedHeat: Float64Array, hour: number): number {
  const { temperature, reliefTemperature } = tank;
  const top = temperature.length - 1;
  if (temperature[top]! < reliefTemperature) return 0;
  let nodes = 0;
  while (nodes <= top && temperature[top]! > reliefTemperature - RELIEF_RESEAT) {
    relievedHeat[hour]! += tank.nodeCapacity * (drawThrough(temperature, 1, mains) - mains);
    nodes++;
  }
  return nodes;
}
