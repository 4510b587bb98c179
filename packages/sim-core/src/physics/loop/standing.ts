import { meanDecay } from '../relaxation.ts';
import type { Tank } from '../tank/tank.ts';
import { boilNode } from './boil.ts';
import { CIRCUIT, type Circuit, isIndoors, type StepConditions, sourceAt } from './circuit-state.ts';

/** A coil's content no further from its water exchanges nothing. [K] */
const AT_REST = 0.01;

/**
 * One step with the fluid standing: each collector node and pipe section follows its own balance. Allocates nothing; exact but for the
 * quadratic loss, which goes along the line between start and end of the step. The coil is left to {@link restCoil}.
 *
 * @param circuit - Changed in place: absorber, pipe, flows.
 * @param stepsPerHour - One of those that the circuit was compiled for.
 */
export function standStill(circuit: Circuit, stepsPerHour: number, conditions: StepConditions): void {
  const { flows } = circuit;
  const { ambient, duration } = conditions;
  const light = conditions.absorbed * circuit.nodeArea * circuit.absorber.length;
  flows[CIRCUIT.absorbed] = light * duration;
  flows[CIRCUIT.collectorLoss] = (light + standingLoss(circuit, conditions)) * duration;
  flows[CIRCUIT.collectorHeat] = 0;

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
  flows[CIRCUIT.pipeLoss] = pipeLoss;
  flows[CIRCUIT.coilHeat] = 0;
  circuit.flowed = false;
}

/** What the array's nodes lose beyond the light that they absorb. [W] */
function standingLoss(circuit: Circuit, conditions: StepConditions): number {
  const { absorber, absorberCapacity, boilingPoint, nodeArea, a1, a2 } = circuit;
  const { ambient, duration } = conditions;
  let lost = 0;
  for (let node = 0; node < absorber.length; node++) {
    const start = absorber[node]!;
    // First about the start; then along the line from there to where that ends.
    const tangent = nodeArea * (a1 + 2 * a2 * Math.abs(start - ambient));
    const towards = sourceAt(circuit, start, tangent, conditions) / tangent;
    const foreseen = towards + (start - towards) * Math.exp((-tangent * duration) / absorberCapacity);
    const slope = nodeArea * (a1 + a2 * (Math.abs(start - ambient) + Math.abs(foreseen - ambient)));
    const limit = sourceAt(circuit, start, slope, conditions) / slope;
    const exponent = (slope * duration) / absorberCapacity;
    const decay = Math.exp(-exponent);
    const end = limit + (start - limit) * decay;
    if (start > boilingPoint || end > boilingPoint) {
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
 * @param circuit - Changed in place: coil, flows; `coilRise` says what the tank nodes are to rise by.
 * @param duration - Length of the step. [s]
 * @returns Whether anything passed.
 */
export function restCoil(
  circuit: Circuit,
  water: Pick<Tank, 'nodeCapacity' | 'temperature'>,
  duration: number,
): boolean {
  const { coil, coilBottom, coilCapacity, coilRise, coilShare, coilStanding } = circuit;
  const { nodeCapacity, temperature } = water;
  let furthest = 0;
  let whole = 0;
  for (let piece = 0; piece < coil.length; piece++) {
    furthest = Math.max(furthest, Math.abs(coil[piece]! - temperature[coilBottom + piece]!));
    whole += coilShare[piece]!;
  }
  if (coilStanding === 0 || furthest < AT_REST) return false;
  const x = (coilStanding * duration) / coilCapacity;
  const kept = Math.exp(-x);
  let heat = 0;
  for (let piece = 0; piece < coil.length; piece++) {
    const ratio = (coilCapacity * coilShare[piece]!) / (whole * nodeCapacity);
    const over = coil[piece]! - temperature[coilBottom + piece]!;
    const rise = (over * (1 - kept / (1 + x * ratio)) * ratio) / (1 + ratio);
    coil[piece]! -= rise / ratio;
    coilRise[coilBottom + piece] = rise;
    heat += rise * nodeCapacity;
  }
  circuit.flows[CIRCUIT.coilHeat] = heat;
  return true;
}
