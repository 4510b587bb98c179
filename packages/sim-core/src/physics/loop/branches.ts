/** Groups of collectors in one loop, stage after stage along the flow. Nothing here is used where the array is one group. */
import type { ArrayDesign } from '../../design/array.ts';
import { groupsAlongFlow } from '../collector/groups.ts';
import type { Branch, Circuit, StepConditions } from './circuit-state.ts';
import { rowsDrop } from './collector-drop.ts';
import { setNodes, takeNodes } from './collector-nodes.ts';
import { type Shared, splitFlow, type Way } from './flow-split.ts';
import { close, closeRing, NUMBERS, passThrough, RING, type Ring, spread, sweep } from './ring.ts';

const INLET = RING.inlet;
const SIZE = 6;
// Behind the stages so far, behind one group, and behind the groups of a stage together.
const along = new Float64Array(SIZE);
const through = new Float64Array(SIZE);
const together = new Float64Array(SIZE);

/** Behind the last group of the stage that starts with one. */
function stageEnd(branches: readonly Pick<Branch, 'stage'>[], start: number): number {
  let end = start + 1;
  while (end < branches.length && branches[end]!.stage === branches[start]!.stage) end++;
  return end;
}

/** Works the groups of an array into what the loop steps, in the order of the flow; `null` where it is one. @param nodes - Of each panel in series. */
export function compileBranches(array: ArrayDesign, nodes: number, start: number): Branch[] | null {
  if (array.groups.length === 0) return null;
  let first = 0;
  return groupsAlongFlow(array).map((group): Branch => {
    const { collector, inSeries, panels, stage } = group;
    const own = nodes * inSeries;
    const nodeArea = (panels * collector.area) / own;
    const nodeCapacity = collector.heatCapacity * nodeArea;
    first += own;
    return {
      first: first - own,
      end: first,
      nodeArea,
      nodeCapacity,
      dryCapacity: nodeCapacity * collector.dryCapacityShare,
      a1: collector.a1,
      a2: collector.a2,
      stage,
      ...rowsDrop(group),
      conditions: { absorbed: 0, ambient: 0, room: 0, duration: 0 },
      share: 1,
      outlet: start,
      heat: 0,
    };
  });
}

/** Shares the loop's flow out among the groups of each stage. @returns Drop of all stages together. [Pa] */
export function shareFlow(branches: readonly (Way & Pick<Branch, 'stage'>)[], shared: Shared): number {
  let drop = 0;
  for (let start = 0, end = 0; start < branches.length; start = end) {
    end = stageEnd(branches, start);
    drop += splitFlow(branches, start, end, shared);
  }
  return drop;
}

/** Sets up all groups for a step. @param back - What comes from the tank at the start of the step. [°C] */
export function setBranches(
  circuit: Circuit,
  branches: readonly Branch[],
  capacityRate: number,
  back: number,
  conditions: StepConditions,
): void {
  setConditions(branches, conditions);
  let before = back;
  for (let start = 0, end = 0; start < branches.length; start = end) {
    end = stageEnd(branches, start);
    let mixed = 0;
    for (let at = start; at < end; at++) {
      const branch = branches[at]!;
      setNodes(circuit, branch, capacityRate * branch.share, before, branch.conditions);
      mixed += branch.share * circuit.absorber[branch.end - 1]!;
    }
    before = mixed;
  }
}

/** Gives every group what acts on all; its light is its own. */
export function setConditions(branches: readonly Branch[], { ambient, duration, room }: StepConditions): void {
  for (const { conditions } of branches) {
    conditions.ambient = ambient;
    conditions.duration = duration;
    conditions.room = room;
  }
}

/** Solves a circuit's step as it has been set up. */
export function closeCircuit({ branches, ring }: Circuit): void {
  if (branches === null) closeRing(ring);
  else closeBranches(ring, branches);
}

/**
 * Carries all parts of a ring with groups through one step, as `closeRing` does without: what leaves the groups of a stage is mixed by their
 * shares of the flow, mean and trend alike. Allocates nothing.
 */
function closeBranches(ring: Ring, branches: readonly Branch[]): void {
  const last = ring.length - NUMBERS;
  const behind = branches[branches.length - 1]!.end * NUMBERS;
  passThrough(along);
  for (let start = 0, end = 0; start < branches.length; start = end) {
    end = stageEnd(branches, start);
    together.fill(0);
    for (let at = start; at < end; at++) {
      const branch = branches[at]!;
      through.set(along);
      sweep(ring, branch.first * NUMBERS, branch.end * NUMBERS, through);
      for (let place = 0; place < SIZE; place++) together[place]! += branch.share * through[place]!;
    }
    along.set(together);
  }
  sweep(ring, behind, last, along);
  close(along);
  for (let start = 0, end = 0; start < branches.length; start = end) {
    end = stageEnd(branches, start);
    together.fill(0);
    for (let at = start; at < end; at++) {
      const branch = branches[at]!;
      through.set(along);
      spread(ring, branch.first * NUMBERS, branch.end * NUMBERS, through);
      branch.outlet = through[0]!;
      together[0]! += branch.share * through[0]!;
      together[1]! += branch.share * through[1]!;
    }
    along.set(together);
  }
  spread(ring, behind, last, along);
  ring[last + INLET] = along[0]!;
}

/** Writes the solved step into all groups. @returns What they lost beyond their light. [W] */
export function takeBranches(
  circuit: Circuit,
  branches: readonly Branch[],
  capacityRate: number,
  duration: number,
): number {
  let lost = 0;
  for (const branch of branches) {
    lost += takeNodes(circuit, branch, branch.outlet);
    const risen = branch.outlet - circuit.ring[branch.first * NUMBERS + INLET]!;
    branch.heat += capacityRate * branch.share * risen * duration;
  }
  return lost;
}
