/**
 * One step with fluid going round. Each part of the circuit (collector node, pipe section, coil piece with the tank node around it, the coil's
 * content) is a stirred volume that obeys a linear equation with constant coefficients over the step. The parts are set up, {@link closeRing}
 * solves them together, and what became of them is written back. Nothing here allocates but {@link circuitRing}.
 */
import { setBranches, takeBranches } from './branches.ts';
import {
  type Circuit,
  coilTemperature,
  isIndoors,
  type LoopExchange,
  type RingPlaces,
  type StepConditions,
} from './circuit-state.ts';
import { setNodes, takeNodes } from './collector-nodes.ts';
import { answerLike, makeRing, NUMBERS, RING, type Ring, setPace } from './ring.ts';

const { inlet: INLET, own: OWN, rest: REST, rise: RISE, share: SHARE, spare: SPARE, start: START } = RING;
// Of a pipe node: conductance [W/K], 1/capacity [K/J] and surroundings [°C].
const LOSS = SPARE;
const PER_CAPACITY = SPARE + 1;
const AROUND = SPARE + 2;

/**
 * Makes the ring of a circuit, with what no step changes: the volumes of array, pipes and content own all of their outlet, and nothing but
 * their inlet drives those of the coil.
 *
 * @param nodes - Of the array.
 * @param pieces - Of each coil, in the order of the flow.
 */
export function circuitRing(
  nodes: number,
  pieces: readonly number[],
  pipeCapacity: Float64Array,
  pipeConductance: Float64Array,
  upwards: boolean,
): Pick<RingPlaces, 'pipeAt' | 'pipeLike'> & { readonly coils: readonly CoilPlaces[]; readonly ring: Ring } {
  const pipeNodes = pipeCapacity.length;
  const inCoils = pieces.reduce((sum, count) => sum + count + 1, 0);
  const ring = makeRing(nodes + pipeNodes + inCoils);
  const pipeAt = Int32Array.from({ length: pipeNodes }, (_, node) => {
    const hot = node < pipeNodes >> 1;
    return (nodes + node + (hot ? 0 : inCoils)) * NUMBERS;
  });
  for (let node = 0; node < nodes; node++) ring[node * NUMBERS + OWN] = 1;
  let first = nodes + (pipeNodes >> 1);
  const coils = pieces.map((count) => {
    const places = placeCoil(ring, first, count, upwards);
    first += count + 1;
    return places;
  });
  pipeAt.forEach((at, node) => {
    ring[at + OWN] = 1;
    ring[at + LOSS] = pipeConductance[node]!;
    ring[at + PER_CAPACITY] = 1 / pipeCapacity[node]!;
  });
  const pipeLike = new Int32Array(pipeNodes);
  findLike({ pipeAt, pipeCapacity, pipeConductance, pipeLike });
  return { ring, pipeAt, pipeLike, coils };
}

/** Where a coil stands in the ring. */
type CoilPlaces = Pick<RingPlaces, 'coilAt' | 'contentAt'>;

/** Places a coil's pieces, and its content in their middle. @param first - Part of the ring with which it begins. */
function placeCoil(ring: Ring, first: number, pieces: number, upwards: boolean): CoilPlaces {
  const before = pieces >> 1;
  const coilAt = Int32Array.from({ length: pieces }, (_, piece) => {
    const order = upwards ? piece : pieces - 1 - piece;
    return (first + order + (order < before ? 0 : 1)) * NUMBERS;
  });
  const contentAt = (first + before) * NUMBERS;
  for (const at of coilAt) ring[at + SHARE] = 1;
  ring[contentAt + SHARE] = 1;
  return { coilAt, contentAt };
}

/** Finds for each pipe node the first that equals it. */
function findLike({
  pipeAt,
  pipeCapacity,
  pipeConductance,
  pipeLike,
}: Pick<Circuit, 'pipeAt' | 'pipeCapacity' | 'pipeConductance' | 'pipeLike'>): void {
  pipeCapacity.forEach((capacity, node) => {
    let like = 0;
    while (pipeCapacity[like] !== capacity || pipeConductance[like] !== pipeConductance[node]) like++;
    pipeLike[node] = pipeAt[like]!;
  });
}

/** Tells the ring what a pipe node holds and loses. */
export function setPipeNode(circuit: Circuit, node: number): void {
  const { pipeAt, pipeCapacity, pipeConductance, ring } = circuit;
  const at = pipeAt[node]!;
  ring[at + LOSS] = pipeConductance[node]!;
  ring[at + PER_CAPACITY] = 1 / pipeCapacity[node]!;
  findLike(circuit);
}

/** Sets up array, pipes and the coil's content for a step. */
export function setLoop(circuit: Circuit, capacityRate: number, conditions: StepConditions): void {
  const { branches, pipe } = circuit;
  const back = pipe[pipe.length - 1]!;
  if (branches === null) setNodes(circuit, circuit, capacityRate, back, conditions);
  else setBranches(circuit, branches, capacityRate, back, conditions);
  setPipes(circuit, capacityRate, conditions);
  setContent(circuit, capacityRate, conditions);
}

/** Sets up a coil's content for a step. */
export function setContent(circuit: Circuit, capacityRate: number, conditions: StepConditions): void {
  const { coil, contentAt, ring } = circuit;
  ring[contentAt + OWN] = 1; // a valve may have led the fluid past it
  setPace(ring, contentAt, (capacityRate * conditions.duration) / coil.capacity);
  ring[contentAt + START] = coilTemperature(coil);
}

function setPipes(circuit: Circuit, capacityRate: number, conditions: StepConditions): void {
  const { pipe, pipeAt, pipeLike, ring } = circuit;
  const { ambient, duration, room } = conditions;
  const pipeNodes = pipe.length;
  let last = -1; // of those that nodes are like
  let loss = 0;
  let perRate = 0;
  for (let node = 0; node < pipeNodes; node++) {
    const at = pipeAt[node]!;
    const around = isIndoors(node, pipeNodes) ? room : ambient;
    const like = pipeLike[node]!;
    if (like !== last) {
      last = like;
      loss = ring[like + LOSS]!;
      perRate = 1 / (capacityRate + loss);
    }
    if (like === at) {
      ring[at + SHARE] = capacityRate * perRate;
      setPace(ring, at, (capacityRate + loss) * duration * ring[at + PER_CAPACITY]!);
    } else answerLike(ring, at, like);
    ring[at + REST] = loss * around * perRate;
    ring[at + START] = pipe[node]!;
    ring[at + AROUND] = around;
  }
}

/** Writes the solved step into array, pipes and the coil's content, and what they exchanged; the coil's heat is left to those who know its other side. */
export function takeLoop(
  circuit: Circuit,
  capacityRate: number,
  conditions: StepConditions,
  exchange: LoopExchange,
): void {
  const { absorber, branches, pipe, pipeAt, ring } = circuit;
  const { duration } = conditions;
  const outlet = ring[absorber.length * NUMBERS + INLET]!;
  const lost =
    branches === null ? takeNodes(circuit, circuit, outlet) : takeBranches(circuit, branches, capacityRate, duration);
  const absorbed = conditions.absorbed * circuit.nodeArea * absorber.length;
  exchange.absorbed = absorbed * duration;
  exchange.collectorLoss = (lost + absorbed) * duration;
  exchange.collectorHeat = capacityRate * (outlet - ring[INLET]!) * duration;
  exchange.outlet = outlet;

  let pipeLoss = 0;
  for (let node = 0; node < pipe.length; node++) {
    const at = pipeAt[node]!;
    pipe[node]! += ring[at + RISE]!;
    pipeLoss += ring[at + LOSS]! * (ring[at + NUMBERS + INLET]! - ring[at + AROUND]!);
  }
  exchange.pipeLoss = pipeLoss * duration;
  takeContent(circuit);
}

/** Writes the solved step into the content of a coil that the fluid passes: its mean is all that a flow needs. */
export function takeContent({ coil, contentAt, ring }: Circuit): void {
  if (!coil.open) return;
  coil.mean = ring[contentAt + START]! + ring[contentAt + RISE]!;
  coil.passed = true;
}

/** Mean of what the pump moves, array and pipes, at the start of a step. [°C] */
export function meanFluidTemperature({ absorber, pipe }: Circuit): number {
  let inArray = 0;
  for (let node = 0; node < absorber.length; node++) inArray += absorber[node]!;
  let inPipes = 0;
  for (let at = 0; at < pipe.length; at++) inPipes += pipe[at]!;
  return 0.5 * (inArray / absorber.length) + 0.5 * (inPipes / pipe.length);
}

/** Fluid in the middle of the coil, mean of the step just solved. [°C] */
export const coilMean = ({ contentAt, ring }: Circuit): number => ring[contentAt + NUMBERS + INLET]!;
