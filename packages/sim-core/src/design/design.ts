/**
 * What a system is made of, with every default written out. `defineSystem` makes one from what a user writes; the schema
 * that checks it and the sources of the defaults stand in `schema/`.
 */

import type { ArrayDesign } from './array.ts';
import type { ControlDesign } from './control.ts';
import type { HeaterDesign } from './heater.ts';
import type { DrawDesign, TankDesign } from './house.ts';
import type { CoilDesign, LoopDesign } from './loop.ts';
import type { PumpDesign, PvDesign } from './pump.ts';

export type {
  ArrayCoverDesign,
  ArrayDesign,
  ArrayExtent,
  CollectorDesign,
  CollectorGroupDesign,
  HorizonPoint,
  IncidenceModifierB0,
  IncidenceModifierBiaxial,
  IncidenceModifierCover,
  IncidenceModifierTable,
  ObstacleDesign,
  SummerTiltDesign,
} from './array.ts';
export type {
  CollectorSensor,
  ControlDesign,
  ControlMode,
  DifferenceControlDesign,
  NightCoolingDesign,
  OutageDesign,
} from './control.ts';
export type {
  CopByPoints,
  CopCurve,
  CopOfCarnot,
  CopOverAir,
  CopOverLift,
  EnergyCarrier,
  HeaterDesign,
  HeaterFuel,
  HeaterKind,
  SparePvDesign,
} from './heater.ts';
export type {
  DrawDesign,
  HotPipeDesign,
  RingDesign,
  SecondTankCharging,
  SecondTankDesign,
  TankBody,
  TankDesign,
  TankLoadDesign,
  Weekday,
} from './house.ts';
export type {
  CoilDesign,
  DrainBackDesign,
  LoopDesign,
  LoopExchanger,
  LoopFluid,
  LoopLayout,
  PlateDesign,
} from './loop.ts';
export type { MainsDesign, MainsWave } from './mains.ts';
export type {
  MotorDesign,
  PumpCurveDesign,
  PumpDesign,
  PumpDrive,
  PumpPointDesign,
  PvDesign,
  PvModuleDesign,
} from './pump.ts';

/** A default that `defineSystem` filled in. */
export interface DesignAssumption {
  /** Place in the design, such as `tank.lossCoefficient`. */
  readonly path: string;
  /** The value used, in the unit of {@link unit}. */
  readonly value: number | string | boolean | null | readonly number[];
  /** Unit of the value; empty for names and pure numbers. */
  readonly unit: string;
  /** Published source, "common practice, no source", or "judgement" with its reason. */
  readonly source: string;
}

/** A whole system: frozen, every default written out. */
export interface SystemDesign {
  /** Name for reports. */
  readonly name: string;
  /** Panels and their plane. */
  readonly array: ArrayDesign;
  /** PV modules that drive the pump, and their plane. */
  readonly pv: PvDesign;
  /** Pump and booster. */
  readonly pump: PumpDesign;
  /** Fluid and pipes. */
  readonly loop: LoopDesign;
  /** Coil in the tank. */
  readonly coil: CoilDesign;
  /** Storage tank. */
  readonly tank: TankDesign;
  /** Water used, and the mains. */
  readonly draw: DrawDesign;
  /** Backup heater. */
  readonly heater: HeaterDesign;
  /** Heater of the same house without the sun: the same, or a stored electric one in place of an element in the tank. */
  readonly baseline: HeaterDesign;
  /** Limits. */
  readonly control: ControlDesign;
  /** Every default that was not given, with its source. */
  readonly assumptions: readonly DesignAssumption[];
}
