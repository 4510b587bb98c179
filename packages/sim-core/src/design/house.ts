import type { CoilDesign } from './loop.ts';
import type { MainsDesign } from './mains.ts';

/** Tapping profiles of EU regulation 812/2013, from the smallest. */
export type TappingName = '3XS' | 'XXS' | 'XS' | 'S' | 'M' | 'L' | 'XL' | 'XXL';

/** Shapes of a household's day. */
export type HouseholdName = 'level' | 'morning' | 'evening';

/** Names of days that a draw may follow. */
export type DrawProfileName = TappingName | HouseholdName;

/** What every solar tank has. */
export interface TankBody {
  /** Water in it, sediment counted as water. [m³] */
  readonly volume: number;
  /** Inside height. [m] */
  readonly height: number;
  /** Heat loss of the whole tank per kelvin over its room. [W/K] */
  readonly lossCoefficient: number;
  /** Equal layers of the calculation, bottom first. */
  readonly nodes: number;
  /** Vertical conductivity of water and wall together. [W/(m·K)] */
  readonly verticalConductivity: number;
  /** Whole tank at the start of the year, where no profile says something else. [°C] */
  readonly initialTemperature: number;
  /** Temperature at which the relief valve opens. [°C] */
  readonly reliefTemperature: number;
  /** Rated temperature of tank and lining; above it a caution is shown. [°C] */
  readonly ratedTemperature: number;
  /** Bore of an inlet that jets upwards and mixes; `null`: the inlet spreads the water without mixing. [m] */
  readonly inletDiameter: number | null;
  /** Sediment on the floor: less water, and the coil in it buried. [m] */
  readonly sedimentDepth: number;
}

/** Solar storage tank. */
export interface TankDesign extends TankBody {
  /** Air around it; with {@link roomByMonth} for what asks for one number. [°C] */
  readonly roomTemperature: number;
  /** Air around it month by month from January, constant in each, or the outdoor air; `null`: {@link roomTemperature} all year. [°C] */
  readonly roomByMonth: 'outdoors' | readonly number[] | null;
  /** Pool or rooms that take heat from it; `null`: none. */
  readonly load: TankLoadDesign | null;
  /** Tank at the start of the year, equal layers bottom first, straight lines between their middles; `null`: all alike. [°C] */
  readonly initialProfile: readonly number[] | null;
  /** A second tank before this one on the cold water: the mains enter it, and what leaves it enters this one; `null`: none. */
  readonly second: SecondTankDesign | null;
}

/**
 * How the loop charges two tanks: `series`, its fluid passes the coil of the first, then that of the second; `in-turn`, a diverting valve leads it
 * through the first, through the second where the first has had enough or can get nothing; `first` or `second`, through that one only.
 */
export type SecondTankCharging = 'series' | 'in-turn' | 'first' | 'second';

/** A second solar tank, on the cold side of the first; what it says nothing of is the first's: load, element and the pump's other limits. */
export interface SecondTankDesign extends TankBody {
  /** Air around it all year; `null`: that of the first. [°C] */
  readonly roomTemperature: number | null;
  /** Coil in it; left out: as that of the first. */
  readonly coil: CoilDesign;
  /** Which coils the loop's fluid passes. */
  readonly charging: SecondTankCharging;
  /** Top of the first tank at which the valve leads the fluid to the second; used where {@link charging} is `in-turn`. [°C] */
  readonly divertAt: number;
}

/** A sink of heat at a given temperature, such as a pool or floor heating, behind an exchanger of its own. */
export interface TankLoadDesign {
  /** Of its water. [°C] */
  readonly temperature: number;
  /** Most that it takes. [W] */
  readonly power: number;
  /** Of its exchanger. [W/K] */
  readonly conductance: number;
  /** It takes nothing from water colder than this. [°C] */
  readonly leastTemperature: number;
  /** Where it takes its heat, as a share of the tank's height. [-] */
  readonly height: number;
  /** Most heat that it takes in a day from 00:00; `null`: no such limit. [J] */
  readonly dailyHeat: number | null;
  /** Days on which it takes heat, `'05-01..09-15'`; empty: all year. */
  readonly days: readonly string[];
}

/** Name of a day of the week. */
export type Weekday = 'monday' | 'tuesday' | 'wednesday' | 'thursday' | 'friday' | 'saturday' | 'sunday';

/** What the house takes. */
export interface DrawDesign {
  /**
   * Day by name. A tapping profile gives each draw its minute; its own heat too where no volume was given
   * ({@link keepsProfileHeat}). `null`: {@link hourlyShares} or {@link volumes} are the user's own.
   */
  readonly profile: DrawProfileName | null;
  /** Whether each draw keeps the heat of its tapping profile, above whatever the mains are. */
  readonly keepsProfileHeat: boolean;
  /**
   * Mixed water at the taps on a day with factor 1: with {@link keepsProfileHeat} that at mains of 10 °C, with {@link volumes}
   * their daily mean. [m³]
   */
  readonly dailyVolume: number;
  /** Temperature wanted at the taps. [°C] */
  readonly tapTemperature: number;
  /** Flow of mixed water while a tap runs, where the profile names none; it matters to instantaneous heaters and jets. [m³/s] */
  readonly flow: number;
  /** Share of the day's volume in each hour from 00:00, made to add up to 1. Shape [24]. [-] */
  readonly hourlyShares: readonly number[];
  /** Factor on the day's water from Monday to Sunday; they need not average 1. Shape [7]. [-] */
  readonly weekdayFactors: readonly number[];
  /** Weekday of 1 January. */
  readonly firstWeekday: Weekday;
  /** Days with no draw, first and last day included: `'07-10..07-24'`; a range may pass the turn of the year. */
  readonly holidays: readonly string[];
  /** Days on which clocks are put forward and back at 02:00 standard time, `'03-31..10-27'`; `null`: never. */
  readonly summerTime: string | null;
  /**
   * The user's own record of mixed water: 8760 values, or 8760 n in equal parts of an hour. It is used as it stands, without
   * calendar; `null`: none. [m³]
   */
  readonly volumes: readonly number[] | null;
  /** Whether a valve after the heater keeps the taps near {@link valveTemperature} or below; else a hand mixes. */
  readonly mixingValve: boolean;
  /** Set temperature of the valve. [°C] */
  readonly valveTemperature: number;
  /** How far above its set temperature the valve may let the taps run. [K] */
  readonly valveAccuracy: number;
  /** Hot water must exceed the set temperature by this for the valve to control; nearer, the taps may run as hot as it is. [K] */
  readonly valveMinimumDifference: number;
  /** Cold mains. [°C] */
  readonly mains: MainsDesign;
  /** Hot water kept going round past the taps, in the house without the sun too; `null`: none. It needs a heater with a store. */
  readonly ring: RingDesign | null;
  /** From the heater, or from the ring, to the taps; its water cools between draws. `null`: taps beside the heater. */
  readonly hotPipe: HotPipeDesign | null;
}

/** Recirculation ring from heater to taps and back. */
export interface RingDesign {
  /** There and back. [m] */
  readonly length: number;
  /** Of the bare pipe. [m] */
  readonly outerDiameter: number;
  /** Bore. [m] */
  readonly innerDiameter: number;
  /** 0 for a bare pipe. [m] */
  readonly insulationThickness: number;
  /** Of the insulation. [W/(m·K)] */
  readonly insulationConductivity: number;
  /** Air around it. [°C] */
  readonly surroundings: number;
  /** Water that goes round. [m³/s] */
  readonly flow: number;
  /** Spans of whole hours in which its pump runs, by the house's clock. */
  readonly hours: readonly (readonly [from: number, to: number])[];
  /** Electricity of its pump; counted with the heater's controls. [W] */
  readonly pumpPower: number;
}

/** The longest way from heater or ring to the taps, as one pipe. */
export interface HotPipeDesign {
  /** One way. [m] */
  readonly length: number;
  /** Of the bare pipe. [m] */
  readonly outerDiameter: number;
  /** Bore. [m] */
  readonly innerDiameter: number;
  /** 0 for a bare pipe. [m] */
  readonly insulationThickness: number;
  /** Of the insulation. [W/(m·K)] */
  readonly insulationConductivity: number;
  /** Air around it. [°C] */
  readonly surroundings: number;
}
