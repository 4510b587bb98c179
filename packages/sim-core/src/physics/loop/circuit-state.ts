import type { Ring } from './ring.ts';

/** What a circuit keeps of its boiling. */
interface BoilingState {
  /** T_b. [°C] */
  boilingPoint: number;
  /** C_dry of one collector node. [J/K] */
  readonly dryCapacity: number;
  /** Whether any node holds steam. */
  boiling: boolean;
}

/** Where each part stands in the ring: starts of its numbers. */
export interface RingPlaces {
  /** Of each pipe node: the hot ones before the coil, the cold ones behind it. */
  readonly pipeAt: Int32Array;
  /** Of each coil piece, lowest first; the fluid passes them from the top down, unless it runs upwards. */
  readonly coilAt: Int32Array;
  /** Of the coil's content, which stands for all of it in the middle of the coil. */
  readonly contentAt: number;
}

/** Pipe sections in the order of the flow: hot outdoors, hot indoors, cold indoors, cold outdoors. */
export const PIPE_SECTIONS = 4;

/** What the circuit's last step exchanged; indices into {@link Circuit.flows}. [J] */
export const CIRCUIT = {
  /** Light turned into heat in the absorber. */
  absorbed: 0,
  /** Heat lost by the array to air and sky. */
  collectorLoss: 1,
  /** Heat carried out of the array by the fluid, less what it carried in. */
  collectorHeat: 2,
  /** Heat lost by the pipes. */
  pipeLoss: 3,
  /** Heat that the coil gave the tank. */
  coilHeat: 4,
} as const;

/** What acts on the loop in one step: one object of a run, filled anew in each. */
export interface StepConditions {
  /** Light turned into heat in the absorber, less what the sky takes beyond the rated loss; negative at night. [W/m²] */
  absorbed: number;
  /** Outdoor air. [°C] */
  ambient: number;
  /** Air around tank and indoor pipes. [°C] */
  room: number;
  /** Length of the step. [s] */
  duration: number;
}

/** The fluid that goes round in one step: one object of a run, filled anew in each. */
export interface LoopStream {
  /** Volume flow. [m³/s] */
  flow: number;
  /** Heat capacity rate, ṁ c_p. [W/K] */
  capacityRate: number;
  /** UA of the whole coil. [W/K] */
  conductance: number;
}

/** The collector circuit ready to be stepped: its state and what does not depend on it. */
export interface Circuit extends BoilingState, RingPlaces {
  /** Absorber and its fluid along the flow, inlet first. Shape [collector nodes]. [°C] */
  readonly absorber: Float64Array;
  /** Pipe along the flow, each of the {@link PIPE_SECTIONS} in equal nodes. Shape [4 × nodes a section]. [°C] */
  readonly pipe: Float64Array;
  /** Whether fluid went round in the last step: its coil pieces warm or cool their nodes as they did then. */
  flowed: boolean;
  /** Heat capacity of one collector node. [J/K] */
  readonly absorberCapacity: number;
  /** Reference area of one collector node. [m²] */
  readonly nodeArea: number;
  /** Changed by the hour where wind matters. [W/(m²·K)] */
  a1: number;
  readonly a2: number;
  /** Of each node. [J/K] */
  readonly pipeCapacity: Float64Array;
  /** Of each node. [W/K] */
  readonly pipeConductance: Float64Array;
  /** Decay of a standing node in one step, by steps per hour. */
  readonly pipeDecay: ReadonlyMap<number, Float64Array>;
  /** Fluid and metal of the coil beside each tank node that it touches, from {@link coilBottom} upwards. Shape [coil pieces]. [°C] */
  readonly coil: Float64Array;
  /** Heat capacity of the coil's fluid and metal. [J/K] */
  readonly coilCapacity: number;
  /** Conductance of the standing coil. [W/K] */
  readonly coilStanding: number;
  /** Lowest tank node that the coil touches. */
  readonly coilBottom: number;
  /** Whether the fluid runs through the coil from its lower end upwards. */
  readonly upwards: boolean;
  /** Share of the coil in each node from {@link coilBottom} upwards; they add up to 1. */
  readonly coilShare: Float64Array;
  /** Rise by the last step's coil heat of each tank node; nothing else writes here. Shape [tank nodes]. [K] */
  readonly coilRise: Float64Array;
  /** Exchange of the last step, see {@link CIRCUIT}. [J] */
  readonly flows: Float64Array;
  /** Collector nodes, hot pipes, coil pieces with the coil's content between them, cold pipes, in the order of the flow. */
  readonly ring: Ring;
}

/** Mean of the coil's content along the tube. [°C] */
export function coilTemperature({ coil, coilShare }: Circuit): number {
  let sum = 0;
  let whole = 0;
  for (let piece = 0; piece < coil.length; piece++) {
    sum += coilShare[piece]! * coil[piece]!;
    whole += coilShare[piece]!;
  }
  return sum / whole;
}

/** Whether a pipe node lies in one of the two inner sections. */
export const isIndoors = (at: number, pipeNodes: number): boolean => 4 * at >= pipeNodes && 4 * at < 3 * pipeNodes;

/**
 * Right-hand side of a collector node that does not change in the step: light, and the constant part of its loss
 * a1 d + a2 d|d|, written about the excess d0 at the start as value(d0) + slope (d − d0). [W]
 */
export function sourceAt(circuit: Circuit, start: number, slope: number, conditions: StepConditions): number {
  const excess = start - conditions.ambient;
  const lost = (circuit.a1 + circuit.a2 * Math.abs(excess)) * excess;
  return circuit.nodeArea * (conditions.absorbed - lost) + slope * start;
}
