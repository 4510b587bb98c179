/**
 * Flow by buoyancy through the loop for one step, in balance with the temperatures that it makes:
 *
 *     −g Σ ρ(T_i) Δz_i = R(Q),   T_i the means over the step with the flow Q
 *
 * With the drive of the step's start instead, a hot absorber's fluid would go round many times before the step ends. Allocates nothing.
 */
import { fluidDensity, fluidSpecificHeat, fluidViscosity } from '../fluid/compile.ts';
import { meanFluidTemperature, takeLoop } from './circuit.ts';
import type { Circuit, LoopStep } from './circuit-state.ts';
import { solveLoop } from './coil-step.ts';
import { loopHead } from './hydraulics.ts';
import { GRAVITY } from './pump.ts';
import { NUMBERS, RING } from './ring.ts';
import { LEAST_FLOW } from './thermosiphon.ts';
import type { Thermosiphon } from './thermosiphon-design.ts';

const { inlet: INLET, rise: RISE } = RING;
/** Share of the friction to which drive and friction agree. [-] */
const CLOSE = 1e-3;
/** Relative width of the bracket below which the sort of exchange jumps within it, and either end will do. [-] */
const NARROW = 1e-6;
/** Trials of one direction at most. */
const MOST_TRIALS = 60;

/**
 * One step without the pump: finds the flow, forwards or backwards, and takes it.
 *
 * @param circuit - Changed in place as by `circulate`; as it was where nothing flows.
 * @returns Volume flow, negative backwards; 0 where nothing flows. [m³/s]
 */
export function siphonStep(siphon: Thermosiphon, circuit: Circuit, step: LoopStep): number {
  const { mirror } = siphon;
  // Once it runs one way it is looked for that way first.
  const first = siphon.flow < 0 ? -1 : 1;
  for (let turn = 0; turn < 2; turn++) {
    const direction = turn === 0 ? first : -first;
    const along = direction > 0 ? circuit : mirror;
    if (direction < 0) reverse(circuit, mirror);
    const guess = direction === Math.sign(siphon.flow) ? Math.abs(siphon.flow) : 0;
    const flow = settleFlow(siphon, along, step, guess);
    if (flow === 0) continue;
    takeLoop(along, step.stream.capacityRate, step.conditions, step.exchange);
    if (direction < 0) reverse(mirror, circuit);
    siphon.flow = direction * flow;
    return siphon.flow;
  }
  siphon.flow = 0;
  return 0;
}

/**
 * Flow in one direction at which drive and friction agree, by false position with the Illinois rule; the ring of `along` then holds its step.
 *
 * @param guess - Where to look first; 0 where nothing is known.
 * @returns 0 where nothing flows that way. [m³/s]
 */
function settleFlow(siphon: Thermosiphon, along: Circuit, step: LoopStep, guess: number): number {
  let low = 0;
  let high = Number.POSITIVE_INFINITY;
  let above = 0;
  let below = 0;
  let side = 0;
  let flow = guess > 0 ? guess : LEAST_FLOW;
  for (let trial = 1; trial <= MOST_TRIALS; trial++) {
    const more = excess(siphon, along, step, flow);
    if (Math.abs(more) <= CLOSE * flow) return flow;
    if (more > 0) {
      low = flow;
      above = more;
      if (side > 0) below /= 2;
      side = 1;
    } else {
      if (flow <= LEAST_FLOW) return 0;
      high = flow;
      below = more;
      if (side < 0) above /= 2;
      side = -1;
    }
    if (high - low < NARROW * high) break;
    if (high === Number.POSITIVE_INFINITY) flow = guess > 0 ? 2 * low : Math.max(0.5 * above, 2 * low);
    else if (low === 0) flow = LEAST_FLOW;
    // Every third step halves the bracket, so that it ends however crooked the balance is.
    else flow = trial % 3 === 0 ? 0.5 * (low + high) : low + (above * (high - low)) / (above - below);
  }
  return flow;
}

/**
 * How much faster the drive would push the fluid than `flow`, were friction in proportion to it: 0 where both agree. [m³/s]
 *
 * The step is solved with that flow; its means weigh the columns and thin the fluid.
 */
function excess(siphon: Thermosiphon, along: Circuit, step: LoopStep, flow: number): number {
  const { hydraulics } = siphon;
  const { stream } = step;
  const { fluid } = hydraulics;
  const start = meanFluidTemperature(along);
  stream.flow = flow;
  stream.capacityRate = flow * fluidDensity(fluid, start) * fluidSpecificHeat(fluid, start);
  solveLoop(along, step);
  const mean = solvedMean(along);
  const density = fluidDensity(fluid, mean);
  const friction = loopHead(hydraulics, flow, density, fluidViscosity(fluid, mean)) * density * GRAVITY;
  return flow * (drive(siphon, along) / friction - 1);
}

/** Pressure by which the solved step's means drive the fluid along the circuit. [Pa] */
function drive({ hydraulics, rises }: Thermosiphon, along: Circuit): number {
  const { absorber, coil, coilAt, pipe, pipeAt, ring, upwards } = along;
  const { fluid } = hydraulics;
  let weight = 0;
  for (let node = 0; node < absorber.length; node++) {
    weight += rises.collector * fluidDensity(fluid, absorber[node]! + ring[node * NUMBERS + RISE]!);
  }
  for (let node = 0; node < pipe.length; node++) {
    // The mirror has its nodes in the order of its own flow.
    const rise = rises.pipe[upwards ? pipe.length - 1 - node : node]!;
    weight += rise * fluidDensity(fluid, pipe[node]! + ring[pipeAt[node]! + RISE]!);
  }
  for (let piece = 0; piece < coil.share.length; piece++) {
    const at = coilAt[piece]!;
    const fluidHere = 0.5 * (ring[at + INLET]! + ring[at + NUMBERS + INLET]!);
    weight += rises.coil * coil.share[piece]! * fluidDensity(fluid, fluidHere);
  }
  return upwards ? GRAVITY * weight : -GRAVITY * weight;
}

/** Mean of array and pipes in the solved step, as {@link meanFluidTemperature} weighs them. [°C] */
function solvedMean(along: Circuit): number {
  const { absorber, pipe, pipeAt, ring } = along;
  let inArray = 0;
  for (let node = 0; node < absorber.length; node++) inArray += ring[(node + 1) * NUMBERS + INLET]!;
  let inPipes = 0;
  for (let node = 0; node < pipe.length; node++) inPipes += ring[pipeAt[node]! + NUMBERS + INLET]!;
  return 0.5 * (inArray / absorber.length) + 0.5 * (inPipes / pipe.length);
}

/** Copies one circuit's state into another that sees it against the flow. */
function reverse(from: Circuit, to: Circuit): void {
  const nodes = from.absorber.length - 1;
  for (let node = 0; node <= nodes; node++) to.absorber[node] = from.absorber[nodes - node]!;
  const last = from.pipe.length - 1;
  for (let node = 0; node <= last; node++) to.pipe[node] = from.pipe[last - node]!;
  to.a1 = from.a1;
}
