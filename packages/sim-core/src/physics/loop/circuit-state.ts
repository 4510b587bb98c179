import type { BoilingState } from './boil.ts';
import type { Ring } from './ring.ts';

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

/** The collector circuit ready to be stepped: its state and what does not depend on it. */
export interface Circuit extends BoilingState {
  /** Absorber and its fluid along the flow, inlet first. Shape [collector nodes]. [°C] */
  readonly absorber: Float64Array;
  /** Pipe along the flow, each of the {@link PIPE_SECTIONS} in equal nodes. Shape [4 × nodes a section]. [°C] */
  readonly pipe: Float64Array;
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
  /** Lowest tank node that the coil touches. */
  readonly coilBottom: number;
  /** Whether the fluid runs through the coil from its lower end upwards. */
  readonly upwards: boolean;
  /** Share of the coil in each node from {@link coilBottom} upwards; they add up to 1. */
  readonly coilShare: Float64Array;
  /** Exchange of the last step, see {@link CIRCUIT}. [J] */
  readonly flows: Float64Array;
  /** Collector nodes, hot pipes, coil pieces from the top down, cold pipes, in the order of the flow. */
  readonly ring: Ring;
}

/** Whether a pipe node lies in one of the two inner sections. */
export const isIndoors = (at: number, pipeNodes: number): boolean => 4 * at >= pipeNodes && 4 * at < 3 * pipeNodes;

/**
 * Right-hand side of a collector node that does not change in the step: light, and the constant part of its loss
 * a1 d + a2 d|d|, written about the excess d0 at the start as value(d0) + slope (d − d0). [W]
 */
export function sourceAt(
  start: number,
  slope: number,
  absorbed: number,
  ambient: number,
  area: number,
  a1: number,
  a2: number,
): number {
  const excess = start - ambient;
  return area * (absorbed - (a1 + a2 * Math.abs(excess)) * excess) + slope * start;
}
