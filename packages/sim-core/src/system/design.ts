/**
 * What a system is made of, with every default written out. `defineSystem` makes one from what a user writes; the schema
 * that checks it and the sources of the defaults stand in `schema/`.
 */

import type { ArrayDesign } from './array-design.ts';
import type { ControlDesign } from './control-design.ts';
import type { CoilDesign, LoopDesign } from './loop-design.ts';
import type { PumpDesign, PvDesign } from './pump-design.ts';

export type {
  ArrayDesign,
  CollectorDesign,
  IncidenceModifierB0,
  IncidenceModifierBiaxial,
  IncidenceModifierTable,
} from './array-design.ts';
export type {
  CollectorSensor,
  ControlDesign,
  ControlMode,
  DifferenceControlDesign,
  OutageDesign,
} from './control-design.ts';
export type { CoilDesign, LoopDesign, LoopFluid } from './loop-design.ts';
export type { MotorDesign, PumpDesign, PumpDrive, PvDesign, PvModuleDesign } from './pump-design.ts';

/** Solar storage tank. */
export interface TankDesign {
  /** Water in it. [m³] */
  readonly volume: number;
  /** Inside height. [m] */
  readonly height: number;
  /** Heat loss of the whole tank per kelvin over its room. [W/K] */
  readonly lossCoefficient: number;
  /** Air around it. [°C] */
  readonly roomTemperature: number;
  /** Equal layers of the calculation, bottom first. */
  readonly nodes: number;
  /** Vertical conductivity of water and wall together. [W/(m·K)] */
  readonly verticalConductivity: number;
  /** Whole tank at the start of the year. [°C] */
  readonly initialTemperature: number;
  /** Temperature at which the relief valve opens. [°C] */
  readonly reliefTemperature: number;
  /** Rated temperature of tank and lining; above it a caution is shown. [°C] */
  readonly ratedTemperature: number;
}

/** Cold water by a correlation with the weather (Burch & Christensen 2007), by one number, or by twelve monthly means. */
export type MainsDesign = 'from-weather' | number | readonly number[];

/** What the house takes. */
export interface DrawDesign {
  /** Mixed water at the taps on each day. [m³] */
  readonly dailyVolume: number;
  /** Temperature wanted at the taps. [°C] */
  readonly tapTemperature: number;
  /** Share of the day's volume in each hour from 00:00, made to add up to 1. Shape [24]. [-] */
  readonly hourlyShares: readonly number[];
  /** Whether a valve after the heater keeps the taps at {@link tapTemperature} or below. */
  readonly mixingValve: boolean;
  /** Cold mains. [°C] */
  readonly mains: MainsDesign;
}

/** Stored gas heater after the solar tank; alone, it is the baseline. */
export interface HeaterDesign {
  /** Water in it. [m³] */
  readonly volume: number;
  /** Thermostat. [°C] */
  readonly setTemperature: number;
  /** Heat that the burner puts into the water when on. [W] */
  readonly burnerPower: number;
  /** Heat into the water over fuel burnt, gross calorific value. [-] */
  readonly burnerEfficiency: number;
  /** Standby loss per kelvin over the room. [W/K] */
  readonly lossCoefficient: number;
  /** Air around it. [°C] */
  readonly roomTemperature: number;
}

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
  /** Limits. */
  readonly control: ControlDesign;
  /** Every default that was not given, with its source. */
  readonly assumptions: readonly DesignAssumption[];
}
