import { meanDecay } from '../relaxation.ts';
import type { Tank } from '../tank/tank.ts';

/** Pipe sections in the order of the flow: hot outdoors, hot indoors, cold indoors, cold outdoors. */
export const PIPE_SECTIONS = 4;
/** Sections between the array's outlet and the coil. */
const HOT_SECTIONS = 2;

/** What the circuit's last step exchanged; indices into {@link Circuit.flows}. [J] */
export const CIRCUIT = {
  /** Light turned into heat in the absorber. */
  absorbed: 0,
  /** Heat lost by the array to air and sky. */
  collectorLoss: 1,
  /** Heat carried out of the array by the fluid, less what it carried in. */
  collectorHeat: 2,
  /** Heat lost by the pipes. */
  pipeLoss: 3,
  /** Heat that the coil gave the tank. */
  coilHeat: 4,
} as const;

/** The collector circuit ready to be stepped: its state and what does not depend on it. */
export interface Circuit {
  /** Absorber and its fluid along the flow, inlet first. Shape [collector nodes]. [°C] */
  readonly absorber: Float64Array;
  /** Pipe sections, see {@link PIPE_SECTIONS}. Shape [4]. [°C] */
  readonly pipe: Float64Array;
  /** Heat capacity of one collector node. [J/K] */
  readonly absorberCapacity: number;
  /** Reference area of one collector node. [m²] */
  readonly nodeArea: number;
  /** Changed by the hour where wind matters. [W/(m²·K)] */
  a1: number;
  readonly a2: number;
  /** Shape [4]. [J/K] */
  readonly pipeCapacity: Float64Array;
  /** Shape [4]. [W/K] */
  readonly pipeConductance: Float64Array;
  /** Decay of a standing section in one step, by steps per hour. Shape [4] each. */
  readonly pipeDecay: ReadonlyMap<number, Float64Array>;
  /** Lowest tank node that the coil touches. */
  readonly coilBottom: number;
  /** Share of the coil in each node from {@link coilBottom} upwards; they add up to 1. */
  readonly coilShare: Float64Array;
  /** Exchange of the last step, see {@link CIRCUIT}. [J] */
  readonly flows: Float64Array;
  /** Scratch: outlet = gain × inlet + offset of each part along the flow. */
  readonly gain: Float64Array;
  readonly offset: Float64Array;
  /** Scratch: what drives each collector node whatever its temperature. */
  readonly source: Float64Array;
  /** Scratch: decay of each pipe section and coil piece in the step. */
  readonly decay: Float64Array;
}

/**
 * One step with the pump running. Allocates nothing.
 *
 * Each part of the circuit (collector node, pipe section, coil piece with the tank node around it) is a stirred volume that
 * obeys a linear equation with constant coefficients over the step, given the step's mean inlet temperature; it is solved
 * exactly, and passes its own mean outlet temperature on. All outlets are linear in the temperature x with which the fluid
 * enters the array, so the ring closes in one sweep: x = offset/(1 − gain). A second sweep writes the new state back. Stable for any step;
 * heat carried out of one part is what the next receives, so balances close to rounding.
 *
 * A collector node's loss is taken at the mean of its inlet and outlet, as ISO 9806 defines its coefficients; the quadratic
 * loss is linearised about that mean at the start of the step.
 *
 * @param circuit - Changed in place: absorber, pipe, flows.
 * @param tank - Its nodes around the coil are changed in place.
 * @param capacityRate - Heat capacity rate of the fluid, ṁ c_p. [W/K]
 * @param coilConductance - Of the whole coil. [W/K]
 * @param absorbed - Light turned into heat, less the extra loss to the night sky. [W/m²]
 * @param ambient - Outdoor air. [°C]
 * @param room - Air around the indoor pipes. [°C]
 * @param duration - Length of the step. [s]
 * @returns Mean temperature of the fluid that leaves the array. [°C]
 */
export function circulate(
  circuit: Circuit,
  tank: Tank,
  capacityRate: number,
  coilConductance: number,
  absorbed: number,
  ambient: number,
  room: number,
  duration: number,
): number {
  const { absorber, pipe, absorberCapacity, nodeArea, a1, a2, pipeCapacity, pipeConductance, coilShare, gain, offset } =
    circuit;
  const { coilBottom, decay, flows, source } = circuit;
  const nodes = absorber.length;
  const coilNodes = coilShare.length;
  const coilAt = nodes + HOT_SECTIONS;
  const coldAt = coilAt + coilNodes;
  const water = tank.temperature;

  // Array: one slope for all nodes (about their mean excess), the value of the loss by node.
  let excess = 0;
  for (let node = 0; node < nodes; node++) excess += absorber[node]! - ambient;
  const slope = nodeArea * (a1 + 2 * a2 * Math.abs(excess / nodes));
  const inletWeight = Math.min(0.5, (0.5 * capacityRate) / slope);
  const total = capacityRate + slope * (1 - inletWeight);
  const inflow = capacityRate - slope * inletWeight;
  const exponent = (total * duration) / absorberCapacity;
  const absorberDecay = Math.exp(-exponent);
  const held = meanDecay(exponent, absorberDecay);
  let before = pipe[PIPE_SECTIONS - 1]!;
  for (let node = 0; node < nodes; node++) {
    const start = absorber[node]!;
    const mean = start + inletWeight * (before - start);
    source[node] = sourceAt(mean, slope, absorbed, ambient, nodeArea, a1, a2);
    gain[node] = ((1 - held) * inflow) / total;
    offset[node] = ((1 - held) * source[node]!) / total + held * start;
    before = start;
  }

  // Pipes.
  for (let section = 0; section < PIPE_SECTIONS; section++) {
    const place = section < HOT_SECTIONS ? nodes + section : coldAt + section - HOT_SECTIONS;
    const loss = pipeConductance[section]!;
    const rate = capacityRate + loss;
    const number = (rate * duration) / pipeCapacity[section]!;
    decay[place] = Math.exp(-number);
    const kept = meanDecay(number, decay[place]!);
    gain[place] = ((1 - kept) * capacityRate) / rate;
    offset[place] = ((1 - kept) * loss * surroundings(section, ambient, room)) / rate + kept * pipe[section]!;
  }

  // Coil, from its top down: the fluid meets the warmest node first.
  let lastShare = -1;
  let pass = 0;
  let nodeDecay = 1;
  for (let piece = 0; piece < coilNodes; piece++) {
    const node = coilNodes - 1 - piece;
    const share = coilShare[node]!;
    if (share !== lastShare) {
      const effectiveness = -Math.expm1((-coilConductance * share) / capacityRate);
      const number = (capacityRate * effectiveness * duration) / tank.nodeCapacity;
      nodeDecay = Math.exp(-number);
      pass = effectiveness * meanDecay(number, nodeDecay);
      lastShare = share;
    }
    decay[coilAt + piece] = nodeDecay;
    gain[coilAt + piece] = 1 - pass;
    offset[coilAt + piece] = pass * water[coilBottom + node]!;
  }

  // Close the ring.
  let ringGain = 1;
  let ringOffset = 0;
  const parts = coldAt + PIPE_SECTIONS - HOT_SECTIONS;
  for (let part = 0; part < parts; part++) {
    ringGain *= gain[part]!;
    ringOffset = gain[part]! * ringOffset + offset[part]!;
  }
  const arrayInlet = ringOffset / (1 - ringGain);

  // Write back, in the order of the flow.
  let inlet = arrayInlet;
  let lost = 0;
  for (let node = 0; node < nodes; node++) {
    const start = absorber[node]!;
    const outlet = gain[node]! * inlet + offset[node]!;
    const limit = (inflow * inlet + source[node]!) / total;
    absorber[node] = limit + (start - limit) * absorberDecay;
    lost += slope * (inletWeight * inlet + (1 - inletWeight) * outlet) - source[node]!;
    inlet = outlet;
  }
  const arrayOutlet = inlet;
  flows[CIRCUIT.absorbed] = absorbed * nodeArea * nodes * duration;
  flows[CIRCUIT.collectorLoss] = (lost + absorbed * nodeArea * nodes) * duration;
  flows[CIRCUIT.collectorHeat] = capacityRate * (arrayOutlet - arrayInlet) * duration;

  let pipeLoss = 0;
  let coilHeat = 0;
  for (let part = nodes; part < parts; part++) {
    const outlet = gain[part]! * inlet + offset[part]!;
    if (part >= coilAt && part < coldAt) {
      const node = coldAt - 1 - part;
      const start = water[coilBottom + node]!;
      const risen = (inlet - start) * (1 - decay[part]!);
      water[coilBottom + node] = start + risen;
      coilHeat += risen;
    } else {
      const section = part < coilAt ? part - nodes : part - coldAt + HOT_SECTIONS;
      const loss = pipeConductance[section]!;
      const around = surroundings(section, ambient, room);
      const limit = (capacityRate * inlet + loss * around) / (capacityRate + loss);
      pipe[section] = limit + (pipe[section]! - limit) * decay[part]!;
      pipeLoss += loss * (outlet - around);
    }
    inlet = outlet;
  }
  flows[CIRCUIT.pipeLoss] = pipeLoss * duration;
  flows[CIRCUIT.coilHeat] = coilHeat * tank.nodeCapacity;
  return arrayOutlet;
}

/**
 * One step with the fluid standing: each collector node and pipe section follows its own balance. Allocates nothing; exact but
 * for the quadratic loss, which is linearised as in {@link circulate}.
 *
 * @param stepsPerHour - One of those that the circuit was compiled for.
 */
export function standStill(
  circuit: Circuit,
  stepsPerHour: number,
  absorbed: number,
  ambient: number,
  room: number,
): void {
  const { absorber, pipe, absorberCapacity, nodeArea, a1, a2, pipeCapacity, flows } = circuit;
  const duration = 3600 / stepsPerHour;
  let lost = 0;
  for (let node = 0; node < absorber.length; node++) {
    const start = absorber[node]!;
    const slope = nodeArea * (a1 + 2 * a2 * Math.abs(start - ambient));
    const limit = sourceAt(start, slope, absorbed, ambient, nodeArea, a1, a2) / slope;
    const exponent = (slope * duration) / absorberCapacity;
    const decay = Math.exp(-exponent);
    absorber[node] = limit + (start - limit) * decay;
    // slope·(mean − limit) is what the node loses beyond the light it absorbs.
    lost += slope * (start - limit) * meanDecay(exponent, decay);
  }
  const light = absorbed * nodeArea * absorber.length;
  flows[CIRCUIT.absorbed] = light * duration;
  flows[CIRCUIT.collectorLoss] = (light + lost) * duration;
  flows[CIRCUIT.collectorHeat] = 0;

  const decays = circuit.pipeDecay.get(stepsPerHour)!;
  let pipeLoss = 0;
  for (let section = 0; section < PIPE_SECTIONS; section++) {
    const around = surroundings(section, ambient, room);
    const over = pipe[section]! - around;
    const left = over * decays[section]!;
    pipe[section] = around + left;
    pipeLoss += (over - left) * pipeCapacity[section]!;
  }
  flows[CIRCUIT.pipeLoss] = pipeLoss;
  flows[CIRCUIT.coilHeat] = 0;
}

/**
 * Right-hand side of a collector node that does not change in the step: light, and the constant part of its loss
 * a1 d + a2 d|d|, written about the excess d0 at the start as value(d0) + slope (d − d0). [W]
 */
function sourceAt(
  start: number,
  slope: number,
  absorbed: number,
  ambient: number,
  area: number,
  a1: number,
  a2: number,
): number {
  const excess = start - ambient;
  return area * (absorbed - (a1 + a2 * Math.abs(excess)) * excess) + slope * start;
}

/** Air around a pipe section. */
const surroundings = (section: number, ambient: number, room: number): number =>
  section === 1 || section === 2 ? room : ambient;
