import type { Tank } from '../tank/tank.ts';
import type { CompiledCoil } from './coil.ts';
import type { Way } from './flow-split.ts';
import type { PumpAnswer } from './pump-offer.ts';
import type { Ring } from './ring.ts';

/** What a circuit keeps of its boiling. */
interface BoilingState {
  /** T_b as it was last asked for, from `boilingPointOf`. [°C] */
  boilingPoint: number;
  /** Of the steam by which T_b is to be found anew; 0: it stands. [Pa] */
  vapourPressure: number;
  /** Whether any node holds steam. */
  boiling: boolean;
}

/** Where each part stands in the ring: starts of its numbers. */
export interface RingPlaces {
  /** Of each pipe node: the hot ones before the coil, the cold ones behind it. */
  readonly pipeAt: Int32Array;
  /** Of the first pipe node that equals each, itself perhaps. */
  readonly pipeLike: Int32Array;
  /** Of each coil piece, lowest first; the fluid passes them from the top down, unless it runs upwards. */
  readonly coilAt: Int32Array;
  /** Of the coil's content, which stands for all of it in the middle of the coil. */
  readonly contentAt: number;
}

/** Pipe sections in the order of the flow: hot outdoors, hot indoors, cold indoors, cold outdoors. */
export const PIPE_SECTIONS = 4;

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
interface LoopStream extends PumpAnswer {
  /** Heat capacity rate, ṁ c_p. [W/K] */
  capacityRate: number;
  /** UA of the whole coil. [W/K] */
  conductance: number;
}

/** What the loop exchanged in one step: one object of a run, written anew in each. */
export interface LoopExchange {
  /** Light turned into heat in the absorber, less what the sky takes beyond the rated loss. [J] */
  absorbed: number;
  /** Heat lost by the array to air and sky. [J] */
  collectorLoss: number;
  /** Heat carried out of the array by the fluid, less what it carried in. [J] */
  collectorHeat: number;
  /** Heat lost by the pipes. [J] */
  pipeLoss: number;
  /** Heat given to the tank, through coil or plate exchanger. [J] */
  coilHeat: number;
  /** Fluid leaving the array, mean of the step; of one with flow. [°C] */
  outlet: number;
  /** Rise of each tank node by the coil's heat; nothing but the coil writes here. Shape [tank nodes]. [K] */
  readonly coilRise: Float64Array;
}

/** What the coil needs to know of the tank; nothing of it is changed. */
export type CoilWater = Pick<Tank, 'drift' | 'nodeCapacity' | 'temperature'>;

/** All that a step of the loop works with: one object of a run. */
export interface LoopStep {
  /** Around the coil. */
  readonly water: CoilWater;
  /** What acts on the loop. */
  readonly conditions: StepConditions;
  /** What goes round. */
  readonly stream: LoopStream;
  /** What comes of it. */
  readonly exchange: LoopExchange;
  /** The same step as the coil of a second tank sees it, conditions shared; `null`: none. */
  readonly further: LoopStep | null;
}

/** Makes room for what a loop exchanges with a tank of some nodes. */
export const emptyExchange = (tankNodes: number): LoopExchange => ({
  absorbed: 0,
  collectorLoss: 0,
  collectorHeat: 0,
  pipeLoss: 0,
  coilHeat: 0,
  outlet: 0,
  coilRise: new Float64Array(tankNodes),
});

/** The coil in the tank: its content, and how well heat passes its wall. With a plate exchanger, next to nothing. */
export interface Coil {
  /** Fluid and metal beside each tank node that it touches, from {@link bottom} upwards; of the standing coil, see {@link passed}. Shape [pieces]. [°C] */
  readonly temperature: Float64Array;
  /** Mean of its content, while fluid goes through it. [°C] */
  mean: number;
  /** Whether fluid went through it since its content was last laid along the tube: then {@link mean} tells its heat. */
  passed: boolean;
  /** Heat capacity of fluid and metal. [J/K] */
  readonly capacity: number;
  /** Lowest tank node that it touches. */
  readonly bottom: number;
  /** Share of the conductance in each node from {@link bottom} upwards; they add up to 1, to less where part of it lies in sediment. Shape [pieces]. */
  readonly share: Float64Array;
  /** Share of the content beside each of these nodes; they add up to 1. Shape [pieces]. */
  readonly contentShare: Float64Array;
  /** Conductance at standstill. [W/K] */
  readonly standing: number;
  /** What a step of some length needs of the standing coil; worked out anew where the length changes. */
  readonly rest: CoilRest;
  /** Tables of the films, renewed with the fluid; `null` for a conductance that does not change. */
  films: CompiledCoil | null;
  /** Whether the fluid passes it: a valve may lead it past. */
  open: boolean;
  /** Where its surface stood in the last step, from the water (0) to the fluid (1): from there the next is sought. [-] */
  surface: number;
}

/** How the standing coil's content meets the water around it in a step of one length. */
export interface CoilRest {
  /** Length of the step; 0 before the first. [s] */
  duration: number;
  /** r = C_c/C_w of each piece. Shape [pieces]. [-] */
  readonly ratio: Float64Array;
  /** Of its excess over the water, what each piece's content loses. Shape [pieces]. [-] */
  readonly fall: Float64Array;
}

/** Room for what a standing coil of some pieces needs. */
export const emptyRest = (pieces: number): CoilRest => ({
  duration: 0,
  ratio: new Float64Array(pieces),
  fall: new Float64Array(pieces),
});

/** Collectors of one kind: the whole array, or one of its groups. */
export interface Absorbing {
  /** First of its nodes in {@link Circuit.absorber}. */
  readonly first: number;
  /** Behind its last node. */
  readonly end: number;
  /** Reference area of one collector node. [m²] */
  readonly nodeArea: number;
  /** Heat capacity of one collector node; less where its water has drained. [J/K] */
  nodeCapacity: number;
  /** C_dry of one collector node. [J/K] */
  readonly dryCapacity: number;
  /** Changed by the hour where wind matters. [W/(m²·K)] */
  a1: number;
  readonly a2: number;
}

/** One group of an array of several; `branches.ts` steps them. */
export interface Branch extends Absorbing, Way {
  /** Place along the flow: those of one stage share the flow. */
  readonly stage: number;
  /** What acts on it in this step. */
  readonly conditions: StepConditions;
  /** Mean of what left it in the last step with flow. [°C] */
  outlet: number;
  /** Carried out of it since the start. [J] */
  heat: number;
}

/** The collector circuit ready to be stepped: its state and what does not depend on it. With groups, the numbers of {@link Absorbing} are means. */
export interface Circuit extends BoilingState, RingPlaces, Absorbing {
  /** Groups in the order of the flow; `null` where the array is one. */
  readonly branches: readonly Branch[] | null;
  /** Absorber and its fluid along the flow, inlet first. Shape [collector nodes]. [°C] */
  readonly absorber: Float64Array;
  /** Pipe along the flow, each of the {@link PIPE_SECTIONS} in equal nodes. Shape [4 × nodes a section]. [°C] */
  readonly pipe: Float64Array;
  readonly coil: Coil;
  /** Of each node. [J/K] */
  readonly pipeCapacity: Float64Array;
  /** Of each node. [W/K] */
  readonly pipeConductance: Float64Array;
  /** Decay of a standing node in one step, by steps per hour. */
  pipeDecay: ReadonlyMap<number, Float64Array>;
  /** Whether the fluid runs through the coil from its lower end upwards. */
  readonly upwards: boolean;
  /** Collector nodes, hot pipes, coil pieces with the coil's content between them, cold pipes, in the order of the flow. */
  readonly ring: Ring;
  /** The same circuit as the coil of a second tank sees it: its own coil, and places of it in the same ring; `null`: none. */
  readonly further: Circuit | null;
}

/** Mean of the coil's content along the tube. [°C] */
export function coilTemperature({ contentShare, mean, passed, temperature }: Coil): number {
  if (passed) return mean;
  let sum = 0;
  for (let piece = 0; piece < temperature.length; piece++) sum += contentShare[piece]! * temperature[piece]!;
  return sum;
}

/** Hottest outlet end of the absorbers: of the array, or of any of its groups. [°C] */
export function outletEnd({ absorber, branches }: Circuit): number {
  if (branches === null) return absorber[absorber.length - 1]!;
  let highest = Number.NEGATIVE_INFINITY;
  for (const { end } of branches) if (absorber[end - 1]! > highest) highest = absorber[end - 1]!;
  return highest;
}

/** Whether a pipe node lies in one of the two inner sections. */
export const isIndoors = (at: number, pipeNodes: number): boolean => 4 * at >= pipeNodes && 4 * at < 3 * pipeNodes;

/**
 * Right-hand side of a collector node that does not change in the step: light, and the constant part of its loss
 * a1 d + a2 d|d|, written about the excess d0 at the start as value(d0) + slope (d − d0). [W]
 */
export function sourceAt(of: Absorbing, start: number, slope: number, conditions: StepConditions): number {
  const excess = start - conditions.ambient;
  const lost = (of.a1 + of.a2 * Math.abs(excess)) * excess;
  return of.nodeArea * (conditions.absorbed - lost) + slope * start;
}
