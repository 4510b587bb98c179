/** Factors of the implicit conduction step for one step length; made by {@link conductionFactors}. */
export interface ConductionFactors {
  /** Share of the step's end in the profile that conducts. [-] */
  readonly implicit: number;
  /** Number of that share of one step of conduction between neighbours: implicit × k Δt/(ρc Δz²). [-] */
  readonly ratio: number;
  /** Upper diagonal after elimination. Shape [nodes]. */
  readonly upper: Float64Array;
  /** Reciprocal pivots. Shape [nodes]. */
  readonly pivot: Float64Array;
  /** Scratch: change by elimination. Shape [nodes]. */
  readonly carried: Float64Array;
}

/**
 * Eliminates the conduction matrix once for a step length.
 *
 * The profile that conducts is half of the step's start and half of its end (Crank & Nicolson 1947), or as much more of the end
 * as keeps a long step free of overshoot.
 *
 * @param diffusivity - Vertical, water and wall together. [m²/s]
 * @param spacing - Height of one node. [m]
 * @param duration - Length of the step. [s]
 * @param nodes - Number of equal nodes.
 */
export function conductionFactors(
  diffusivity: number,
  spacing: number,
  duration: number,
  nodes: number,
): ConductionFactors {
  const wholeStep = (diffusivity * duration) / spacing ** 2;
  const implicit = Math.max(0.5, 1 - 0.5 / wholeStep);
  const ratio = implicit * wholeStep;
  const upper = new Float64Array(nodes);
  const pivot = new Float64Array(nodes);
  for (let node = 0; node < nodes; node++) {
    const neighbours = (node > 0 ? 1 : 0) + (node < nodes - 1 ? 1 : 0);
    const eliminated = node > 0 ? ratio * upper[node - 1]! : 0;
    pivot[node] = 1 / (1 + neighbours * ratio - eliminated);
    upper[node] = node < nodes - 1 ? ratio * pivot[node]! : 0;
  }
  return { implicit, ratio, upper, pivot, carried: new Float64Array(nodes) };
}

/**
 * Conducts heat along the column for one step, floor and lid adiabatic. Allocates nothing.
 *
 *     ∂T/∂t = a ∂²T/∂z²
 *
 * Crank and Nicolson's rule, in long steps nearer to backward Euler: stable and free of overshoot for any step; the sum of the
 * nodes is kept to rounding.
 *
 * @param temperature - Nodes, bottom first; changed in place. Shape [nodes]. [°C]
 * @param factors - From {@link conductionFactors}, for this step length.
 */
export function conduct(temperature: Float64Array, factors: ConductionFactors): void {
  const { carried, pivot, ratio, upper } = factors;
  const top = temperature.length - 1;
  // Solved for the change and not for the profile: then rounding is that of small differences, and hours of many steps in which
  // nothing flows keep the heat to the last bits.
  let below = temperature[0]!;
  let change = 0;
  for (let node = 0; node <= top; node++) {
    const here = temperature[node]!;
    const above = node < top ? temperature[node + 1]! : here;
    change = ratio * (above - here - (here - below) + change) * pivot[node]!;
    carried[node] = change;
    below = here;
  }
  const whole = 1 / factors.implicit;
  change = 0;
  for (let node = top; node >= 0; node--) {
    change = carried[node]! + upper[node]! * change;
    temperature[node]! += whole * change;
  }
}

/** Conduction number up to which {@link coolInOnePass} stands for {@link conduct}: there its shortest wave decays to 0.680, in truth to 0.670. [-] */
export const ONE_PASS_AT_MOST = 0.1;

/**
 * Losses to the room and conduction of one short step in a single pass, of the second order like {@link conduct}. Allocates nothing.
 *
 *     ΔT = −(T − T_room)(1 − e^(−UA Δt/C)) + r δ²T + ½ r² δ⁴T
 *
 * with both from the profile at the step's start. Conduction is written as a flow between neighbours: the nodes lose together what
 * the room gains.
 *
 * @param temperature - Nodes, bottom first; changed in place. Shape [nodes]. [°C]
 * @param pass - Its length, as {@link coolHalfway} has it.
 * @param room - Air around the tank. [°C]
 * @returns Sum of the falls of the nodes by loss. [K]
 */
export function coolInOnePass(temperature: Float64Array, { lossShare, ratio }: OnePass, room: number): number {
  const top = temperature.length - 1;
  const halfSquare = 0.5 * ratio * ratio;
  let fallen = 0;
  let fromBelow = 0;
  let here = temperature[0]!;
  let above = top > 0 ? temperature[1]! : here;
  let bend = above - here; // δ²T here; no heat passes floor or lid
  let share = lossShare[0]!;
  const inner = top > 0 ? lossShare[1]! : share;
  for (let node = 0; node < top; node++) {
    const next = node + 2 <= top ? temperature[node + 2]! : above;
    const slope = above - here;
    const bendAbove = next - above - slope;
    const fromAbove = ratio * slope + halfSquare * (bendAbove - bend);
    const fall = (here - room) * share;
    share = inner;
    fallen += fall;
    temperature[node] = here - fall + (fromAbove - fromBelow);
    fromBelow = fromAbove;
    bend = bendAbove;
    here = above;
    above = next;
  }
  const fall = (here - room) * lossShare[top]!;
  temperature[top] = here - fall - fromBelow;
  return fallen + fall;
}

/** What a pass of some length needs. */
interface OnePass {
  /** Share of its excess over the room that each node loses, 1 − e^(−UA Δt/C): one for all but the lowest and the highest. Shape [nodes]. [-] */
  readonly lossShare: Float64Array;
  /** r, conduction number k Δt/(ρc Δz²), at most {@link ONE_PASS_AT_MOST}. [-] */
  readonly ratio: number;
  /** 1 over the length. [1/s] */
  readonly perSecond: number;
}

/** Nodes of a tank that its coil has just warmed. */
interface WarmedNodes {
  /** With the coil's heat in, not yet turned over; changed in place. Shape [nodes]. [°C] */
  readonly temperature: Float64Array;
  /** {@link temperature} turned over. Shape [nodes]. [°C] */
  readonly middle: Float64Array;
  /** Receives how fast losses and conduction changed each node. Shape [nodes]. [K/s] */
  readonly drift: Float64Array;
  /** Air around the tank. [°C] */
  readonly room: number;
}

/**
 * {@link coolInOnePass} for a tank that the coil warmed in the same step: losses and conduction follow the profile halfway, and what they
 * change is laid upon the coil's heat. Allocates nothing.
 *
 * @param tank - Its nodes.
 * @param coilRise - What the coil added to each node. Shape [nodes]. [K]
 * @param pass - Its length.
 * @returns Sum of the falls of the nodes by loss. [K]
 */
export function coolHalfway(
  { temperature, middle: mixed, drift, room }: WarmedNodes,
  coilRise: Float64Array,
  { lossShare, perSecond, ratio }: OnePass,
): number {
  const top = temperature.length - 1;
  const halfSquare = 0.5 * ratio * ratio;
  let fallen = 0;
  let fromBelow = 0;
  // What a turn of the loop needs again is carried along: each look into an array costs more than a sum.
  let warmed = temperature[0]!;
  let warmedAbove = top > 0 ? temperature[1]! : warmed;
  let here = 0.5 * (warmed - coilRise[0]! + mixed[0]!);
  let above = top > 0 ? 0.5 * (warmedAbove - coilRise[1]! + mixed[1]!) : here;
  let bend = above - here;
  let share = lossShare[0]!;
  const inner = top > 0 ? lossShare[1]! : share;
  for (let node = 0; node < top; node++) {
    const ahead = node + 2;
    let next = above;
    let warmedNext = 0;
    if (ahead <= top) {
      warmedNext = temperature[ahead]!;
      next = 0.5 * (warmedNext - coilRise[ahead]! + mixed[ahead]!);
    }
    const slope = above - here;
    const bendAbove = next - above - slope;
    const fromAbove = ratio * slope + halfSquare * (bendAbove - bend);
    const fall = (here - room) * share;
    share = inner;
    fallen += fall;
    const change = fromAbove - fromBelow - fall;
    temperature[node] = warmed + change;
    drift[node] = change * perSecond;
    fromBelow = fromAbove;
    bend = bendAbove;
    here = above;
    above = next;
    warmed = warmedAbove;
    warmedAbove = warmedNext;
  }
  const fall = (here - room) * lossShare[top]!;
  const change = -fall - fromBelow;
  temperature[top] = warmed + change;
  drift[top] = change * perSecond;
  return fallen + fall;
}
