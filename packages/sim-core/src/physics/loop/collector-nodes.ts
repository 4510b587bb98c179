/**
 * Nodes of collectors of one kind in the ring of a circuit. A node's loss is taken at the mean of its inlet and outlet, as ISO 9806 defines its
 * coefficients; the quadratic loss is linearised about that mean at the start of the step, and where a step is so long that its slope would change
 * much, along the line from there to where the step is headed.
 */
import { decayOf } from '../relaxation.ts';
import { type Absorbing, type Circuit, type StepConditions, sourceAt } from './circuit-state.ts';
import { answerLike, NUMBERS, RING, setPace } from './ring.ts';

const { inlet: INLET, rest: REST, rise: RISE, share: SHARE, spare: SPARE, start: START } = RING;
// Of a collector node: what drives it whatever its temperature [W]. Of the first alone, for all: the slope of their loss [W/K], and how much of
// the inlet is in the mean at which that loss is taken [-].
const SOURCE = SPARE;
const SLOPE = SPARE + 1;
const INLET_WEIGHT = SPARE + 2;

/** Share by which the slope of the loss may change within a step that takes it at its start; judgement. [-] */
const STRAIGHT = 0.25;

/**
 * Sets up the nodes of an array, or of one of its groups: one slope for all of them (about their mean excess), the value of the loss by node.
 *
 * @param before - What enters the first of them at the start of the step. [°C]
 */
export function setNodes(
  { absorber, ring }: Circuit,
  of: Absorbing,
  capacityRate: number,
  before: number,
  conditions: StepConditions,
): void {
  const { end, first } = of;
  const { ambient, duration } = conditions;
  let excess = 0;
  for (let node = first; node < end; node++) excess += absorber[node]! - ambient;
  const slope = slopeOf(of, excess / (end - first), capacityRate / (end - first), before, conditions);
  const inletWeight = Math.min(0.5, (0.5 * capacityRate) / slope);
  const total = capacityRate + slope * (1 - inletWeight);
  const firstAt = first * NUMBERS;
  ring[firstAt + SLOPE] = slope;
  ring[firstAt + INLET_WEIGHT] = inletWeight;
  ring[firstAt + SHARE] = (capacityRate - slope * inletWeight) / total;
  setPace(ring, firstAt, (total * duration) / of.nodeCapacity);
  const perTotal = 1 / total;
  let inlet = before;
  for (let node = first, at = firstAt; node < end; node++, at += NUMBERS) {
    const here = absorber[node]!;
    const source = sourceAt(of, here + inletWeight * (inlet - here), slope, conditions);
    if (node > first) answerLike(ring, at, firstAt);
    ring[at + REST] = source * perTotal;
    ring[at + START] = here;
    ring[at + SOURCE] = source;
    inlet = here;
  }
}

/**
 * Slope of the loss of a node. [W/K]
 *
 * @param mean - Excess of the nodes over the air at the start. [K]
 * @param rate - Capacity rate for one node of those that it flows through. [W/K]
 */
function slopeOf(of: Absorbing, mean: number, rate: number, before: number, conditions: StepConditions): number {
  const { a1, a2, nodeArea, nodeCapacity } = of;
  const { absorbed, ambient, duration } = conditions;
  const size = Math.abs(mean);
  const tangent = nodeArea * (a1 + 2 * a2 * size);
  // Headed for by its light, its loss at the start and a stream that leaves it as far over the mean as it comes in under it.
  const drive = nodeArea * (absorbed - (a1 + a2 * size) * mean) + 2 * rate * (before - ambient - mean);
  const bends = 2 * nodeArea * a2 * Math.abs(drive);
  if (bends * duration < STRAIGHT * tangent * nodeCapacity) return tangent;
  const total = tangent + 2 * rate;
  if (bends < STRAIGHT * tangent * total) return tangent;
  const headed = mean + (drive / total) * (1 - decayOf((total * duration) / nodeCapacity));
  return nodeArea * (a1 + a2 * (size + Math.abs(headed)));
}

/** Writes the solved step into nodes. @param outlet - Mean of what leaves the last. [°C] @returns What they lost beyond their light. [W] */
export function takeNodes({ absorber, ring }: Circuit, { end, first }: Absorbing, outlet: number): number {
  const firstAt = first * NUMBERS;
  const slope = ring[firstAt + SLOPE]!;
  const inletWeight = ring[firstAt + INLET_WEIGHT]!;
  let lost = 0;
  for (let node = first, at = firstAt; node < end; node++, at += NUMBERS) {
    absorber[node]! += ring[at + RISE]!;
    const leaving = node + 1 < end ? ring[at + NUMBERS + INLET]! : outlet;
    lost += slope * (inletWeight * ring[at + INLET]! + (1 - inletWeight) * leaving) - ring[at + SOURCE]!;
  }
  return lost;
}
