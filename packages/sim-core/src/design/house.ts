import type { MainsDesign } from './mains.ts';

/** Tapping profiles of EU regulation 812/2013, from the smallest. */
export type TappingName = '3XS' | 'XXS' | 'XS' | 'S' | 'M' | 'L' | 'XL' | 'XXL';

/** Shapes of a household's day. */
export type HouseholdName = 'level' | 'morning' | 'evening';

/** Names of days that a draw may follow. */
export type DrawProfileName = TappingName | HouseholdName;

/** Solar storage tank. */
export interface TankDesign {
  /** Water in it, sediment counted as water. [m³] */
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
  /** Bore of a mains inlet that jets upwards and mixes; `null`: the inlet spreads the water without mixing. [m] */
  readonly inletDiameter: number | null;
  /** Sediment on the floor: less water, and the coil in it buried. [m] */
  readonly sedimentDepth: number;
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

/**
 * How hot water is made up: a store with burner or element of its own, a store that a boiler or a heat network warms, one with a
 * heat pump, a flow-through heater, or an element in the solar tank's top.
 */
export type HeaterKind =
  | 'stored-gas'
  | 'stored-electric'
  | 'stored-boiler'
  | 'heat-pump'
  | 'instantaneous-gas'
  | 'instantaneous-electric'
  | 'element';

/** What a heater is fed with: gas, another fuel, heat from a network, electricity. */
export type EnergyCarrier = 'gas' | 'fuel' | 'heat' | 'electricity';

/** What a burner may burn, or a heat network bring. */
export type HeaterFuel =
  | 'natural-gas'
  | 'propane'
  | 'lpg'
  | 'heating-oil'
  | 'kerosene'
  | 'wood'
  | 'wood-pellets'
  | 'district-heat';

/** COP over the air that a heat pump takes heat from: COP = atZero + perAirKelvin T_air. */
export interface CopOverAir {
  /** At air of 0 °C. [-] */
  readonly atZero: number;
  /** More for each kelvin of the air. [1/K] */
  readonly perAirKelvin: number;
}

/** COP over the lift from air to water: COP = atNoLift − perLiftKelvin (T_water − T_air). */
export interface CopOverLift {
  /** At no lift. [-] */
  readonly atNoLift: number;
  /** Less for each kelvin of the lift. [1/K] */
  readonly perLiftKelvin: number;
}

/** COP as a share of Carnot's: COP = carnotShare (T_water + 273.15)/(T_water − T_air). */
export interface CopOfCarnot {
  /** The share. [-] */
  readonly carnotShare: number;
}

/** COP by points over the air; beyond them the end values. */
export interface CopByPoints {
  /** Air, rising. [°C] */
  readonly airTemperatures: readonly number[];
  /** COP at each. [-] */
  readonly values: readonly number[];
  /** Straight lines between them, or a smooth curve that overshoots no point. */
  readonly between: 'lines' | 'curve';
}

/** Any of them: heat into the water over electricity. */
export type CopCurve = NonNullable<HeaterDesign['cop']>;

/** Modules of the house that feed an electric heater with what the house does not use; not those of the pump. */
export interface SparePvDesign {
  /** At 1000 W/m² and cells of 25 °C, in the plane of `pv`. [W] */
  readonly peakPower: number;
  /** Power lost or gained for each kelvin of the cells, as a share. [1/K] */
  readonly temperatureCoefficient: number;
  /** Inverter, cables, dust. [-] */
  readonly systemEfficiency: number;
  /** What the house takes before the heater gets any, all day. [W] */
  readonly houseLoad: number;
}

/** Heater after the solar tank, or element in it; fields that its kind has no use for are 0. */
export interface HeaterDesign {
  /** See {@link HeaterKind}. */
  readonly kind: HeaterKind;
  /** What it burns or draws; follows from the kind. */
  readonly carrier: EnergyCarrier;
  /** Water in it. [m³] */
  readonly volume: number;
  /** Thermostat. [°C] */
  readonly setTemperature: number;
  /** Most heat that burner or element puts into the water. [W] */
  readonly burnerPower: number;
  /** What it burns; `null` with gas kinds: said by the prices alone. A heat network counts as one. */
  readonly fuel: HeaterFuel | null;
  /** Heat into the water over final energy: fuel by gross calorific value, or electricity; 1 with a heat pump, see {@link cop}. [-] */
  readonly burnerEfficiency: number;
  /** Heat pump: heat over electricity, step by step; `null` with other kinds. */
  readonly cop: CopOverAir | CopOverLift | CopOfCarnot | CopByPoints | null;
  /** Heat pump: where its air comes from. The cold that it leaves in a room is not reckoned. */
  readonly airFrom: 'outdoors' | 'room';
  /** Electric, with resistance: what feeds it before the mains do; `null`: nothing. A season or timer holds back the mains only. */
  readonly sparePv: SparePvDesign | null;
  /** Instantaneous: least heat at which it fires. [W] */
  readonly minimumPower: number;
  /** Instantaneous: least rise of the water at which it fires. [K] */
  readonly minimumRise: number;
  /** Instantaneous: least flow through it at which it fires. [m³/s] */
  readonly minimumFlow: number;
  /** Electricity that controls draw all the time; it heats no water. [W] */
  readonly standbyPower: number;
  /** Standby loss per kelvin over the room. [W/K] */
  readonly lossCoefficient: number;
  /** Air around it. [°C] */
  readonly roomTemperature: number;
  /** Element: its height and its thermostat's, as a share of the solar tank's height. [-] */
  readonly elementHeight: number;
  /**
   * Days on which it is switched off, first and last included: `'05-01..09-30'`. The house without the sun heats on them; empty:
   * never off.
   */
  readonly offDays: readonly string[];
  /**
   * Timer: spans of whole hours in which it may heat, by the house's clock (`draw.summerTime`), such as `[[5, 8], [17, 22]]`. The
   * house without the sun has the same timer; `null`: all day.
   */
  readonly heatingHours: readonly (readonly [from: number, to: number])[] | null;
}
