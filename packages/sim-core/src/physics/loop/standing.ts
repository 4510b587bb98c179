import { decayOf, meanDecay } from '../relaxation.ts';
import type { Tank } from '../tank/tank.ts';
import { boilNode, isBoiling } from './boil.ts';
import { setConditions } from './branches.ts';
import {
  type Absorbing,
  type Branch,
  type Circuit,
  type Coil,
  isIndoors,
  type LoopExchange,
  type StepConditions,
  sourceAt,
} from './circuit-state.ts';

/**
 * One step with the fluid standing: each collector node and pipe section follows its own balance. Allocates nothing; exact but for the
 * quadratic loss, which goes along the line between start and end of the step. The coil is left to {@link restCoil}.
 *
 * @param circuit - Changed in place: absorber, pipe.
 * @param stepsPerHour - One of those that the circuit was compiled for.
 * @param exchange - Written.
 */
export function standStill(
  circuit: Circuit,
  stepsPerHour: number,
  conditions: StepConditions,
  exchange: LoopExchange,
): void {
  const { ambient, duration } = conditions;
  const absorbed = conditions.absorbed * circuit.nodeArea * circuit.absorber.length;
  exchange.absorbed = absorbed * duration;
  const { branches } = circuit;
  const beyondLight =
    branches === null ? standingLoss(circuit, circuit, conditions) : lossOfBranches(circuit, branches, conditions);
  exchange.collectorLoss = (absorbed + beyondLight) * duration;
  exchange.collectorHeat = 0;

  const { pipe, pipeCapacity } = circuit;
  const decays = circuit.pipeDecay.get(stepsPerHour)!;
  let pipeLoss = 0;
  for (let at = 0; at < pipe.length; at++) {
    const around = isIndoors(at, pipe.length) ? conditions.room : ambient;
    const over = pipe[at]! - around;
    const left = over * decays[at]!;
    pipe[at] = around + left;
    pipeLoss += (over - left) * pipeCapacity[at]!;
  }
  exchange.pipeLoss = pipeLoss;
  exchange.coilHeat = 0;
}

function lossOfBranches(circuit: Circuit, branches: readonly Branch[], conditions: StepConditions): number {
  setConditions(branches, conditions);
  let lost = 0;
  for (const branch of branches) lost += standingLoss(circuit, branch, branch.conditions);
  return lost;
}

/** What the nodes of an array or group lose beyond the light that they absorb. [W] */
function standingLoss(circuit: Circuit, of: Absorbing, conditions: StepConditions): number {
  const { absorber } = circuit;
  const { end: last, first, nodeArea, nodeCapacity, a1, a2 } = of;
  const { ambient, duration } = conditions;
  let lost = 0;
  for (let node = first; node < last; node++) {
    const start = absorber[node]!;
    // First about the start; then along the line from there to where that ends.
    const tangent = nodeArea * (a1 + 2 * a2 * Math.abs(start - ambient));
    const towards = sourceAt(of, start, tangent, conditions) / tangent;
    const foreseen = towards + (start - towards) * decayOf((tangent * duration) / nodeCapacity);
    const slope = nodeArea * (a1 + a2 * (Math.abs(start - ambient) + Math.abs(foreseen - ambient)));
    const limit = sourceAt(of, start, slope, conditions) / slope;
    const exponent = (slope * duration) / nodeCapacity;
    const decay = decayOf(exponent);
    const end = limit + (start - limit) * decay;
    if (isBoiling(circuit, Math.max(start, end))) {
      lost += boilNode(circuit, node, limit, slope, duration) / duration;
      continue;
    }
    absorber[node] = end;
    lost += slope * (start - limit) * meanDecay(exponent, decay);
  }
  return lost;
}

/**
 * Lets the standing coil's content go to the water around it, as the tank's step has left it, piece by piece: two bodies and a conductance, the
 * tube's the smaller by far,
 *
 *     Q = (T_c − T_w) C_c C_w/(C_c + C_w) (1 − e^(−x (1 + r))),   x = UA Δt/C_c, r = C_c/C_w, e^(−x r) ≈ 1/(1 + x r)
 *
 * Allocates nothing.
 *
 * @param coil - Its content is changed in place.
 * @param water - Likewise; it is left to turn over.
 * @param duration - Length of the step. [s]
 * @returns What the water got; 0 of a plate exchanger's, which does not exchange at rest. [J]
 */
export function restCoil(coil: Coil, water: Pick<Tank, 'nodeCapacity' | 'temperature'>, duration: number): number {
  const { bottom, rest, standing } = coil;
  const content = coil.temperature;
  const { nodeCapacity, temperature } = water;
  if (standing === 0) return 0;
  if (coil.passed) layContent(coil, temperature);
  if (rest.duration !== duration) prepareRest(coil, nodeCapacity, duration);
  const { fall: fallShare, ratio } = rest;
  let sum = 0;
  for (let piece = 0; piece < content.length; piece++) {
    const fall = (content[piece]! - temperature[bottom + piece]!) * fallShare[piece]!;
    const rise = fall * ratio[piece]!;
    content[piece]! -= fall;
    temperature[bottom + piece]! += rise;
    sum += rise;
  }
  return sum * nodeCapacity;
}

/**
 * Lays a coil's content along the tube once the fluid stands: the mean that the flow left, and the slope of the water around it as far as that leaves
 * no piece hotter than the mean and all that water, nor colder. In a former profile of its own it would be just that, once draw and turnover have
 * made the tank even.
 *
 * @param water - Of the tank that the coil stands in. Shape [nodes]. [°C]
 */
export function layContent(coil: Coil, water: Float64Array): void {
  const { bottom, contentShare, mean, temperature: content } = coil;
  let beside = 0;
  for (let piece = 0; piece < content.length; piece++) beside += contentShare[piece]! * water[bottom + piece]!;
  const lowest = water[bottom]!;
  const highest = water[bottom + content.length - 1]!;
  let follows = 0;
  if (lowest < beside && beside < highest && lowest < mean && mean < highest)
    follows = Math.min(1, (highest - mean) / (highest - beside), (mean - lowest) / (beside - lowest));
  for (let piece = 0; piece < content.length; piece++)
    content[piece] = mean + follows * (water[bottom + piece]! - beside);
  coil.passed = false;
}

/** Works out what {@link restCoil} needs of a step's length. */
function prepareRest({ capacity, contentShare, rest, standing }: Coil, nodeCapacity: number, duration: number): void {
  const x = (standing * duration) / capacity;
  const kept = Math.exp(-x);
  rest.duration = duration;
  for (let piece = 0; piece < contentShare.length; piece++) {
    const ratio = (capacity * contentShare[piece]!) / nodeCapacity;
    rest.ratio[piece] = ratio;
    rest.fall[piece] = (1 - kept / (1 + x * ratio)) / (1 + ratio);
  }
}
