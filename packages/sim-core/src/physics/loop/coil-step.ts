/** One step of the loop through the coil in the tank. */
import type { Tank } from '../tank/tank.ts';
import { coilMean, coilStart, piecesBefore, setLoop, takeLoop } from './circuit.ts';
import { CIRCUIT, type Circuit, coilTemperature, type LoopStream, type StepConditions } from './circuit-state.ts';
import { type CompiledCoil, coilUA } from './coil.ts';
import { closeRing, NUMBERS, RING } from './ring.ts';

const { own: OWN, rest: REST, rise: RISE, spare: SPARE, start: START, x: X } = RING;
// Of a coil piece: how far its nodes drift in the step anyway [K], 1 over the number of nodes that rise with it, and whether it is taken to warm
// its node (1) or to cool it (0).
const DRIFT = SPARE;
const PER_WEIGHT = SPARE + 1;
const WARMS = SPARE + 2;

/** Tank nodes that differ by less turn over as one when warmed from below or cooled from above. [K] */
const POOLED = 0.01;
/** What losses and conduction are taken to do to a node in a step, at most: in a long one a sharp front's pace does not last. [K] */
const MOST_DRIFT = 1;
/** A node that the coil changed by less may as well have been taken for the other sort. [K] */
const EVEN = 1e-3;
/** The films are found anew where the coil's middle came out further from what they were taken at. [K] */
const FILM_CLOSE = 3;
/** Times that a step is solved at most until pools and films agree with what came out; judgement. */
const MOST_TRIALS = 4;

/** What the coil needs to know of the tank; nothing of it is changed. */
export type CoilWater = Pick<Tank, 'drift' | 'nodeCapacity' | 'temperature'>;

/**
 * One step with fluid going round through the coil. Allocates nothing.
 *
 * The step is solved with the films and the sort of exchange (piece by piece: does it warm or cool its node?) that the start of the step
 * suggests, and again where the solution says otherwise: a pump's first step sends the pipe's content ahead of the sun's heat.
 *
 * @param circuit - Changed in place: absorber, pipe, coil, flows; `coilRise` says what the coil did to each tank node.
 * @param stream - Its conductance is set where there are films, and taken as it is where there are none.
 * @param films - Of the coil; `null` for a conductance that does not change.
 * @returns Mean temperature of the fluid that leaves the array. [°C]
 */
export function circulate(
  circuit: Circuit,
  water: CoilWater,
  stream: LoopStream,
  conditions: StepConditions,
  films: CompiledCoil | null = null,
): number {
  solveLoop(circuit, water, stream, conditions, films);
  return takeStep(circuit, water, stream, conditions);
}

/** Writes what {@link solveLoop} found into the circuit. @returns Mean temperature of the fluid that leaves the array. [°C] */
export function takeStep(circuit: Circuit, water: CoilWater, stream: LoopStream, conditions: StepConditions): number {
  takeCoil(circuit, water.nodeCapacity);
  return takeLoop(circuit, stream.capacityRate, conditions);
}

/** Solves a step and leaves the state as it was: what came of it stands in the ring alone. Parameters as for {@link circulate}. */
export function solveLoop(
  circuit: Circuit,
  water: CoilWater,
  stream: LoopStream,
  conditions: StepConditions,
  films: CompiledCoil | null,
): void {
  const { capacityRate, flow } = stream;
  const beside = water.temperature[circuit.coilBottom + (circuit.coilShare.length >> 1)]!;
  let between = coilTemperature(circuit);
  setLoop(circuit, capacityRate, conditions);
  guessPools(circuit, water);
  for (let trial = 1; ; trial++) {
    if (films !== null) stream.conductance = coilUA(films, flow, between, beside);
    setCoil(circuit, water, stream, conditions.duration);
    closeRing(circuit.ring);
    const solved = coilMean(circuit);
    const far = films !== null && Math.abs(solved - between) > FILM_CLOSE;
    if (!(turnPools(circuit) || far) || trial === MOST_TRIALS) return;
    between = solved;
  }
}

/** Place in the ring of the piece in a tank node: from the coil's top down, unless the fluid runs upwards. */
export function pieceAt(circuit: Circuit, node: number): number {
  const { coilBottom, coilShare } = circuit;
  const order = circuit.upwards ? node - coilBottom : coilBottom + coilShare.length - 1 - node;
  return coilStart(circuit) + (order + (order < piecesBefore(coilShare.length) ? 0 : 1)) * NUMBERS;
}

/** Takes every piece to warm or cool its node as the hot pipe's end would. */
function guessPools(circuit: Circuit, { temperature }: CoilWater): void {
  const { coilBottom, coilShare, pipe, ring } = circuit;
  const fluid = pipe[(pipe.length >> 1) - 1]!;
  for (let node = coilBottom; node < coilBottom + coilShare.length; node++) {
    ring[pieceAt(circuit, node) + WARMS] = fluid > temperature[node]! ? 1 : 0;
  }
}

/** Corrects the sort of each piece by the solution. @returns Whether one was wrong. */
function turnPools(circuit: Circuit): boolean {
  const { coilBottom, coilShare, ring } = circuit;
  let turned = false;
  for (let node = coilBottom; node < coilBottom + coilShare.length; node++) {
    const at = pieceAt(circuit, node);
    const risen = ring[at + RISE]! - ring[at + DRIFT]!;
    if (ring[at + WARMS] === 1 ? risen > -EVEN : risen < EVEN) continue;
    ring[at + WARMS] = 1 - ring[at + WARMS]!;
    turned = true;
  }
  return turned;
}

/**
 * Sets up the coil's pieces.
 *
 * A tank node that the coil warms rises with the water above it that is no warmer, since warm water does not stay below; that
 * water's capacity counts with it here, and the turnover that follows spreads the heat. What losses and conduction do to the
 * node meanwhile is taken from the step before, for its effect on the exchange alone.
 */
function setCoil(circuit: Circuit, water: CoilWater, stream: LoopStream, duration: number): void {
  const { coilBottom, coilShare, ring } = circuit;
  const { capacityRate, conductance } = stream;
  const { temperature } = water;
  const mostDrift = MOST_DRIFT / duration;
  let low = coilBottom + coilShare.length; // lowest node of the pool that was found last, and whether the fluid warms it
  let poolWarms = false;
  let perWeight = 1;
  for (let node = coilBottom + coilShare.length - 1; node >= coilBottom; node--) {
    const at = pieceAt(circuit, node);
    const warms = ring[at + WARMS] === 1;
    if (node < low || warms !== poolWarms) {
      // A warmed node carries those above it that are no warmer, a cooled one those below.
      const highest = warms ? temperature.length - 1 : node;
      const lowest = warms ? coilBottom : 0;
      let high = node;
      while (high < highest && temperature[high + 1]! - temperature[high]! < POOLED) high++;
      low = node;
      while (low > lowest && temperature[low]! - temperature[low - 1]! < POOLED) low--;
      perWeight = (node - Math.max(low, coilBottom) + 1) / (high - low + 1);
      poolWarms = warms;
    }
    const effectiveness = -Math.expm1((-conductance * coilShare[node - coilBottom]!) / capacityRate);
    const perRate = water.nodeCapacity / (capacityRate * effectiveness);
    const drift = Math.min(Math.max(water.drift[node]!, -mostDrift), mostDrift);
    ring[at + X] = (duration / perRate) * perWeight;
    ring[at + OWN] = effectiveness;
    ring[at + REST] = drift * perRate;
    ring[at + START] = temperature[node]!;
    ring[at + DRIFT] = drift * duration * perWeight;
    ring[at + PER_WEIGHT] = perWeight;
  }
}

/** Says what the solved step did to the tank nodes around the coil. */
function takeCoil(circuit: Circuit, nodeCapacity: number): void {
  const { coilBottom, coilRise, coilShare, ring } = circuit;
  let sum = 0;
  for (let node = coilBottom + coilShare.length - 1; node >= coilBottom; node--) {
    const at = pieceAt(circuit, node);
    const risen = (ring[at + RISE]! - ring[at + DRIFT]!) / ring[at + PER_WEIGHT]!;
    coilRise[node] = risen;
    sum += risen;
  }
  circuit.flows[CIRCUIT.coilHeat] = sum * nodeCapacity;
}
