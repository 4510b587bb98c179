/**
 * Boiling in a standing collector. A node that passes the boiling point loses its liquid: from there it warms with the heat
 * capacity of the empty absorber, up to its dry stagnation temperature; cooled below, it fills again.
 *
 *     heat of a node   H = C T                       up to the boiling point T_b
 *                      H = C T_b + C_dry (T − T_b)   above
 *
 * The liquid waits in the vessel at T_b and comes back with it. Steam carries nothing to the tank; what it takes to evaporate the
 * little liquid that fills a collector with steam, some 3 kJ a panel, is left out. T_b is that at which the boiling began, until all nodes have
 * filled again. Where the pressure falls away over hot liquid (a loop that has let out its reserve and cools), it flashes: the metal keeps its
 * temperature, and what the liquid held above the new T_b goes with the steam and is counted as the array's loss. So is what would carry an
 * absorber that a flow has left past T_b beyond its stagnation temperature. Judgement throughout; that a loop with steam in it does not circulate is common
 * practice, no source.
 */
import { stagnationRise } from '../collector/efficiency.ts';
import { highest } from '../column.ts';
import { saturationTemperature } from '../fluid/boiling.ts';
import { meanDecay } from '../relaxation.ts';
import type { Absorbing, Circuit, LoopExchange, StepConditions } from './circuit-state.ts';
import type { LoopPressure } from './pressure-state.ts';

/** Below this boiling point the loop is taken as drawn empty by a vacuum, and stands for want of pressure. [°C] */
const LOWEST_BOILING_POINT = 80;

/** T_b, worked out only where it is asked for: in most steps no node comes near it. [°C] */
export function boilingPointOf(circuit: Circuit): number {
  if (circuit.vapourPressure > 0) {
    circuit.boilingPoint = Math.max(saturationTemperature(circuit.vapourPressure), LOWEST_BOILING_POINT);
    circuit.vapourPressure = 0;
  }
  return circuit.boilingPoint;
}

/** Whether a node of that temperature is above T_b. */
export const isBoiling = (circuit: Circuit, temperature: number): boolean =>
  temperature > LOWEST_BOILING_POINT && temperature > boilingPointOf(circuit);

/** Heat of one node above 0 °C. [J] */
export function nodeHeat(circuit: Circuit, temperature: number, of: Absorbing): number {
  const { dryCapacity, nodeCapacity } = of;
  if (!isBoiling(circuit, temperature)) return nodeCapacity * temperature;
  const { boilingPoint } = circuit;
  return nodeCapacity * boilingPoint + dryCapacity * (temperature - boilingPoint);
}

/**
 * One step of a standing node that boils in it, starts with steam, or fills. Exact for a constant `limit` and `slope`: each phase is
 * followed up to the moment at which the node passes T_b.
 *
 * @param circuit - Its node is changed in place.
 * @param limit - Temperature at which gain and loss balance. [°C]
 * @param slope - Of the loss. [W/K]
 * @param duration - Length of the step. [s]
 * @returns ∫ slope (T − limit) dt. [J]
 */
export function boilNode(circuit: Circuit, node: number, limit: number, slope: number, duration: number): number {
  const { absorber } = circuit;
  const boilingPoint = boilingPointOf(circuit);
  const { dryCapacity, nodeCapacity } = partOf(circuit, node);
  let temperature = absorber[node]!;
  let left = duration;
  let lost = 0;
  for (;;) {
    const dry = temperature > boilingPoint || (temperature === boilingPoint && limit > boilingPoint);
    const capacity = dry ? dryCapacity : nodeCapacity;
    const x = (slope * left) / capacity;
    const decay = Math.exp(-x);
    const end = limit + (temperature - limit) * decay;
    if (dry ? end >= boilingPoint : end <= boilingPoint) {
      absorber[node] = end;
      return lost + slope * (temperature - limit) * meanDecay(x, decay) * left;
    }
    // Never twice: from T_b the node moves away from where it came.
    left -= (capacity / slope) * Math.log((temperature - limit) / (boilingPoint - limit));
    lost += capacity * (temperature - boilingPoint);
    temperature = boilingPoint;
    if (left <= 0) {
      absorber[node] = temperature;
      return lost;
    }
  }
}

/** The group that a node belongs to; the circuit itself where it is one. */
function partOf(circuit: Circuit, node: number): Absorbing {
  if (circuit.branches !== null) for (const branch of circuit.branches) if (node < branch.end) return branch;
  return circuit;
}

/**
 * Settles after a step whether the collectors boil. Nodes that a flow has carried past T_b give their liquid's excess to the empty absorber, up to
 * where it would stand in the step's light; where none holds steam, the loop's pressure sets T_b anew. Allocates nothing.
 *
 * @param circuit - Changed in place.
 * @param flowed - Whether the step was one with flow.
 * @param pressure - Of the loop; only that of its steam is read.
 * @param exchange - What steam carries off is added to the array's loss.
 */
export function settleBoiling(
  circuit: Circuit,
  flowed: boolean,
  pressure: Pick<LoopPressure, 'vapourPressure'>,
  conditions: StepConditions,
  exchange: LoopExchange,
): void {
  const hottest = highest(circuit.absorber);
  circuit.boiling = isBoiling(circuit, hottest);
  if (circuit.boiling) {
    if (flowed) exchange.collectorLoss += emptyAll(circuit, conditions, false);
    return;
  }
  circuit.vapourPressure = pressure.vapourPressure;
  circuit.boiling = isBoiling(circuit, hottest);
  if (circuit.boiling) exchange.collectorLoss += emptyAll(circuit, conditions, true);
}

/** @param flashes - Whether the pressure fell away over hot liquid: it cools itself, and warms nothing. */
function emptyAll(circuit: Circuit, conditions: StepConditions, flashes: boolean): number {
  if (circuit.branches === null) return empty(circuit, circuit, conditions, flashes);
  let gone = 0;
  for (const branch of circuit.branches) gone += empty(circuit, branch, branch.conditions, flashes);
  return gone;
}

/**
 * Turns liquid above T_b into steam: the heat that it held above T_b goes into the empty absorber, as far as that stays under where it
 * would stand in the step's light.
 *
 * @returns What is left of it, which goes with the steam. [J]
 */
function empty(
  { absorber, boilingPoint }: Circuit,
  of: Absorbing,
  { absorbed, ambient }: StepConditions,
  flashes: boolean,
): number {
  const { dryCapacity, nodeCapacity } = of;
  const most = flashes ? Number.NEGATIVE_INFINITY : ambient + stagnationRise(absorbed, of.a1, of.a2);
  let gone = 0;
  for (let node = of.first; node < of.end; node++) {
    const here = absorber[node]!;
    const over = here - boilingPoint;
    if (over <= 0) continue;
    const kept = boilingPoint + (over * nodeCapacity) / dryCapacity;
    absorber[node] = Math.min(kept, Math.max(here, most));
    gone += dryCapacity * (kept - absorber[node]!);
  }
  return gone;
}
