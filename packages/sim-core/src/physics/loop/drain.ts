/** A loop that empties: what its water takes along, what stays in the metal, and what the next filling finds. Nothing here allocates but {@link compileDrain}. */
import type { SystemDesign } from '../../design/design.ts';
import { type CompiledFluid, fluidDensity, fluidSpecificHeat } from '../fluid/compile.ts';
import { boilingPointOf, nodeHeat } from './boil.ts';
import { setPipeNode } from './circuit.ts';
import { pipeDecays } from './circuit-design.ts';
import { type Absorbing, type Circuit, isIndoors, type LoopExchange } from './circuit-state.ts';
import { compileFilling, type Filling } from './filling.ts';
import type { CompiledDrive } from './pump-drive.ts';

/** Water's temperature at which contents are counted. [°C] */
const REFERENCE = 40;
/** Least share of the vessel's water that stays in it while the pump runs. [-] */
const LEAST_IN_VESSEL = 0.1;
/** Boiling water at the pressure of the air. [°C] */
const BOILING = 100;

/** A loop that can be empty: its state, its capacities full and empty, and what the year made of it. */
export interface Drain {
  empty: boolean;
  /** Whether the water runs to waste, and fresh water fills; else it goes to the vessel and comes from there. */
  readonly toWaste: boolean;
  /** Pipe node that holds the vessel; -1 where there is none. */
  readonly vessel: number;
  /** Collectors by kind, and heat capacity of a node of each, full and empty. [J/K] */
  readonly parts: readonly Absorbing[];
  readonly full: Float64Array;
  readonly dry: Float64Array;
  /** Means over all nodes. [J/K] */
  readonly meanFull: number;
  readonly meanDry: number;
  /** Of the pipe nodes, likewise; the vessel's is the greater when all has drained. [J/K] */
  readonly fullPipe: Float64Array;
  readonly dryPipe: Float64Array;
  readonly fullDecay: Circuit['pipeDecay'];
  readonly dryDecay: Circuit['pipeDecay'];
  /** Water that drains. [m³] */
  readonly content: number;
  /** Carried from collectors to vessel, lost by collectors and by pipes in the step at hand. [J] */
  moved: number;
  lost: number;
  pipeLost: number;
  /** How collectors and pipes fill from the vessel; `null` where fresh water fills them, at once. */
  readonly filling: Filling | null;
  /** Whether water stood in something below 0 °C in the hour at hand. */
  frost: boolean;
  /** Of the year: times it emptied, fillings that flashed, heat above the air left outside and heat above the vessel brought back. [J] */
  times: number;
  flashes: number;
  heatLeft: number;
  heatBack: number;
}

/** A design's loop, empty; `null` for a closed one. Its circuit is changed: the vessel is put into the pipe. */
export function compileDrain(
  design: SystemDesign,
  fluid: CompiledFluid,
  drive: CompiledDrive,
  circuit: Circuit,
  stepCounts: readonly number[],
): Drain | null {
  const { loop } = design;
  if (loop.layout === 'closed') return null;
  const toWaste = loop.layout === 'direct';
  const water = fluidDensity(fluid, REFERENCE) * fluidSpecificHeat(fluid, REFERENCE);
  const parts: readonly Absorbing[] = circuit.branches ?? [circuit];
  const staying = toWaste ? 0 : loop.drainBack.shareStaying;
  const full = Float64Array.from(parts, ({ nodeCapacity }) => nodeCapacity);
  const dry = full.map((whole, at) => whole - (1 - staying) * (whole - parts[at]!.dryCapacity));
  const nodes = circuit.pipe.length;
  const perNode = ((Math.PI / 4) * loop.pipeInnerDiameter ** 2 * loop.pipeLength * loop.outdoorShare * 2) / nodes;
  const { pipeCapacity, pipeConductance } = circuit;
  const fullPipe = pipeCapacity;
  const dryPipe = pipeCapacity.map((whole, at) =>
    isIndoors(at, nodes) ? whole : Math.max(whole - perNode * water, 0.1 * whole),
  );
  const inCollectors = parts.reduce((sum, { end, first }, at) => sum + (end - first) * (full[at]! - dry[at]!), 0);
  const inPipes = fullPipe.reduce((sum, whole, at) => sum + whole - dryPipe[at]!, 0);
  const vessel = toWaste ? -1 : nodes / 2 - 1;
  if (vessel >= 0) {
    const whole = loop.drainBack.vesselVolume * water;
    fullPipe[vessel]! += Math.max(whole - inCollectors - inPipes, LEAST_IN_VESSEL * whole);
    dryPipe[vessel] = fullPipe[vessel]! + inCollectors + inPipes;
    pipeConductance[vessel]! += loop.drainBack.vesselLoss;
    setPipeNode(circuit, vessel);
  }
  const drain: Drain = {
    empty: false,
    toWaste,
    vessel,
    parts,
    full,
    dry,
    meanFull: circuit.nodeCapacity,
    meanDry: circuit.nodeCapacity - inCollectors / circuit.absorber.length,
    fullPipe: fullPipe.slice(),
    dryPipe,
    fullDecay: pipeDecays(fullPipe, pipeConductance, stepCounts),
    dryDecay: pipeDecays(dryPipe, pipeConductance, stepCounts),
    content: (inCollectors + inPipes) / water,
    filling: toWaste ? null : compileFilling(design, fluid, drive, inCollectors / water, inPipes / water),
    moved: 0,
    lost: 0,
    pipeLost: 0,
    frost: false,
    times: 0,
    flashes: 0,
    heatLeft: 0,
    heatBack: 0,
  };
  emptyLoop(drain, circuit, 0);
  return Object.assign(drain, { moved: 0, lost: 0, pipeLost: 0, times: 0, heatLeft: 0, heatBack: 0 });
}

/** Lets the water out of collectors and outdoor pipes; where they boil it leaves at its boiling point. */
export function emptyLoop(drain: Drain, circuit: Circuit, ambient: number): void {
  const { dry, dryPipe, full, fullPipe, parts, vessel } = drain;
  const { absorber, pipe, pipeCapacity } = circuit;
  const into = vessel < 0 ? 0 : pipe[vessel]!;
  let heat = 0;
  let water = 0;
  for (let at = 0; at < parts.length; at++) {
    const part = parts[at]!;
    const content = full[at]! - dry[at]!;
    for (let node = part.first; node < part.end; node++) {
      heat += content * Math.min(absorber[node]!, boilingPointOf(circuit));
      drain.heatLeft += dry[at]! * (absorber[node]! - ambient);
    }
    water += content * (part.end - part.first);
    part.nodeCapacity = dry[at]!;
  }
  if (drain.toWaste) drain.lost += heat;
  else drain.moved += heat;
  circuit.nodeCapacity = drain.meanDry;
  for (let node = 0; node < pipe.length; node++) {
    const content = fullPipe[node]! - dryPipe[node]!;
    pipeCapacity[node] = dryPipe[node]!;
    // Indoors nothing drains, and the vessel holds less while the loop is full.
    if (content <= 0) continue;
    if (drain.toWaste) drain.pipeLost += content * pipe[node]!;
    heat += content * pipe[node]!;
    water += content;
  }
  if (vessel >= 0) {
    pipe[vessel] = (fullPipe[vessel]! * into + heat) / (fullPipe[vessel]! + water);
    drain.heatBack += heat - water * into;
  }
  circuit.pipeDecay = drain.dryDecay;
  circuit.boiling = false;
  drain.empty = true;
  drain.times++;
}

/** Fills them again, from the vessel or with fresh water [°C]; what flashes is lost. */
export function fillLoop(drain: Drain, circuit: Circuit, fresh: number): void {
  const { dry, dryPipe, full, fullPipe, parts, vessel } = drain;
  const { absorber, pipe, pipeCapacity } = circuit;
  const from = vessel < 0 ? fresh : pipe[vessel]!;
  let flashed = false;
  for (let at = 0; at < parts.length; at++) {
    const part = parts[at]!;
    const content = full[at]! - dry[at]!;
    for (let node = part.first; node < part.end; node++) {
      let mixed = (nodeHeat(circuit, absorber[node]!, part) + content * from) / full[at]!;
      if (mixed > BOILING) {
        drain.lost += full[at]! * (mixed - BOILING);
        mixed = BOILING;
        flashed = true;
      }
      absorber[node] = mixed;
    }
    const brought = content * from * (part.end - part.first);
    if (drain.toWaste) drain.lost -= brought;
    else drain.moved -= brought;
    part.nodeCapacity = full[at]!;
  }
  circuit.nodeCapacity = drain.meanFull;
  for (let node = 0; node < pipe.length; node++) {
    const content = fullPipe[node]! - dryPipe[node]!;
    pipeCapacity[node] = fullPipe[node]!;
    if (content <= 0) continue;
    pipe[node] = (dryPipe[node]! * pipe[node]! + content * from) / fullPipe[node]!;
    if (drain.toWaste) drain.pipeLost -= content * from;
  }
  circuit.pipeDecay = drain.fullDecay;
  drain.empty = false;
  if (flashed) drain.flashes++;
}

/** Adds to what a step exchanged what emptying and filling did in it. */
export function takeDrained(drain: Drain, exchange: LoopExchange): void {
  exchange.collectorHeat += drain.moved;
  exchange.collectorLoss += drain.lost;
  exchange.pipeLoss += drain.pipeLost;
  drain.moved = 0;
  drain.lost = 0;
  drain.pipeLost = 0;
}
