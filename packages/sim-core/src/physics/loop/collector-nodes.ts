/**
 * Nodes of collectors of one kind in the ring of a circuit. A node's loss is taken at the mean of its inlet and outlet, as ISO 9806 defines its
 * coefficients; the quadratic loss is linearised about that mean at the start of the step.
 */
import { type Absorbing, type Circuit, type StepConditions, sourceAt } from './circuit-state.ts';
import { answerLike, NUMBERS, RING, setPace } from './ring.ts';

const { inlet: INLET, rest: REST, rise: RISE, share: SHARE, spare: SPARE, start: START } = RING;
// Of a collector node: what drives it whatever its temperature [W]. Of the first alone, for all: the slope of their loss [W/K], and how much of
// the inlet is in the mean at which that loss is taken [-].
const SOURCE = SPARE;
const SLOPE = SPARE + 1;
const INLET_WEIGHT = SPARE + 2;

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
  const { end, first, nodeArea } = of;
  const { ambient, duration } = conditions;
  let excess = 0;
  for (let node = first; node < end; node++) excess += absorber[node]! - ambient;
  const slope = nodeArea * (of.a1 + 2 * of.a2 * Math.abs(excess / (end - first)));
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
