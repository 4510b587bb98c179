import { Outcome, Solver } from 'odex';

/** What the equations need to know of a system; read off the compiled circuit and tank. */
export interface LoopParameters {
  /** Area of one collector node [m²], its heat capacity [J/K], and the loss coefficients of ISO 9806. */
  readonly nodeArea: number;
  readonly absorberCapacity: number;
  readonly a1: number;
  readonly a2: number;
  readonly collectorNodes: number;
  /** Pipe sections in the order of the flow, in four equal groups: hot outdoors, hot indoors, cold indoors, cold outdoors. [J/K], [W/K] */
  readonly pipeCapacity: readonly number[];
  readonly pipeConductance: readonly number[];
  /** Tank nodes, bottom first: capacity of one [J/K], loss of each [W/K], conductance between neighbours [W/K]. */
  readonly tankCapacity: number;
  readonly tankLoss: readonly number[];
  readonly tankConductance: number;
  readonly coilBottom: number;
  readonly coilShare: readonly number[];
  /** Fluid and metal of the coil [J/K], and its conductance at standstill [W/K]. */
  readonly coilCapacity: number;
  readonly coilStanding: number;
  readonly room: number;
}

/** What acts on the system, constant over a step. */
export interface LoopDrive {
  /** Heat capacity rate of the fluid; 0 with the pump off. [W/K] */
  readonly capacityRate: number;
  /** [W/K] */
  readonly coilConductance: number;
  /** Light turned into heat. [W/m²] */
  readonly absorbed: number;
  /** [°C] */
  readonly ambient: number;
}

/**
 * Time derivative of collector nodes, pipe sections, the coil's content piece by piece and tank nodes, in this order, written from the equations of
 * docs/theory/steps.md, loop.md and tank.md and from nothing in the packages. Without turnover.
 */
function derivative(p: LoopParameters, drive: LoopDrive, state: readonly number[]): number[] {
  const { capacityRate: w, absorbed, ambient } = drive;
  const nodes = p.collectorNodes;
  const sections = p.pipeCapacity.length;
  const pieces = p.coilShare.length;
  const content = nodes + sections;
  const firstWater = content + pieces;
  const rate = new Array<number>(state.length).fill(0);

  const pipe = (section: number, inlet: number): number => {
    const at = nodes + section;
    const here = state[at]!;
    const group = Math.trunc((4 * section) / sections);
    const around = group === 1 || group === 2 ? p.room : ambient;
    rate[at] = (w * (inlet - here) - p.pipeConductance[section]! * (here - around)) / p.pipeCapacity[section]!;
    return here;
  };

  // Array: the loss is taken at the mean of a node's inlet and outlet where fluid moves.
  let fluid = state[content - 1]!;
  for (let node = 0; node < nodes; node++) {
    const outlet = state[node]!;
    const excess = (w > 0 ? (fluid + outlet) / 2 : outlet) - ambient;
    const loss = p.a1 * excess + p.a2 * excess * Math.abs(excess);
    rate[node] = (w * (fluid - outlet) + p.nodeArea * (absorbed - loss)) / p.absorberCapacity;
    fluid = outlet;
  }
  for (let section = 0; section < sections / 2; section++) fluid = pipe(section, fluid);

  // Coil, warmest node first; its content is a stirred volume in its middle.
  let middle = 0;
  for (let piece = 0; piece < pieces; piece++) middle += p.coilShare[piece]! * state[content + piece]!;
  if (w > 0) {
    for (let piece = pieces - 1; piece >= 0; piece--) {
      if (pieces - 1 - piece === Math.trunc(pieces / 2)) {
        rate.fill((w * (fluid - middle)) / p.coilCapacity, content, firstWater);
        fluid = middle;
      }
      const at = firstWater + p.coilBottom + piece;
      const effectiveness = 1 - Math.exp((-drive.coilConductance * p.coilShare[piece]!) / w);
      const given = effectiveness * (fluid - state[at]!);
      rate[at]! += (w * given) / p.tankCapacity;
      fluid -= given;
    }
  } else {
    // Standing, each piece goes to the water around it.
    for (let piece = 0; piece < pieces; piece++) {
      const at = firstWater + p.coilBottom + piece;
      const apart = p.coilStanding * (state[content + piece]! - state[at]!);
      rate[content + piece] = -apart / p.coilCapacity;
      rate[at]! += (p.coilShare[piece]! * apart) / p.tankCapacity;
    }
  }
  for (let section = sections / 2; section < sections; section++) fluid = pipe(section, fluid);

  // Tank: loss to the room, conduction between neighbours.
  const top = state.length - 1;
  for (let at = firstWater; at <= top; at++) {
    rate[at]! -= (p.tankLoss[at - firstWater]! * (state[at]! - p.room)) / p.tankCapacity;
    if (at === top) break;
    const flow = (p.tankConductance * (state[at]! - state[at + 1]!)) / p.tankCapacity;
    rate[at]! -= flow;
    rate[at + 1]! += flow;
  }
  return rate;
}

/**
 * Where the fluid moves, the coil's content has one temperature that counts, its mean; what stands beside each piece of water when the fluid stops has the
 * slope of that water, by docs/theory/loop.md: no piece hotter than the mean and all that water, nor colder.
 */
function withSlopeOfWater(p: LoopParameters, state: readonly number[]): number[] {
  const content = p.collectorNodes + p.pipeCapacity.length;
  const firstWater = content + p.coilShare.length;
  const beside = p.coilShare.map((_, piece) => state[firstWater + p.coilBottom + piece]!);
  const meanOf = (values: readonly number[]) => values.reduce((sum, value, at) => sum + value * p.coilShare[at]!, 0);
  const middle = meanOf(state.slice(content, firstWater));
  const water = meanOf(beside);
  // Largest share of the slope that keeps every piece between the coldest and the warmest of mean and water.
  const low = Math.min(middle, ...beside);
  const high = Math.max(middle, ...beside);
  const limits = beside.map((value) => {
    if (value > water) return (high - middle) / (value - water);
    return value < water ? (middle - low) / (water - value) : 1;
  });
  const share = Math.max(0, Math.min(1, ...limits));
  const after = [...state];
  beside.forEach((value, piece) => {
    after[content + piece] = middle + share * (value - water);
  });
  return after;
}

/** A run of tank nodes that are one temperature and stay so: first index in the state and number of nodes. */
interface Layer {
  readonly first: number;
  readonly size: number;
}

/** Temperatures closer than this are one. [K] */
const SAME = 1e-9;
/** Longest stretch between looks at whether layers part. [s] */
const LOOK = 30;

const mean = (values: readonly number[], { first, size }: Layer): number => {
  let sum = 0;
  for (let at = first; at < first + size; at++) sum += values[at]!;
  return sum / size;
};

/** Gives every node of a layer the layer's mean. */
function level(values: number[], layers: readonly Layer[]): number[] {
  for (const layer of layers) values.fill(mean(values, layer), layer.first, layer.first + layer.size);
  return values;
}

/**
 * Layers of water that move as one, in the limit of a turnover that takes no time: neighbours of one temperature of which the
 * lower would rise faster than the upper.
 */
function layersOf(state: readonly number[], rate: readonly number[], firstWater: number): Layer[] {
  const layers: Layer[] = [];
  for (let at = firstWater; at < state.length; at++) {
    let layer: Layer = { first: at, size: 1 };
    for (let below = layers.at(-1); below !== undefined; below = layers.at(-1)) {
      const apart = state[at]! - state[at - 1]! > SAME && layer.first === at;
      if (apart || state[layer.first]! - state[layer.first - 1]! > SAME || mean(rate, below) < mean(rate, layer)) break;
      layers.pop();
      layer = { first: below.first, size: below.size + layer.size };
    }
    layers.push(layer);
  }
  return layers;
}

const upsideDown = (state: readonly number[], layers: readonly Layer[]): boolean =>
  layers.some(({ first, size }) => first + size < state.length && state[first]! > state[first + size]! + SAME);

/** Solves for a stretch with given layers, by odex with tolerance 1e-10. */
function solve(
  p: LoopParameters,
  drive: LoopDrive,
  state: number[],
  layers: readonly Layer[],
  duration: number,
): number[] {
  const solver = new Solver(state.length);
  solver.relativeTolerance = 1e-10;
  solver.absoluteTolerance = 1e-10;
  const { y, outcome } = solver.solve((_, at) => level(derivative(p, drive, at), layers), 0, state, duration);
  if (outcome !== Outcome.Converged) throw new Error(`the referee stopped with outcome ${outcome}`);
  return y;
}

/**
 * Carries a state through one step of constant drive. Where water would come to lie under colder water, the two become one
 * layer at the instant at which they meet, found by bisection to a microsecond.
 */
export function integrateStep(p: LoopParameters, drive: LoopDrive, start: number[], duration: number): number[] {
  const firstWater = p.collectorNodes + p.pipeCapacity.length + p.coilShare.length;
  let state = start;
  let left = duration;
  while (left > 1e-6) {
    const layers = layersOf(state, derivative(p, drive, state), firstWater);
    let reach = Math.min(left, LOOK);
    let next = solve(p, drive, state, layers, reach);
    if (upsideDown(next, layers)) {
      let before = 0;
      while (reach - before > 1e-6) {
        const middle = (before + reach) / 2;
        const there = solve(p, drive, state, layers, middle);
        if (upsideDown(there, layers)) {
          reach = middle;
          next = there;
        } else before = middle;
      }
      // What met is now one temperature, to rounding.
      level(
        next,
        layersOf(
          next,
          next.map((_, at) => -at),
          firstWater,
        ),
      );
    }
    state = next;
    left -= reach;
  }
  return drive.capacityRate > 0 ? withSlopeOfWater(p, state) : state;
}
