/** One step of the loop through the coil in the tank. */
import { goneOf } from '../relaxation.ts';
import { closeCircuit } from './branches.ts';
import { coilMean, setLoop, takeLoop } from './circuit.ts';
import type { Circuit, Coil, LoopStep } from './circuit-state.ts';
import { type CompiledCoil, insideConductance, surfaceShare } from './coil.ts';
import { answerLike, RING, setPace } from './ring.ts';

const { own: OWN, rest: REST, rise: RISE, spare: SPARE, start: START } = RING;
// Of a coil piece: how far its nodes drift in the step anyway [K], the number of nodes that rise with it, and whether it is taken to warm
// its node (1) or to cool it (0).
const DRIFT = SPARE;
const WEIGHT = SPARE + 1;
const WARMS = SPARE + 2;

/** Tank nodes that differ by less turn over as one when warmed from below or cooled from above. [K] */
const POOLED = 0.01;
/** What losses and conduction are taken to do to a node in a step, at most: in a long one a sharp front's pace does not last. [K] */
const MOST_DRIFT = 1;
/** A node that the coil changed by less may as well have been taken for the other sort. [K] */
const EVEN = POOLED;
/** The films are found anew where the coil's middle came out further from what they were taken at. [K] */
export const FILM_CLOSE = 3;
/** Times that a step is solved at most until pools and films agree with what came out; judgement. */
export const MOST_TRIALS = 4;

/**
 * One step with fluid going round through the coil. Allocates nothing.
 *
 * The step is solved with the films and the sort of exchange (piece by piece: does it warm or cool its node?) that the start of the step
 * suggests, and again where the solution says otherwise: a pump's first step sends the pipe's content ahead of the sun's heat.
 *
 * @param circuit - Changed in place: absorber, pipe, coil.
 * @param step - Its exchange is written, and the stream's conductance where the coil has films.
 */
export function circulate(circuit: Circuit, step: LoopStep): void {
  solveLoop(circuit, step);
  takeLoop(circuit, step.stream.capacityRate, step.conditions, step.exchange);
}

/** Solves a step and leaves the state as it was: what came of it stands in the ring, and in the exchange what the coil gave. */
export function solveLoop(circuit: Circuit, step: LoopStep): void {
  const { conditions, stream } = step;
  const { coil } = circuit;
  const { films } = coil;
  setLoop(circuit, stream.capacityRate, conditions);
  let between = circuit.ring[circuit.contentAt + START]!;
  for (let trial = 1; ; trial++) {
    if (films !== null) setFilms(coil, films, step, between);
    setCoil(circuit, step, trial === 1);
    closeCircuit(circuit);
    const solved = coilMean(circuit);
    const far = films !== null && Math.abs(solved - between) > FILM_CLOSE;
    // Both are looked at: the sorts are corrected on the way.
    if (!(weighCoil(circuit, step) || far) || trial === MOST_TRIALS) return;
    between = solved;
  }
}

/** Sets a coil's conductance by its films. @param between - Fluid in its middle. [°C] */
export function setFilms(coil: Coil, films: CompiledCoil, { stream, water }: LoopStep, between: number): void {
  const beside = water.temperature[coil.bottom + (coil.share.length >> 1)]!;
  const inside = insideConductance(films, stream.flow, between);
  coil.surface = surfaceShare(films, inside, between, beside, coil.surface);
  stream.conductance = inside * (1 - coil.surface);
}

/**
 * Sets up the coil's pieces.
 *
 * A tank node that the coil warms rises with the water above it that is no warmer, since warm water does not stay below; that
 * water's capacity counts with it here, and the turnover that follows spreads the heat. What losses and conduction do to the
 * node meanwhile is taken from the step before, for its effect on the exchange alone.
 *
 * @param guess - Whether every piece is taken to warm or cool its node as the hot pipe's end would; else as the ring has it.
 */
export function setCoil(circuit: Circuit, { conditions, stream, water }: LoopStep, guess: boolean): void {
  const { coilAt, pipe, ring } = circuit;
  const { bottom, share } = circuit.coil;
  const { duration } = conditions;
  const { capacityRate, conductance } = stream;
  const { drift, nodeCapacity, temperature } = water;
  const mostDrift = MOST_DRIFT / duration;
  const fluid = pipe[(pipe.length >> 1) - 1]!;
  let low = bottom + share.length; // lowest node of the pool that was found last, and whether the fluid warms it
  let poolWarms = 0;
  let weight = 1;
  let perWeight = 1;
  let lastShare = -1;
  let effectiveness = 0;
  let perRate = 0;
  let x = 0;
  let paceAt = -1; // of the piece whose pace was found last
  let pace = 0;
  for (let piece = share.length - 1; piece >= 0; piece--) {
    const at = coilAt[piece]!;
    const node = bottom + piece;
    const here = temperature[node]!;
    const warms = guess ? (fluid > here ? 1 : 0) : ring[at + WARMS]!;
    if (node < low || warms !== poolWarms) {
      // A warmed node carries those above it that are no warmer, a cooled one those below.
      const highest = warms === 1 ? temperature.length - 1 : node;
      const lowest = warms === 1 ? bottom : 0;
      let high = node;
      while (high < highest && temperature[high + 1]! - temperature[high]! < POOLED) high++;
      low = node;
      while (low > lowest && temperature[low]! - temperature[low - 1]! < POOLED) low--;
      // Mostly a node is a pool of its own, which needs no division.
      weight = high === low ? 1 : (high - low + 1) / (node - Math.max(low, bottom) + 1);
      perWeight = high === low ? 1 : 1 / weight;
      poolWarms = warms;
    }
    // All but the end pieces are of one length.
    if (share[piece]! !== lastShare) {
      lastShare = share[piece]!;
      paceAt = -1;
      effectiveness = goneOf((conductance * lastShare) / capacityRate);
      perRate = nodeCapacity / (capacityRate * effectiveness);
      x = duration / perRate;
    }
    const drifted = drift[node]!;
    const drifts = drifted > mostDrift ? mostDrift : drifted < -mostDrift ? -mostDrift : drifted;
    if (paceAt >= 0 && x * perWeight === pace) answerLike(ring, at, paceAt);
    else {
      pace = x * perWeight;
      paceAt = at;
      ring[at + OWN] = effectiveness;
      setPace(ring, at, pace);
    }
    ring[at + REST] = drifts * perRate;
    ring[at + START] = here;
    ring[at + DRIFT] = drifts * duration * perWeight;
    ring[at + WEIGHT] = weight;
    ring[at + WARMS] = warms;
  }
}

/** Says what the solved step does to the tank nodes around the coil. @returns Whether a pool was taken for the wrong sort. */
export function weighCoil(circuit: Circuit, { exchange, water }: LoopStep): boolean {
  const { coilAt, ring } = circuit;
  const { bottom, share } = circuit.coil;
  const { coilRise } = exchange;
  const { nodeCapacity, temperature } = water;
  let sum = 0;
  let turned = false;
  for (let piece = share.length - 1; piece >= 0; piece--) {
    const at = coilAt[piece]!;
    const node = bottom + piece;
    const pooled = ring[at + RISE]! - ring[at + DRIFT]!;
    const risen = pooled * ring[at + WEIGHT]!;
    coilRise[node] = risen;
    sum += risen;
    if (ring[at + WARMS] === 1 ? pooled > -EVEN : pooled < EVEN) continue;
    ring[at + WARMS] = 1 - ring[at + WARMS]!;
    // A node unlike its neighbours is a pool of its own, whichever the sort.
    const here = temperature[node]!;
    turned ||= temperature[node + 1]! - here < POOLED || here - temperature[node - 1]! < POOLED;
  }
  exchange.coilHeat = sum * nodeCapacity;
  return turned;
}
