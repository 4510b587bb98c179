/**
 * How hot water is made up: a store with burner or element of its own, a store that a boiler or a heat network warms, one with a
 * heat pump, a flow-through heater, an element in the solar tank's top, or a boiler by a coil of its own there.
 */
export type HeaterKind =
  | 'stored-gas'
  | 'stored-electric'
  | 'stored-boiler'
  | 'heat-pump'
  | 'instantaneous-gas'
  | 'instantaneous-electric'
  | 'element'
  | 'boiler-coil';

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
  /** Element, or lower end of the heater's own coil in the tank: its height and its thermostat's, as a share of the tank's height. [-] */
  readonly elementHeight: number;
  /** Boiler's coil in the tank: its upper end, as a share of the tank's height. [-] */
  readonly coilTop: number;
  /** Boiler's coil in the tank: heat that passes per kelvin between boiler water and tank. [W/K] */
  readonly coilConductance: number;
  /** Boiler's coil in the tank: mean of the boiler water in it. [°C] */
  readonly boilerTemperature: number;
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
