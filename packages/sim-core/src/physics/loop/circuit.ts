import type { Tank } from '../tank/tank.ts';
import { CIRCUIT, type Circuit, isIndoors, sourceAt } from './circuit-state.ts';
import { closeRing, makeRing, NUMBERS, RING, type Ring } from './ring.ts';

// Places in a part of the ring, and what the spare ones hold: of a collector node what drives it whatever its temperature [W]; of a pipe node
// its conductance [W/K], 1/capacity [K/J] and surroundings [°C]; of a coil piece how far its nodes drift in the step anyway [K] and 1 over the
// number of nodes that rise with it.
const {
  inlet: INLET,
  like: LIKE,
  own: OWN,
  rest: REST,
  rise: RISE,
  share: SHARE,
  spare: SPARE,
  start: START,
  x: X,
} = RING;
const SOURCE = SPARE;
const LOSS = SPARE;
const PER_CAPACITY = SPARE + 1;
const AROUND = SPARE + 2;
const DRIFT = SPARE;
const PER_WEIGHT = SPARE + 1;

/** Tank nodes that differ by less turn over as one when warmed from below or cooled from above. [K] */
const POOLED = 0.01;

/** What losses and conduction are taken to do to a node in a step, at most: in a long one a sharp front's pace does not last. [K] */
const MOST_DRIFT = 1;

/**
 * Makes the ring of a circuit, with what no step changes: the volumes of array and pipes own all of their outlet, and nothing but their inlet
 * drives the coil's.
 */
export function circuitRing(
  nodes: number,
  coilNodes: number,
  pipeCapacity: Float64Array,
  pipeConductance: Float64Array,
): Ring {
  const pipeNodes = pipeCapacity.length;
  const hotNodes = pipeNodes >> 1;
  const ring = makeRing(nodes + pipeNodes + coilNodes);
  for (let node = 0; node < nodes; node++) ring[node * NUMBERS + OWN] = 1;
  for (let piece = 0; piece < coilNodes; piece++) ring[(nodes + hotNodes + piece) * NUMBERS + SHARE] = 1;
  for (let node = 0; node < pipeNodes; node++) {
    const at = (node < hotNodes ? nodes + node : nodes + coilNodes + node) * NUMBERS;
    ring[at + OWN] = 1;
    ring[at + LOSS] = pipeConductance[node]!;
    ring[at + PER_CAPACITY] = 1 / pipeCapacity[node]!;
    // Hot and cold pipe are alike, seen from the coil.
    const mirrored = pipeNodes - 1 - node;
    if (node < hotNodes || pipeCapacity[mirrored] !== pipeCapacity[node]) continue;
    if (pipeConductance[mirrored] === pipeConductance[node]) ring[at + LIKE] = (nodes + mirrored) * NUMBERS;
  }
  return ring;
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
  const { absorber, coilBottom, coilShare, flows, nodeArea, pipe, ring } = circuit;
  const { a1, a2, upwards } = circuit;
  const nodes = absorber.length;
  const coilNodes = coilShare.length;
  const pipeNodes = pipe.length;
  const hotNodes = pipeNodes >> 1;
  const hotAt = nodes * NUMBERS;
  const coilAt = hotAt + hotNodes * NUMBERS;
  const coldAt = coilAt + coilNodes * NUMBERS;
  const water = tank.temperature;

  // Array: one slope for all nodes (about their mean excess), the value of the loss by node.
  let excess = 0;
  for (let node = 0; node < nodes; node++) excess += absorber[node]! - ambient;
  const slope = nodeArea * (a1 + 2 * a2 * Math.abs(excess / nodes));
  const inletWeight = Math.min(0.5, (0.5 * capacityRate) / slope);
  const total = capacityRate + slope * (1 - inletWeight);
  const absorberX = (total * duration) / circuit.absorberCapacity;
  const absorberShare = (capacityRate - slope * inletWeight) / total;
  const perTotal = 1 / total;
  let before = pipe[pipeNodes - 1]!;
  for (let node = 0, at = 0; node < nodes; node++, at += NUMBERS) {
    const here = absorber[node]!;
    const mean = here + inletWeight * (before - here);
    const source = sourceAt(mean, slope, absorbed, ambient, nodeArea, a1, a2);
    ring[at + X] = absorberX;
    ring[at + SHARE] = absorberShare;
    ring[at + REST] = source * perTotal;
    ring[at + START] = here;
    ring[at + SOURCE] = source;
    before = here;
  }

  for (let node = 0, at = hotAt; node < pipeNodes; node++, at += NUMBERS) {
    if (node === hotNodes) at = coldAt;
    const around = isIndoors(node, pipeNodes) ? room : ambient;
    const loss = ring[at + LOSS]!;
    const rate = capacityRate + loss;
    const perRate = 1 / rate;
    ring[at + X] = rate * duration * ring[at + PER_CAPACITY]!;
    ring[at + SHARE] = capacityRate * perRate;
    ring[at + REST] = loss * around * perRate;
    ring[at + START] = pipe[node]!;
    ring[at + AROUND] = around;
  }

  const mostDrift = MOST_DRIFT / duration;
  // Coil, from its top down: there the fluid meets the warmest node first, unless the loop runs backwards.
  const fluid = pipe[hotNodes - 1]!;
  const firstPiece = upwards ? coldAt - NUMBERS : coilAt;
  const nextPiece = upwards ? -NUMBERS : NUMBERS;
  let low = coilBottom + coilNodes; // lowest node of the pool that was found last, and whether the fluid warms it
  let poolWarms = false;
  let perWeight = 1;
  let lastShare = -1;
  let effectiveness = 0;
  let perRate = 0;
  for (let node = coilBottom + coilNodes - 1, at = firstPiece; node >= coilBottom; node--, at += nextPiece) {
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
    ring[at + X] = (duration / perRate) * perWeight;
    ring[at + OWN] = effectiveness;
    ring[at + REST] = drift * perRate;
    ring[at + START] = here;
    ring[at + DRIFT] = drift * duration * perWeight;
    ring[at + PER_WEIGHT] = perWeight;
  }

  closeRing(ring);

  let lost = 0;
  for (let node = 0, at = 0; node < nodes; node++, at += NUMBERS) {
    absorber[node]! += ring[at + RISE]!;
    lost +=
      slope * (inletWeight * ring[at + INLET]! + (1 - inletWeight) * ring[at + NUMBERS + INLET]!) - ring[at + SOURCE]!;
  }
  const arrayOutlet = ring[hotAt + INLET]!;
  const light = absorbed * nodeArea * nodes;
  flows[CIRCUIT.absorbed] = light * duration;
  flows[CIRCUIT.collectorLoss] = (lost + light) * duration;
  flows[CIRCUIT.collectorHeat] = capacityRate * (arrayOutlet - ring[INLET]!) * duration;

  let pipeLoss = 0;
  for (let node = 0, at = hotAt; node < pipeNodes; node++, at += NUMBERS) {
    if (node === hotNodes) at = coldAt;
    pipe[node]! += ring[at + RISE]!;
    pipeLoss += ring[at + LOSS]! * (ring[at + NUMBERS + INLET]! - ring[at + AROUND]!);
  }
  flows[CIRCUIT.pipeLoss] = pipeLoss * duration;

  let coilHeat = 0;
  for (let node = coilBottom + coilNodes - 1, at = firstPiece; node >= coilBottom; node--, at += nextPiece) {
    const risen = (ring[at + RISE]! - ring[at + DRIFT]!) / ring[at + PER_WEIGHT]!;
    water[node]! += risen;
    tank.coilRise[node] = risen;
    coilHeat += risen;
  }
  tank.heated = true;
  flows[CIRCUIT.coilHeat] = coilHeat * tank.nodeCapacity;
  return arrayOutlet;
}
