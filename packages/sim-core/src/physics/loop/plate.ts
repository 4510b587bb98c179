/** A plate exchanger beside the tank, in place of the coil. */
import { requireNumber } from '../../input/errors.ts';
import { chargeDown } from '../tank/charge.ts';
import { mixInversions } from '../tank/inversion.ts';
import { type Tank, WATER_HEAT_CAPACITY } from '../tank/tank.ts';
import { closeCircuit } from './branches.ts';
import { setLoop, takeLoop } from './circuit.ts';
import type { Circuit, LoopExchange, LoopStep, StepConditions } from './circuit-state.ts';
import { counterflowEffectiveness } from './exchanger.ts';
import { NUMBERS, RING, setPace } from './ring.ts';

const { inlet: INLET, own: OWN, start: START } = RING;

/** Most that one piece of a step moves: the plume above the return turns over between pieces. [node volumes] */
const MOST_MOVED = 0.5;
/** A plate exchanger and the tank's side of it, ready to be stepped. */
export interface Plate {
  /** UA. [W/K] */
  readonly conductance: number;
  /** Of the secondary stream. [m³/s] */
  secondaryFlow: number;
  /** Node into which the warmed water returns; it is taken from the bottom. */
  readonly entry: number;
  /** Scratch of entry + 1 nodes. */
  readonly column: Float64Array;
  /** Scratch: what acts on a piece of a step, and what it exchanges. */
  readonly piece: Pick<LoopStep, 'conditions' | 'exchange'>;
}

/**
 * One step with the primary pump and the secondary one running. Allocates nothing.
 *
 *     Q = ε min(W_1, W_2) (T_1 − T_bottom),   ε of counterflow
 *
 * The secondary stream takes the bottom node's water and returns it warmer at its height; the water between moves down by plug
 * flow. A step is cut so that no piece of it moves more than one node: then what leaves the tank is known beforehand, and the
 * ring closes with a part that hands on (1 − e) T_in + e T_bottom, e = ε min(W_1, W_2)/W_1. What leaves the loop enters the tank.
 *
 * @param circuit - Compiled with one coil piece.
 * @param tank - Its nodes from the bottom to the return are changed in place.
 * @param step - Its exchange is written.
 */
export function circulatePlate(plate: Plate, circuit: Circuit, tank: Tank, step: LoopStep): void {
  const { column, entry, piece, secondaryFlow } = plate;
  const { conditions, exchange, stream } = step;
  const { capacityRate } = stream;
  const { ring } = circuit;
  const pieces = platePieces(secondaryFlow, conditions.duration, tank.nodeVolume);
  const duration = conditions.duration / pieces;
  const secondaryRate = secondaryFlow * WATER_HEAT_CAPACITY;
  const moved = (secondaryFlow * duration) / tank.nodeVolume;
  const smaller = Math.min(capacityRate, secondaryRate);
  const ratio = smaller / Math.max(capacityRate, secondaryRate);
  const effectiveness = counterflowEffectiveness(plate.conductance / smaller, ratio) * (smaller / capacityRate);
  const at = circuit.coilAt[0]!;
  ring[at + OWN] = effectiveness;
  setPace(ring, at, 0);
  takeConditions(piece.conditions, conditions, duration);
  clearExchange(exchange);
  for (let turn = 0; turn < pieces; turn++) {
    const bottom = tank.temperature[0]!;
    setLoop(circuit, capacityRate, piece.conditions);
    ring[at + START] = bottom;
    closeCircuit(circuit);
    takeLoop(circuit, capacityRate, piece.conditions, piece.exchange);
    const heat = capacityRate * (ring[at + INLET]! - ring[at + NUMBERS + INLET]!) * duration;
    piece.exchange.coilHeat = heat;
    addExchange(exchange, piece.exchange);
    chargeDown(tank.temperature, entry, moved, bottom + heat / (secondaryRate * duration), column);
    mixInversions(tank.temperature);
  }
  exchange.outlet /= pieces;
}

function takeConditions(into: StepConditions, { absorbed, ambient, room }: StepConditions, duration: number): void {
  into.absorbed = absorbed;
  into.ambient = ambient;
  into.room = room;
  into.duration = duration;
}

function clearExchange(exchange: LoopExchange): void {
  exchange.absorbed = 0;
  exchange.collectorLoss = 0;
  exchange.collectorHeat = 0;
  exchange.pipeLoss = 0;
  exchange.coilHeat = 0;
  exchange.outlet = 0;
}

function addExchange(sum: LoopExchange, piece: LoopExchange): void {
  sum.absorbed += piece.absorbed;
  sum.collectorLoss += piece.collectorLoss;
  sum.collectorHeat += piece.collectorHeat;
  sum.pipeLoss += piece.pipeLoss;
  sum.coilHeat += piece.coilHeat;
  sum.outlet += piece.outlet;
}

/** Pieces into which a step is cut. */
export const platePieces = (secondaryFlow: number, duration: number, nodeVolume: number): number =>
  Math.max(1, Math.ceil((secondaryFlow * duration) / (MOST_MOVED * nodeVolume)));

/** Rated point of a plate exchanger, as a data sheet gives it. */
export interface PlateRating {
  /** Heat that passes. [W] */
  readonly power: number;
  /** ṁ c_p of the hot side. [W/K] */
  readonly hotCapacityRate: number;
  /** ṁ c_p of the cold side. [W/K] */
  readonly coldCapacityRate: number;
  /** [°C] */
  readonly hotInlet: number;
  /** [°C] */
  readonly coldInlet: number;
}

/**
 * UA of a counterflow exchanger from one rated point: the inverse of its effectiveness.
 *
 *     NTU = ln[(1 − ε C)/(1 − ε)]/(1 − C);   C = 1: ε/(1 − ε)
 *
 * @returns UA, to be given as `loop.plate.conductance`. [W/K]
 * @throws {@link DesignError} for a value out of range, and where no exchanger passes so much.
 * @see Kays & London, Compact Heat Exchangers.
 */
export function plateConductance(rating: PlateRating): number {
  const { hotCapacityRate, coldCapacityRate, hotInlet, coldInlet } = rating;
  requireNumber('hotCapacityRate', hotCapacityRate, 1e-6, 1e9, 'W/K');
  requireNumber('coldCapacityRate', coldCapacityRate, 1e-6, 1e9, 'W/K');
  requireNumber('coldInlet', coldInlet, -50, 200, '°C');
  requireNumber('hotInlet', hotInlet, coldInlet + 0.1, 200, '°C (warmer than the cold side)');
  const smaller = Math.min(hotCapacityRate, coldCapacityRate);
  const most = smaller * (hotInlet - coldInlet);
  requireNumber('power', rating.power, 0, 0.9999 * most, 'W (below what the smaller stream can take)');
  const effectiveness = rating.power / most;
  const ratio = smaller / Math.max(hotCapacityRate, coldCapacityRate);
  const gap = 1 - ratio;
  const ntu =
    gap < 1e-9
      ? effectiveness / (1 - effectiveness)
      : Math.log((1 - effectiveness * ratio) / (1 - effectiveness)) / gap;
  return ntu * smaller;
}
