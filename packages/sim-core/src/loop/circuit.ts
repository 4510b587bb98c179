import { meanDecay } from '../relaxation.ts';
import type { Tank } from '../tank/tank.ts';
import { type BoilingState, boilNode } from './boil.ts';
import { closeRing, type Ring } from './ring.ts';

/** Pipe sections in the order of the flow: hot outdoors, hot indoors, cold indoors, cold outdoors. */
export const PIPE_SECTIONS = 4;
/** Tank nodes that differ by less turn over as one when warmed from below or cooled from above. [K] */
const POOLED = 0.01;

/** What losses and conduction are taken to do to a node in a step, at most: in a long one a sharp front's pace does not last. [K] */
const MOST_DRIFT = 1;

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
export interface Circuit extends BoilingState {
  /** Absorber and its fluid along the flow, inlet first. Shape [collector nodes]. [°C] */
  readonly absorber: Float64Array;
  /** Pipe along the flow, each of the {@link PIPE_SECTIONS} in equal nodes. Shape [4 × nodes a section]. [°C] */
  readonly pipe: Float64Array;
  /** Heat capacity of one collector node. [J/K] */
  readonly absorberCapacity: number;
  /** Reference area of one collector node. [m²] */
  readonly nodeArea: number;
  /** Changed by the hour where wind matters. [W/(m²·K)] */
  a1: number;
  readonly a2: number;
  /** Of each node. [J/K] */
  readonly pipeCapacity: Float64Array;
  /** Of each node. [W/K] */
  readonly pipeConductance: Float64Array;
  /** Decay of a standing node in one step, by steps per hour. */
  readonly pipeDecay: ReadonlyMap<number, Float64Array>;
  /** Lowest tank node that the coil touches. */
  readonly coilBottom: number;
  /** Whether the fluid runs through the coil from its lower end upwards. */
  readonly upwards: boolean;
  /** Share of the coil in each node from {@link coilBottom} upwards; they add up to 1. */
  readonly coilShare: Float64Array;
  /** Exchange of the last step, see {@link CIRCUIT}. [J] */
  readonly flows: Float64Array;
  /** Collector nodes, hot pipes, coil pieces from the top down, cold pipes, in the order of the flow. */
  readonly ring: Ring;
  /** Scratch: what drives each collector node whatever its temperature. [W] */
  readonly source: Float64Array;
  /** Scratch: 1 over the number of nodes that rise with that of each coil piece, and how far they drift in the step anyway [K]. */
  readonly piecePerWeight: Float64Array;
  readonly pieceDrift: Float64Array;
}

/**
 * One step with the pump running. Allocates nothing.
 *
 * Each part of the circuit (collector node, pipe section, coil piece with the tank node around it) is a stirred volume that
 * obeys a linear equation with constant coefficients over the step; {@link closeRing} solves them together.
 *
 * A collector node's loss is taken at the mean of its inlet and outlet, as ISO 9806 defines its coefficients; the quadratic
 * loss is linearised about that mean at the start of the step.
 *
 * A tank node that the coil warms rises with the water above it that is no warmer, since warm water does not stay below; that
 * water's capacity counts with it here, and the turnover that follows spreads the heat. What losses and conduction do to the
 * node meanwhile is taken from the step before, for its effect on the exchange alone.
 *
 * @param circuit - Changed in place: absorber, pipe, flows.
 * @param tank - Its nodes around the coil are changed in place, and their rise noted for `restTank`.
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
  const { absorber, coilBottom, coilShare, flows, nodeArea, pipe, pipeCapacity, pipeConductance, ring, source } =
    circuit;
  const { inlet, own, rest, rise, share, start, x } = ring;
  const nodes = absorber.length;
  const coilNodes = coilShare.length;
  const pipeNodes = pipe.length;
  const hotNodes = pipeNodes >> 1;
  const coilAt = nodes + hotNodes;
  const coldAt = coilAt + coilNodes;
  const water = tank.temperature;

  // Array: one slope for all nodes (about their mean excess), the value of the loss by node.
  let excess = 0;
  for (let node = 0; node < nodes; node++) excess += absorber[node]! - ambient;
  const slope = nodeArea * (circuit.a1 + 2 * circuit.a2 * Math.abs(excess / nodes));
  const inletWeight = Math.min(0.5, (0.5 * capacityRate) / slope);
  const total = capacityRate + slope * (1 - inletWeight);
  const absorberX = (total * duration) / circuit.absorberCapacity;
  const absorberShare = (capacityRate - slope * inletWeight) / total;
  const perTotal = 1 / total;
  let before = pipe[pipeNodes - 1]!;
  for (let node = 0; node < nodes; node++) {
    const here = absorber[node]!;
    const mean = here + inletWeight * (before - here);
    source[node] = sourceAt(mean, slope, absorbed, ambient, nodeArea, circuit.a1, circuit.a2);
    x[node] = absorberX;
    share[node] = absorberShare;
    own[node] = 1;
    rest[node] = source[node]! * perTotal;
    start[node] = here;
    before = here;
  }

  for (let at = 0; at < pipeNodes; at++) {
    const part = at < hotNodes ? nodes + at : coldAt + at - hotNodes;
    const loss = pipeConductance[at]!;
    const rate = capacityRate + loss;
    x[part] = (rate * duration) / pipeCapacity[at]!;
    share[part] = capacityRate / rate;
    own[part] = 1;
    rest[part] = (loss * (isIndoors(at, pipeNodes) ? room : ambient)) / rate;
    start[part] = pipe[at]!;
  }

  const mostDrift = MOST_DRIFT / duration;
  // Coil, from its top down: there the fluid meets the warmest node first, unless the loop runs backwards.
  const fluid = pipe[hotNodes - 1]!;
  let low = coilBottom + coilNodes; // lowest node of the pool that was found last, and whether the fluid warms it
  let poolWarms = false;
  let perWeight = 1;
  let lastShare = -1;
  let effectiveness = 0;
  let perRate = 0;
  for (let piece = 0; piece < coilNodes; piece++) {
    const node = coilBottom + coilNodes - 1 - piece;
    const here = water[node]!;
    const warms = fluid > here;
    if (node < low || warms !== poolWarms) {
      // A warmed node carries those above it that are no warmer, a cooled one those below.
      const highest = warms ? water.length - 1 : node;
      const lowest = warms ? coilBottom : 0;
      let high = node;
      while (high < highest && water[high + 1]! - water[high]! < POOLED) high++;
      low = node;
      while (low > lowest && water[low]! - water[low - 1]! < POOLED) low--;
      perWeight = (node - Math.max(low, coilBottom) + 1) / (high - low + 1);
      poolWarms = warms;
    }
    if (coilShare[node - coilBottom]! !== lastShare) {
      lastShare = coilShare[node - coilBottom]!;
      effectiveness = -Math.expm1((-coilConductance * lastShare) / capacityRate);
      perRate = tank.nodeCapacity / (capacityRate * effectiveness);
    }
    const drift = Math.min(Math.max(tank.drift[node]!, -mostDrift), mostDrift);
    circuit.pieceDrift[piece] = drift * duration * perWeight;
    circuit.piecePerWeight[piece] = perWeight;
    const at = coilAt + (circuit.upwards ? coilNodes - 1 - piece : piece);
    x[at] = (duration / perRate) * perWeight;
    share[at] = 1;
    own[at] = effectiveness;
    rest[at] = drift * perRate;
    start[at] = here;
  }

  closeRing(ring);

  let lost = 0;
  for (let node = 0; node < nodes; node++) {
    absorber[node]! += rise[node]!;
    lost += slope * (inletWeight * inlet[node]! + (1 - inletWeight) * inlet[node + 1]!) - source[node]!;
  }
  const light = absorbed * nodeArea * nodes;
  flows[CIRCUIT.absorbed] = light * duration;
  flows[CIRCUIT.collectorLoss] = (lost + light) * duration;
  flows[CIRCUIT.collectorHeat] = capacityRate * (inlet[nodes]! - inlet[0]!) * duration;

  let pipeLoss = 0;
  for (let at = 0; at < pipeNodes; at++) {
    const part = at < hotNodes ? nodes + at : coldAt + at - hotNodes;
    pipe[at]! += rise[part]!;
    pipeLoss += pipeConductance[at]! * (inlet[part + 1]! - (isIndoors(at, pipeNodes) ? room : ambient));
  }
  flows[CIRCUIT.pipeLoss] = pipeLoss * duration;

  let coilHeat = 0;
  for (let piece = 0; piece < coilNodes; piece++) {
    const node = coilBottom + coilNodes - 1 - piece;
    const at = coilAt + (circuit.upwards ? coilNodes - 1 - piece : piece);
    const risen = (rise[at]! - circuit.pieceDrift[piece]!) / circuit.piecePerWeight[piece]!;
    water[node]! += risen;
    tank.coilRise[node] = risen;
    coilHeat += risen;
  }
  tank.heated = true;
  flows[CIRCUIT.coilHeat] = coilHeat * tank.nodeCapacity;
  return inlet[nodes]!;
}

/**
 * One step with the fluid standing: each collector node and pipe section follows its own balance. Allocates nothing; exact but
 * for the quadratic loss, which goes along the line between start and end of the step.
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
  const { absorber, pipe, absorberCapacity, boilingPoint, nodeArea, a1, a2, pipeCapacity, flows } = circuit;
  const duration = 3600 / stepsPerHour;
  let lost = 0;
  for (let node = 0; node < absorber.length; node++) {
    const start = absorber[node]!;
    // First about the start; then along the line from there to where that ends.
    const tangent = nodeArea * (a1 + 2 * a2 * Math.abs(start - ambient));
    const towards = sourceAt(start, tangent, absorbed, ambient, nodeArea, a1, a2) / tangent;
    const foreseen = towards + (start - towards) * Math.exp((-tangent * duration) / absorberCapacity);
    const slope = nodeArea * (a1 + a2 * (Math.abs(start - ambient) + Math.abs(foreseen - ambient)));
    const limit = sourceAt(start, slope, absorbed, ambient, nodeArea, a1, a2) / slope;
    const exponent = (slope * duration) / absorberCapacity;
    const decay = Math.exp(-exponent);
    const end = limit + (start - limit) * decay;
    if (start > boilingPoint || end > boilingPoint) {
      lost += boilNode(circuit, node, limit, slope, duration) / duration;
      continue;
    }
    absorber[node] = end;
    // slope·(mean − limit) is what the node loses beyond the light it absorbs.
    lost += slope * (start - limit) * meanDecay(exponent, decay);
  }
  const light = absorbed * nodeArea * absorber.length;
  flows[CIRCUIT.absorbed] = light * duration;
  flows[CIRCUIT.collectorLoss] = (light + lost) * duration;
  flows[CIRCUIT.collectorHeat] = 0;

  const decays = circuit.pipeDecay.get(stepsPerHour)!;
  let pipeLoss = 0;
  for (let at = 0; at < pipe.length; at++) {
    const around = isIndoors(at, pipe.length) ? room : ambient;
    const over = pipe[at]! - around;
    const left = over * decays[at]!;
    pipe[at] = around + left;
    pipeLoss += (over - left) * pipeCapacity[at]!;
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

/** Whether a pipe node lies in one of the two inner sections. */
export const isIndoors = (at: number, pipeNodes: number): boolean => 4 * at >= pipeNodes && 4 * at < 3 * pipeNodes;
