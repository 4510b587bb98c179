import type { ArrayDesign, SystemDesign } from '../../design/design.ts';
import { type CompiledFluid, fluidDensity, fluidSpecificHeat } from '../fluid/compile.ts';
import { coilInWater } from '../tank/sediment.ts';
import { nodeHeat } from './boil.ts';
import { compileBranches } from './branches.ts';
import { circuitRing } from './circuit.ts';
import {
  type Absorbing,
  type Branch,
  type Circuit,
  type Coil,
  coilTemperature,
  emptyRest,
  isIndoors,
  PIPE_SECTIONS,
} from './circuit-state.ts';
import { coilUA, compileCoil } from './coil.ts';
import { secondInPlace } from './coils.ts';
import { pipeLossConductance } from './pipe.ts';

/** Copper: density times specific heat, handbook; steel's is 5 % more. [J/(m³·K)] */
const COPPER_HEAT_CAPACITY = 8930 * 385;
/** Fluid temperature at which the standing heat capacity of pipes and coil is taken; it hardly moves. [°C] */
const PIPE_REFERENCE = 40;
/** Standing coil and the water around it, at which its conductance is taken; judgement. [°C] */
const STANDING_COIL = 45;
const STANDING_WATER = 40;
/** Keeps the arithmetic finite where a section has no length. [J/K] */
const SMALLEST_CAPACITY = 1;

/** How finely a circuit is cut. */
interface CircuitGrid {
  /** Every number of steps an hour that the run may use. */
  readonly stepCounts: readonly number[];
  /** Nodes of the array along the flow; its further groups have as many a panel. */
  readonly collectorNodes: number;
  /** Nodes of each of the four pipe sections; 1 by default. */
  readonly pipeNodes?: number;
}

/**
 * Prepares the collector circuit.
 *
 * @param design - The system.
 * @param fluid - Its fluid.
 * @param start - Temperature of absorber and pipes at the start. [°C]
 * @param grid - How finely it is cut.
 */
export function compileCircuit(design: SystemDesign, fluid: CompiledFluid, start: number, grid: CircuitGrid): Circuit {
  const { tank } = design;
  const { second } = tank;
  const { collectorNodes, pipeNodes = 1, stepCounts } = grid;
  const collectors = compileCollectors(design.array, collectorNodes, start);
  const pipe = pipeNodesOf(design, fluid, pipeNodes);
  const coil = compileCoilOf(design, fluid);
  const isPair = second?.charging === 'series' || second?.charging === 'in-turn';
  const further = isPair ? compileCoilOf(secondInPlace(design, second), fluid) : null;
  const own = {
    absorber: new Float64Array(collectors.end).fill(start),
    pipe: pipe.capacity.map((_, at) => (isIndoors(at, pipe.capacity.length) ? tank.roomTemperature : start)),
    coil,
    pipeCapacity: pipe.capacity,
    pipeConductance: pipe.conductance,
    pipeDecay: pipeDecays(pipe.capacity, pipe.conductance, stepCounts),
  };
  return makeCircuit(collectors, own, false, further);
}

type Collectors = Absorbing & Pick<Circuit, 'branches'>;

/**
 * Writes a circuit down field by field: objects put together of others differ inside the engine from one to the next, which would compile the year
 * loop anew for each.
 */
function makeCircuit(
  collectors: Collectors,
  own: Pick<Circuit, 'absorber' | 'coil' | 'pipe' | 'pipeCapacity' | 'pipeConductance' | 'pipeDecay'>,
  upwards: boolean,
  further: Coil | null = null,
): Circuit {
  const { first, end, nodeArea, nodeCapacity, dryCapacity, a1, a2, branches } = collectors;
  const { absorber, pipe, pipeCapacity, pipeConductance, pipeDecay } = own;
  const pieces = further === null ? [own.coil.share.length] : [own.coil.share.length, further.share.length];
  const { ring, pipeAt, pipeLike, coils } = circuitRing(end, pieces, pipeCapacity, pipeConductance, upwards);
  const seenBy = (coil: Coil, at: number, behind: Circuit | null): Circuit => ({
    first,
    end,
    nodeArea,
    nodeCapacity,
    dryCapacity,
    a1,
    a2,
    branches,
    absorber,
    pipe,
    coil,
    boilingPoint: Number.POSITIVE_INFINITY,
    vapourPressure: 0,
    boiling: false,
    pipeCapacity,
    pipeConductance,
    pipeDecay,
    upwards,
    ring,
    pipeAt,
    pipeLike,
    coilAt: coils[at]!.coilAt,
    contentAt: coils[at]!.contentAt,
    further: behind,
  });
  return seenBy(own.coil, 0, further === null ? null : seenBy(further, 1, null));
}

/** Decay of each standing pipe node in one step, by the steps of an hour. */
export const pipeDecays = (
  capacities: Float64Array,
  conductance: Float64Array,
  stepCounts: readonly number[],
): ReadonlyMap<number, Float64Array> =>
  new Map(
    stepCounts.map((count): [number, Float64Array] => [
      count,
      capacities.map((capacity, at) => Math.exp((-conductance[at]! * 3600) / (count * capacity))),
    ]),
  );

/** The array as one, and its groups where there are several: then the numbers of the whole are means. */
function compileCollectors(array: ArrayDesign, nodes: number, start: number): Collectors {
  const { collector, inSeries, panels } = array;
  const branches = compileBranches(array, nodes / inSeries, start);
  const { a1, a2 } = collector;
  if (branches === null) {
    const nodeArea = (panels * collector.area) / nodes;
    const nodeCapacity = collector.heatCapacity * nodeArea;
    const dryCapacity = nodeCapacity * collector.dryCapacityShare;
    return { first: 0, end: nodes, nodeArea, nodeCapacity, dryCapacity, a1, a2, branches };
  }
  const end = branches[branches.length - 1]!.end;
  const mean = (of: (branch: Branch) => number) =>
    branches.reduce((sum, branch) => sum + ((branch.end - branch.first) / end) * of(branch), 0);
  return {
    first: 0,
    end,
    nodeArea: mean((branch) => branch.nodeArea),
    nodeCapacity: mean((branch) => branch.nodeCapacity),
    dryCapacity: mean((branch) => branch.dryCapacity),
    a1,
    a2,
    branches,
  };
}

/** A circuit as the fluid sees it that runs backwards: with nodes and a ring of its own, and the same coil. */
export const mirrorOf = (circuit: Circuit): Circuit =>
  makeCircuit(
    circuit,
    {
      absorber: circuit.absorber.slice(),
      pipe: circuit.pipe.slice(),
      coil: circuit.coil,
      pipeCapacity: circuit.pipeCapacity,
      pipeConductance: circuit.pipeConductance,
      pipeDecay: circuit.pipeDecay,
    },
    true,
  );

/** Heat capacity and conductance of the nodes of the pipe, hot outdoors first. */
function pipeNodesOf(design: SystemDesign, fluid: CompiledFluid, perSection: number) {
  const { loop } = design;
  const bore = (Math.PI / 4) * loop.pipeInnerDiameter ** 2;
  const metal = (Math.PI / 4) * loop.pipeOuterDiameter ** 2 - bore;
  const fluidCapacity = fluidDensity(fluid, PIPE_REFERENCE) * fluidSpecificHeat(fluid, PIPE_REFERENCE);
  const perMetre = {
    capacity: bore * fluidCapacity + metal * COPPER_HEAT_CAPACITY,
    conductance: pipeLossConductance(loop),
  };
  const outdoors = (loop.pipeLength / 2) * loop.outdoorShare;
  const indoors = loop.pipeLength / 2 - outdoors;
  const pipeNodes = PIPE_SECTIONS * perSection;
  const lengths = Float64Array.from(
    { length: pipeNodes },
    (_, at) => (isIndoors(at, pipeNodes) ? indoors : outdoors) / perSection,
  );
  return {
    capacity: lengths.map((length) => Math.max(length * perMetre.capacity, SMALLEST_CAPACITY)),
    conductance: lengths.map((length) => length * perMetre.conductance),
  };
}

/** The coil at the tank's temperature; a plate exchanger's content and its exchange at rest are left out. */
function compileCoilOf(design: SystemDesign, fluid: CompiledFluid): Coil {
  const { loop, tank } = design;
  const { bottom, shares } = coilInWater(design);
  const whole = shares.reduce((sum, share) => sum + share, 0);
  const films = loop.exchanger === 'plate' ? null : compileCoil(design.coil, fluid);
  return {
    temperature: new Float64Array(shares.length).fill(tank.initialTemperature),
    mean: tank.initialTemperature,
    passed: false,
    capacity: films === null ? SMALLEST_CAPACITY : coilContent(design, fluid),
    bottom,
    share: shares,
    contentShare: shares.map((share) => share / whole),
    standing: films === null ? 0 : coilUA(films, 0, STANDING_COIL, STANDING_WATER),
    rest: emptyRest(shares.length),
    films,
    open: true,
    surface: 0.5,
  };
}

/** Heat capacity of the coil's fluid and metal. [J/K] */
function coilContent({ coil }: SystemDesign, fluid: CompiledFluid): number {
  const bore = (Math.PI / 4) * coil.innerDiameter ** 2;
  const metal = (Math.PI / 4) * coil.outerDiameter ** 2 - bore;
  const fluidCapacity = fluidDensity(fluid, PIPE_REFERENCE) * fluidSpecificHeat(fluid, PIPE_REFERENCE);
  return coil.length * (bore * fluidCapacity + metal * COPPER_HEAT_CAPACITY);
}

/** Heat in the absorber above 0 °C. [J] */
export function absorberHeat(circuit: Circuit): number {
  if (circuit.branches === null) return heatOf(circuit, circuit);
  let sum = 0;
  for (const branch of circuit.branches) sum += heatOf(circuit, branch);
  return sum;
}

function heatOf(circuit: Circuit, of: Absorbing): number {
  let sum = 0;
  for (let node = of.first; node < of.end; node++) sum += nodeHeat(circuit, circuit.absorber[node]!, of);
  return sum;
}

/** Heat in the pipes and the coils above 0 °C. [J] */
export function pipeHeat(circuit: Circuit): number {
  let sum = coilTemperature(circuit.coil) * circuit.coil.capacity;
  if (circuit.further !== null) sum += coilTemperature(circuit.further.coil) * circuit.further.coil.capacity;
  for (let at = 0; at < circuit.pipe.length; at++) sum += circuit.pipe[at]! * circuit.pipeCapacity[at]!;
  return sum;
}
