import type { TankDesign } from '../../design/design.ts';
import { compileFluid } from '../fluid/compile.ts';
import {
  type ConductionFactors,
  conduct,
  conductionFactors,
  coolHalfway,
  coolInOnePass,
  ONE_PASS_AT_MOST,
} from './conduction.ts';
import { type InletJet, mixByJet } from './inlet-jet.ts';
import { mixInversions, warmAndMix } from './inversion.ts';
import { loseToRoom, nodeConductances, nodeDecays } from './losses.ts';
import { drawThrough } from './transport.ts';

/**
 * Heat capacity of a cubic metre of water, held constant so that heat and mass are kept together: 992.2 kg/m³ times
 * 4179 J/(kg·K), water at 40 °C (IAPWS-95). From 10 to 90 °C the true value runs from 1.1 % above to 2.1 % below it. [J/(m³·K)]
 */
export const WATER_HEAT_CAPACITY = 4.1468e6;

/** Parts of an hour in which losses and conduction go at least: within 0.05 K of an independent integration. */
const LONGEST_REST = 4;

/** Parts in which a step's losses and conduction are taken. */
const restPasses = (stepsPerHour: number): number => Math.max(1, Math.round(LONGEST_REST / stepsPerHour));

/** Parts in which tank and standing coil take a step in turn: a sharp front does not wait for an hour. */
export const restParts = (stepsPerHour: number): number => (stepsPerHour < 2 ? 2 : 1);

/** What a step length needs, computed once. */
interface TankStep {
  /** 1 over its length. [1/s] */
  readonly perSecond: number;
  /** Equal parts in which losses and conduction take the step; more than one in long steps, which would blur a sharp front. */
  readonly passes: number;
  readonly decay: Float64Array;
  /** 1 − decay. Shape [nodes]. [-] */
  readonly lossShare: Float64Array;
  /** Conduction number of a part. [-] */
  readonly ratio: number;
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
  /** Inlet that stirs; `null`: one that does not. */
  readonly jet: InletJet | null;
  /** Air around it; may change from hour to hour. [°C] */
  room: number;
  /** Opening temperature of the relief valve. [°C] */
  readonly reliefTemperature: number;
  /** Steps in an hour → factors, for the step lengths that the run uses. */
  readonly steps: ReadonlyMap<number, TankStep>;
  /** How fast losses and conduction changed each node in the last step with coil. Shape [nodes]. [K/s] */
  readonly drift: Float64Array;
  /** Scratch: the profile turned over, and the one halfway through a step. Shape [nodes]. */
  readonly middle: Float64Array;
  readonly halfway: Float64Array;
}

/**
 * Prepares a tank.
 *
 * @param design - The tank.
 * @param stepsPerHour - Every number of steps an hour that the run may use.
 */
export function compileTank(design: TankDesign, stepsPerHour: readonly number[]): Tank {
  const { nodes } = design;
  const height = design.height - design.sedimentDepth;
  const volume = design.volume * (height / design.height);
  const nodeVolume = volume / nodes;
  const nodeCapacity = nodeVolume * WATER_HEAT_CAPACITY;
  const conductance = nodeConductances(design.lossCoefficient, volume, height, nodes);
  const diffusivity = design.verticalConductivity / WATER_HEAT_CAPACITY;
  const steps = new Map<number, TankStep>();
  for (const count of stepsPerHour) {
    const passes = restPasses(count);
    const duration = 3600 / (count * passes);
    const decay = nodeDecays(conductance, nodeCapacity, duration);
    steps.set(count, {
      perSecond: count / 3600,
      passes,
      decay,
      lossShare: decay.map((left) => 1 - left),
      ratio: (diffusivity * duration) / (height / nodes) ** 2,
      conduction: conductionFactors(diffusivity, height / nodes, duration, nodes),
    });
  }
  return {
    temperature: initialNodes(design),
    nodeVolume,
    nodeCapacity,
    jet:
      design.inletDiameter === null
        ? null
        : {
            area: (Math.PI / 4) * design.inletDiameter ** 2,
            water: compileFluid('water', 0),
            nodeHeight: height / nodes,
          },
    room: design.roomTemperature,
    reliefTemperature: design.reliefTemperature,
    steps,
    drift: new Float64Array(nodes),
    middle: new Float64Array(nodes),
    halfway: new Float64Array(nodes),
  };
}

/** Nodes at the start of the year: all alike, or on the lines between the middles of the given layers. */
function initialNodes({ initialProfile, initialTemperature, nodes }: TankDesign): Float64Array {
  if (initialProfile === null) return new Float64Array(nodes).fill(initialTemperature);
  const last = initialProfile.length - 1;
  const temperature = Float64Array.from({ length: nodes }, (_, node) => {
    const place = Math.min(Math.max(((node + 0.5) / nodes) * (last + 1) - 0.5, 0), last);
    const below = Math.min(Math.trunc(place), last - 1);
    return initialProfile[below]! + (place - below) * (initialProfile[below + 1]! - initialProfile[below]!);
  });
  mixInversions(temperature);
  return temperature;
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
  const drawn = Math.min(volume / tank.nodeVolume, node + 1);
  if (drawn <= 1) return temperature[node]!;
  let sum = 0;
  for (let left = drawn; left > 0; left--) sum += Math.min(left, 1) * temperature[node--]!;
  return sum / drawn;
}

/**
 * Draws a volume from the top, mains water following at the bottom; where the inlet is a jet, it stirs what lies there.
 *
 * @param flow - Through the tank while a tap runs. [m³/s]
 * @returns Mean temperature of what left. [°C]
 */
export function drawFromTank(tank: Tank, volume: number, mains: number, flow: number): number {
  const outlet = drawThrough(tank.temperature, volume / tank.nodeVolume, mains);
  if (volume > 0) stirAtInlet(tank, flow, mains);
  return outlet;
}

/** Where the inlet is a jet, lets it stir what lies before it. @param inlet - What comes in. [°C] */
export function stirAtInlet({ jet, temperature }: Tank, flow: number, inlet: number): void {
  if (jet !== null) mixByJet(temperature, jet, flow, inlet);
}

/** Losses and conduction of one step; returns what the room gained. [J] */
function cool(temperature: Float64Array, step: TankStep, nodeCapacity: number, room: number): number {
  let lost = 0;
  if (step.ratio <= ONE_PASS_AT_MOST) {
    for (let pass = 0; pass < step.passes; pass++) lost += coolInOnePass(temperature, step, room);
    return nodeCapacity * lost;
  }
  for (let pass = 0; pass < step.passes; pass++) {
    lost += loseToRoom(temperature, step.decay, nodeCapacity, room);
    conduct(temperature, step.conduction);
  }
  return lost;
}

/** {@link cool} on the profile halfway through a step in which the coil gave heat. */
function coolAfterCoil(tank: Tank, step: TankStep, coilRise: Float64Array): number {
  const { drift, halfway, middle, nodeCapacity, temperature } = tank;
  const { perSecond } = step;
  warmAndMix(temperature, coilRise, middle);
  if (step.ratio <= ONE_PASS_AT_MOST && step.passes === 1) return nodeCapacity * coolHalfway(tank, coilRise, step);
  const nodes = temperature.length;
  for (let node = 0; node < nodes; node++) {
    halfway[node] = 0.5 * (temperature[node]! - coilRise[node]! + middle[node]!);
    middle[node] = halfway[node]!;
  }
  const lost = cool(middle, step, nodeCapacity, tank.room);
  for (let node = 0; node < nodes; node++) {
    const changed = middle[node]! - halfway[node]!;
    temperature[node]! += changed;
    drift[node] = changed * perSecond;
  }
  return lost;
}

/**
 * Lets the tank lose heat, conduct and turn over for one step.
 *
 * The coil's heat came in through the whole step and not at its start, so losses and conduction are taken from the profile
 * halfway, and what they change is laid upon the coil's heat before the water turns over.
 *
 * @param stepsPerHour - One of those that the tank was compiled for.
 * @param coilRise - What the coil gives each node in the step; `null` for nothing. Shape [nodes]. [K]
 * @returns Heat lost to the room. [J]
 */
export function restTank(tank: Tank, stepsPerHour: number, coilRise: Float64Array | null = null): number {
  const lost =
    coilRise === null ? coolTank(tank, stepsPerHour) : coolAfterCoil(tank, tank.steps.get(stepsPerHour)!, coilRise);
  mixInversions(tank.temperature);
  return lost;
}

/**
 * As {@link restTank} without a coil's heat, and leaves the turnover to who has heat to add first.
 *
 * @param stepsPerHour - One of those that the tank was compiled for.
 * @returns Heat lost to the room. [J]
 */
export const coolTank = ({ nodeCapacity, room, steps, temperature }: Tank, stepsPerHour: number): number =>
  cool(temperature, steps.get(stepsPerHour)!, nodeCapacity, room);
