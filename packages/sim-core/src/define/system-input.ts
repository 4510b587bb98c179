// Made by packages/sim-core/schema/write.ts from the schema that checks a design; not written by hand.
import type { Quantity } from '../input/quantity.ts';

/** What a user writes: quantities as numbers in the unit in brackets, or as strings with a unit. Needed are `array` (panels, tilt, azimuth and the collector’s area, eta0, a1, a2), `tank.volume` and a draw; all else has a default. */
export interface SystemInput {
  /** Name for reports. Default 'solar water heating': judgement: a name for reports. */
  readonly name?: string | undefined;
  /** Panels and their plane. */
  readonly array: ArrayInput;
  /** PV modules that drive the pump, and their plane. */
  readonly pv?: PvInput | undefined;
  /** Pump and booster. */
  readonly pump?: PumpInput | undefined;
  /** Fluid and pipes. */
  readonly loop?: LoopInput | undefined;
  /** Coil in the tank. */
  readonly coil?: CoilInput | undefined;
  /** Storage tank. */
  readonly tank: TankInput;
  /** Water used, and the mains. */
  readonly draw: DrawInput;
  /** Backup heater. */
  readonly heater?: HeaterInput | undefined;
  /** Limits. */
  readonly control?: ControlInput | undefined;
}

/** Limits. */
export interface ControlInput {
  /** Who lets it run. Left out, it follows: the module is the controller, common practice, no source. */
  readonly mode?: 'power' | 'difference' | 'schedule' | undefined;
  /** Controller by temperature difference; used where the mode is `difference`. */
  readonly difference?: DifferenceInput | undefined;
  /** Spans of whole hours of the day, from and to, standard time; used where the mode is `schedule`. Default [[9,16]]: judgement: the brighter hours of a day. */
  readonly schedule?: readonly (readonly [number, number])[] | undefined;
  /** Cooling at night by a pump on the mains, against a tank that would boil in the holidays; `null`: none. Default null: judgement: the high limit is enough. */
  readonly nightCooling?: NightCoolingInput | null | undefined;
  /** Failures to play through. */
  readonly outages?: readonly OutageInput[] | undefined;
  /** Tank top temperature at which the pump is cut off; `null` for none. [°C] Default 85: lower end of common practice, no source; hard water wants it lower, which keeps the coil clean longer, for more hours in standstill. From 30 to 120. For example "120 degF". */
  readonly highLimit?: Quantity | null | undefined;
  /** Fall of the tank top below the limit before the pump may run again. [K] Default 5: judgement. From 0.5 to 40. For example "9 degF". */
  readonly highLimitHysteresis?: Quantity | undefined;
  /** Absorber temperature above which standstill in sun is called stagnation; `null`: boiling point, at most 120 °C. [°C] Left out, it follows: boiling point of the fluid at loop pressure, at most the limit that the run states. From 50 to 250. For example "120 degF". */
  readonly stagnationLimit?: Quantity | null | undefined;
}

/** Failures to play through. */
export interface OutageInput {
  /** First day, `MM-DD`. For example "07-04". */
  readonly from: string;
  /** Last day, `MM-DD`; before from it lies in the next year. For example "07-04". */
  readonly to: string;
  /** `pump`: the pump does not turn. `power`: a mains blackout; it stops a pump on the mains and every heater that needs electricity. A pump on its own module, its controller with it (judgement), does not feel it. */
  readonly kind: 'pump' | 'power';
}

/** Cooling at night by a pump on the mains, against a tank that would boil in the holidays; `null`: none. */
export interface NightCoolingInput {
  /** Top of the tank at which it starts, in the dark and with collectors colder than the tank. [°C] From 40 to 95. For example "120 degF". */
  readonly above: Quantity;
  /** Top of the tank at which it stops. [°C] From 30 to 90. For example "120 degF". */
  readonly until: Quantity;
}

/** Controller by temperature difference; used where the mode is `difference`. */
export interface DifferenceInput {
  /** Collector over tank at which the pump starts. [K] Default 6: common practice, no source. From 0.5 to 40. For example "9 degF". */
  readonly start?: Quantity | undefined;
  /** Collector over tank at which it stops. [K] Default 3: judgement: half the start. From 0 to 40. For example "9 degF". */
  readonly stop?: Quantity | undefined;
  /** Place of the collector's sensor. Default 'absorber': common practice, no source. */
  readonly collectorSensor?: 'absorber' | 'pipe' | undefined;
  /** Share of the absorber's excess over the pipe that reaches a sensor on the pipe while the fluid stands. [-] Default 0.7: judgement: on the pipe, a hand from the collector. From 0 to 1. For example "35 %". */
  readonly pipeSensorContact?: Quantity | undefined;
  /** Place of the tank's sensor as a share of the tank's height. [-] Default 0.2: judgement: beside the lower half of the coil. From 0 to 1. For example "35 %". */
  readonly tankSensorHeight?: Quantity | undefined;
  /** Once started, the pump runs at least so long, high limit and outages excepted. [s] Default 300: judgement: spares the pump some of its starts. From 0 to 3600. For example "5 min". */
  readonly minimumRunTime?: Quantity | undefined;
}

/** Backup heater. */
export interface HeaterInput {
  /** A store with burner or element, a flow-through heater, or an element in the top of the solar tank. Default 'stored-gas': judgement: the heater that the house already has. */
  readonly kind?:
    | 'stored-gas'
    | 'stored-electric'
    | 'stored-boiler'
    | 'heat-pump'
    | 'instantaneous-gas'
    | 'instantaneous-electric'
    | 'element'
    | 'boiler-coil'
    | undefined;
  /** Water in it. [m³] Left out, it follows: a common size of stored heater, common practice, no source. From 0.02 to 2. For example "80 gal". */
  readonly volume?: Quantity | undefined;
  /** Thermostat. [°C] Left out, it follows: storage temperature against legionella, HSE HSG274 part 2 (page quoting it). From 40 to 85. For example "120 degF". */
  readonly setTemperature?: Quantity | undefined;
  /** Most heat that burner or element puts into the water. [W] Left out, it follows: burner of a common stored gas heater at its efficiency, common practice, no source. From 500 to 200000. For example "40000 BTU/h". */
  readonly burnerPower?: Quantity | undefined;
  /** What it burns; `null` with gas kinds: said by the prices alone. A heat network counts as one. */
  readonly fuel?:
    | 'natural-gas'
    | 'propane'
    | 'lpg'
    | 'heating-oil'
    | 'kerosene'
    | 'wood'
    | 'wood-pellets'
    | 'district-heat'
    | null
    | undefined;
  /** Heat into the water over final energy: fuel by gross calorific value, or electricity; 1 with a heat pump, see cop. [-] Left out, it follows: recovery efficiency of atmospheric stored gas heaters, 0.75 to 0.80 (from memory). From 0.2 to 1. For example "35 %". */
  readonly burnerEfficiency?: Quantity | undefined;
  /** Heat into the water over fuel by net calorific value, as European boilers’ papers often have it; instead of burnerEfficiency, beside fuel. [-] From 0.2 to 1.11. For example "35 %". */
  readonly netEfficiency?: Quantity | undefined;
  /** Heat pump: heat over electricity, step by step; `null` with other kinds. */
  readonly cop?: CopInputByAtZero | CopInputByAtNoLift | CopInputByCarnotShare | CopInputByAirTemperatures | undefined;
  /** Heat pump: where its air comes from. The cold that it leaves in a room is not reckoned. */
  readonly airFrom?: 'outdoors' | 'room' | undefined;
  /** Electric, with resistance: what feeds it before the mains do; `null`: nothing. A season or timer holds back the mains only. */
  readonly sparePv?: SparePvInput | null | undefined;
  /** Instantaneous: least heat at which it fires. [W] Left out, it follows: least flame of older heaters, a fifth to a sixth of their most; common practice, no source. From 0 to 100000. For example "40000 BTU/h". */
  readonly minimumPower?: Quantity | undefined;
  /** Instantaneous: least rise of the water at which it fires. [K] Left out, it follows: judgement: the least power decides. From 0 to 40. For example "9 degF". */
  readonly minimumRise?: Quantity | undefined;
  /** Instantaneous: least flow through it at which it fires. [m³/s] Left out, it follows: flow switches of such heaters, of which it is near the middle (from memory). From 0 to 0.001. For example "3 L/min". */
  readonly minimumFlow?: Quantity | undefined;
  /** Electricity that controls draw all the time; it heats no water. [W] Left out, it follows: standing pilot, no electronics; judgement. From 0 to 100. For example "40000 BTU/h". */
  readonly standbyPower?: Quantity | undefined;
  /** Standby loss per kelvin over the room. [W/K] Left out, it follows: stored gas heater with an open flue (from memory). From 0 to 50. For example "4 BTU/(h degF)". */
  readonly lossCoefficient?: Quantity | undefined;
  /** Air around it. [°C] Left out, it follows: judgement: in the tank’s room. From -20 to 50. For example "120 degF". */
  readonly roomTemperature?: Quantity | undefined;
  /** Element, or lower end of the heater's own coil in the tank: its height and its thermostat's, as a share of the tank's height. [-] Left out, it follows: judgement: above the coil, two fifths over it. From 0 to 0.98. For example "35 %". */
  readonly elementHeight?: Quantity | undefined;
  /** With kind "element": water in the heater that the same house would have without the sun. [m³] Left out, it follows: a common size of stored heater, common practice, no source. From 0.02 to 2. For example "80 gal". */
  readonly baselineVolume?: Quantity | undefined;
  /** Boiler's coil in the tank: its upper end, as a share of the tank's height. [-] From 0.05 to 1. For example "35 %". */
  readonly coilTop?: Quantity | undefined;
  /** Boiler's coil in the tank: heat that passes per kelvin between boiler water and tank. [W/K] From 10 to 5000. For example "4 BTU/(h degF)". */
  readonly coilConductance?: Quantity | undefined;
  /** Boiler's coil in the tank: mean of the boiler water in it. [°C] From 40 to 95. For example "120 degF". */
  readonly boilerTemperature?: Quantity | undefined;
  /** Days on which it is switched off, first and last included: `'05-01..09-30'`. The house without the sun heats on them; empty: never off. */
  readonly offDays?: readonly string[] | undefined;
  /** Timer: spans of whole hours in which it may heat, by the house's clock (`draw.summerTime`), such as `[[5, 8], [17, 22]]`. The house without the sun has the same timer; `null`: all day. */
  readonly heatingHours?: readonly (readonly [number, number])[] | null | undefined;
}

/** Electric, with resistance: what feeds it before the mains do; `null`: nothing. A season or timer holds back the mains only. */
export interface SparePvInput {
  /** At 1000 W/m² and cells of 25 °C, in the plane of `pv`. [W] From 50 to 100000. For example "40000 BTU/h". */
  readonly peakPower: Quantity;
  /** Power lost or gained for each kelvin of the cells, as a share. [1/K] Default -0.004: crystalline silicon, −0.3 to −0.5 % a kelvin on data sheets (from memory). From -0.01 to 0.002. For example "35 %". */
  readonly temperatureCoefficient?: Quantity | undefined;
  /** Inverter, cables, dust. [-] Default 0.86: inverter, cables, dust: 14 % lost is the usual entry of yield estimates (from memory). From 0.3 to 1. For example "35 %". */
  readonly systemEfficiency?: Quantity | undefined;
  /** What the house takes before the heater gets any, all day. [W] Default 250: judgement: refrigerator, standby and some use by day. From 0 to 100000. For example "40000 BTU/h". */
  readonly houseLoad?: Quantity | undefined;
}

/** Heat pump: heat over electricity, step by step; `null` with other kinds. */
export interface CopInputByAirTemperatures {
  /** Air, rising. [°C] */
  readonly airTemperatures: readonly number[];
  /** COP at each. [-] */
  readonly values: readonly number[];
  /** Straight lines between them, or a smooth curve that overshoots no point. */
  readonly between: 'lines' | 'curve';
}

/** Heat pump: heat over electricity, step by step; `null` with other kinds. */
export interface CopInputByCarnotShare {
  /** The share. [-] From 0.1 to 0.8. For example "35 %". */
  readonly carnotShare: Quantity;
}

/** Heat pump: heat over electricity, step by step; `null` with other kinds. */
export interface CopInputByAtNoLift {
  /** At no lift. [-] From 1 to 20. For example "35 %". */
  readonly atNoLift: Quantity;
  /** Less for each kelvin of the lift. [1/K] From 0 to 0.5. For example "35 %". */
  readonly perLiftKelvin: Quantity;
}

/** Heat pump: heat over electricity, step by step; `null` with other kinds. */
export interface CopInputByAtZero {
  /** At air of 0 °C. [-] From 0.5 to 10. For example "35 %". */
  readonly atZero: Quantity;
  /** More for each kelvin of the air. [1/K] From -0.5 to 0.5. For example "35 %". */
  readonly perAirKelvin: Quantity;
}

/** Water used, and the mains. */
export interface DrawInput {
  /** Day by name: a tapping profile of EU regulation 812/2013 (3XS to XXL), or a household’s shape. */
  readonly profile?:
    | '3XS'
    | 'XXS'
    | 'XS'
    | 'S'
    | 'M'
    | 'L'
    | 'XL'
    | 'XXL'
    | 'level'
    | 'morning'
    | 'evening'
    | undefined;
  /** Mixed water at the taps on a day with factor 1; beside no volumes and no people. [m³] From 0 to 20. For example "80 gal". */
  readonly dailyVolume?: Quantity | undefined;
  /** How many live in the house; instead of dailyVolume. From 0 to 200. */
  readonly people?: number | undefined;
  /** Mixed water a head and day, beside people. [m³] Left out, it follows: judgement: showers and sinks of one person. From 0 to 1. For example "80 gal". */
  readonly volumePerPerson?: Quantity | undefined;
  /** Temperature wanted at the taps. [°C] Default 45: judgement: showers and sinks, below the scald limit of plumbing practice. From 25 to 60. For example "120 degF". */
  readonly tapTemperature?: Quantity | undefined;
  /** Flow of mixed water while a tap runs, where the profile names none; it matters to instantaneous heaters and jets. [m³/s] Default 0.0001: judgement: one shower; the flow of most large draws of profile M. From 0.000001 to 0.01. For example "3 L/min". */
  readonly flow?: Quantity | undefined;
  /** Share of the day's volume in each hour from 00:00, made to add up to 1. Shape [24]. [-] Left out, it follows: EU regulation 812/2013, Annex VII, Table 3, profile M: shares of the day’s heat by hour. */
  readonly hourlyShares?: readonly number[] | undefined;
  /** Factor on the day's water from Monday to Sunday; they need not average 1. Shape [7]. [-] Default [1,1,1,1,1,1,1]: judgement: all days alike. */
  readonly weekdayFactors?: readonly number[] | undefined;
  /** Weekday of 1 January. Default 'monday': judgement: a typical year belongs to no calendar year. */
  readonly firstWeekday?:
    | 'monday'
    | 'tuesday'
    | 'wednesday'
    | 'thursday'
    | 'friday'
    | 'saturday'
    | 'sunday'
    | undefined;
  /** Days with no draw, first and last day included: `'07-10..07-24'`; a range may pass the turn of the year. Default []: judgement: somebody is always at home. */
  readonly holidays?: readonly string[] | undefined;
  /** Days on which clocks are put forward and back at 02:00 standard time, `'03-31..10-27'`; `null`: never. Default null: clocks on standard time all year. For example "07-10..07-24". */
  readonly summerTime?: string | null | undefined;
  /** Your own record of mixed water: 8760 values from 1 January 00:00 standard time, or 8760 times a divisor of 60. [m³] */
  readonly volumes?: readonly number[] | Float64Array | undefined;
  /** Whether a valve after the heater keeps the taps near valveTemperature or below; else a hand mixes. Default true: needed after any solar tank where people wash (local code). */
  readonly mixingValve?: boolean | undefined;
  /** Set temperature of the valve. [°C] Left out, it follows: judgement: as the taps want it. From 25 to 65. For example "120 degF". */
  readonly valveTemperature?: Quantity | undefined;
  /** How far above its set temperature the valve may let the taps run. [K] Default 2: thermostatic mixing valve, EN 1111 (from memory). From 0 to 10. For example "9 degF". */
  readonly valveAccuracy?: Quantity | undefined;
  /** Hot water must exceed the set temperature by this for the valve to control; nearer, the taps may run as hot as it is. [K] Default 10: data sheets of thermostatic mixing valves, common practice, no source. From 0 to 30. For example "9 degF". */
  readonly valveMinimumDifference?: Quantity | undefined;
  /** Hot water kept going round past the taps, in the house without the sun too; `null`: none. It needs a heater with a store. */
  readonly ring?: RingInput | null | undefined;
  /** From the heater, or from the ring, to the taps; its water cools between draws. `null`: taps beside the heater. */
  readonly hotPipe?: HotPipeInput | null | undefined;
  /** Cold mains. [°C] Default 'from-weather': Burch & Christensen 2007, from the weather file. From 0 to 40. */
  readonly mains?: 'from-weather' | number | readonly number[] | MainInput | undefined;
}

/** Cold mains. [°C] */
export interface MainInput {
  /** Mean of the year. [°C] From 0 to 40. */
  readonly mean: number;
  /** Warmest day less coldest day. [K] From 0 to 40. */
  readonly swing: number;
  /** Coldest day, 1 on 1 January. Default 45, in the south 228. [d] From 1 to 365. */
  readonly coldestDay?: number | undefined;
}

/** From the heater, or from the ring, to the taps; its water cools between draws. `null`: taps beside the heater. */
export interface HotPipeInput {
  /** One way. [m] From 0.2 to 200. For example "6.5 ft". */
  readonly length: Quantity;
  /** Of the bare pipe. [m] Default 0.018: a common copper pipe to a bathroom, common practice, no source. From 0.004 to 0.1. For example "6.5 ft". */
  readonly outerDiameter?: Quantity | undefined;
  /** Bore. [m] Default 0.016: wall of 1 mm, common practice, no source. From 0.003 to 0.09. For example "6.5 ft". */
  readonly innerDiameter?: Quantity | undefined;
  /** 0 for a bare pipe. [m] Default 0.02: judgement: as thick as the pipe, which energy codes ask for. From 0 to 0.3. For example "6.5 ft". */
  readonly insulationThickness?: Quantity | undefined;
  /** Of the insulation. [W/(m·K)] Default 0.035: foam or mineral wool at 40 °C (from memory). From 0.01 to 0.2. For example "0.023 BTU/(h ft degF)". */
  readonly insulationConductivity?: Quantity | undefined;
  /** Air around it. [°C] Default 20: judgement: pipes in heated rooms. From -20 to 50. For example "120 degF". */
  readonly surroundings?: Quantity | undefined;
}

/** Hot water kept going round past the taps, in the house without the sun too; `null`: none. It needs a heater with a store. */
export interface RingInput {
  /** There and back. [m] From 1 to 2000. For example "6.5 ft". */
  readonly length: Quantity;
  /** Of the bare pipe. [m] Default 0.022: a common copper pipe of rings, common practice, no source. From 0.006 to 0.15. For example "6.5 ft". */
  readonly outerDiameter?: Quantity | undefined;
  /** Bore. [m] Default 0.02: wall of 1 mm, common practice, no source. From 0.004 to 0.14. For example "6.5 ft". */
  readonly innerDiameter?: Quantity | undefined;
  /** 0 for a bare pipe. [m] Default 0.02: judgement: as thick as the pipe, which energy codes ask for. From 0 to 0.3. For example "6.5 ft". */
  readonly insulationThickness?: Quantity | undefined;
  /** Of the insulation. [W/(m·K)] Default 0.035: foam or mineral wool at 40 °C (from memory). From 0.01 to 0.2. For example "0.023 BTU/(h ft degF)". */
  readonly insulationConductivity?: Quantity | undefined;
  /** Air around it. [°C] Default 20: judgement: pipes in heated rooms. From -20 to 50. For example "120 degF". */
  readonly surroundings?: Quantity | undefined;
  /** Water that goes round. [m³/s] Default 0.00005: judgement: some kelvins from supply to return in a house. From 0.000001 to 0.001. For example "3 L/min". */
  readonly flow?: Quantity | undefined;
  /** Spans of whole hours in which its pump runs, by the house's clock. Default [[0,24]]: judgement: all day, as hygiene asks for. */
  readonly hours?: readonly (readonly [number, number])[] | undefined;
  /** Electricity of its pump; counted with the heater's controls. [W] Default 10: small electronic pump, 5 to 15 W (from memory). From 0 to 500. For example "40000 BTU/h". */
  readonly pumpPower?: Quantity | undefined;
}

/** Storage tank. */
export interface TankInput {
  /** Water in it, sediment counted as water. [m³] From 0.02 to 50. For example "80 gal". */
  readonly volume: Quantity;
  /** Inside height. [m] Left out, it follows: height of 2.5 diameters, common practice, no source. From 0.2 to 10. For example "6.5 ft". */
  readonly height?: Quantity | undefined;
  /** Heat loss of the whole tank per kelvin over its room. [W/K] Left out, it follows: judgement: foam of a common thickness all round, a third more for fittings. From 0 to 200. For example "4 BTU/(h degF)". */
  readonly lossCoefficient?: Quantity | undefined;
  /** Air around it; with roomByMonth for what asks for one number. [°C] Left out, it follows: judgement: a cellar or utility room. From -20 to 50. For example "120 degF". */
  readonly roomTemperature?: Quantity | undefined;
  /** Equal layers of the calculation, bottom first. Default 20: convergence: doubling them moves the energy delivered by less than 1 % (tests/sim-core/year). From 4 to 400. */
  readonly nodes?: number | undefined;
  /** Vertical conductivity of water and wall together. [W/(m·K)] Left out, it follows: water column and a thin steel wall in parallel. From 0.1 to 100. For example "0.023 BTU/(h ft degF)". */
  readonly verticalConductivity?: Quantity | undefined;
  /** Whole tank at the start of the year, where no profile says something else. [°C] Left out, it follows: judgement: as its room. From 0 to 95. For example "120 degF". */
  readonly initialTemperature?: Quantity | undefined;
  /** Tank at the start of the year, equal layers bottom first, straight lines between their middles; `null`: all alike. [°C] */
  readonly initialProfile?: readonly number[] | null | undefined;
  /** Air around it month by month from January, constant in each, or the outdoor air; `null`: roomTemperature all year. [°C] */
  readonly roomByMonth?: 'outdoors' | readonly number[] | null | undefined;
  /** Pool or rooms that take heat from it; `null`: none. */
  readonly load?: LoadInput | null | undefined;
  /** A second tank before this one on the cold water: the mains enter it, and what leaves it enters this one; `null`: none. */
  readonly second?: SecondInput | null | undefined;
  /** Temperature at which the relief valve opens. [°C] Default 99: temperature and pressure relief valve, ANSI Z21.22 (read in a state code). From 60 to 120. For example "120 degF". */
  readonly reliefTemperature?: Quantity | undefined;
  /** Rated temperature of tank and lining; above it a caution is shown. [°C] Default 93: rating of common lined tanks, common practice, no source. From 40 to 120. For example "120 degF". */
  readonly ratedTemperature?: Quantity | undefined;
  /** Bore of an inlet that jets upwards and mixes; `null`: the inlet spreads the water without mixing. [m] Default null: judgement: a dip tube or plate that spreads the water. From 0.005 to 0.2. For example "6.5 ft". */
  readonly inletDiameter?: Quantity | null | undefined;
  /** Sediment on the floor: less water, and the coil in it buried. [m] Default 0: judgement: a clean tank. From 0 to 1. For example "6.5 ft". */
  readonly sedimentDepth?: Quantity | undefined;
}

/** A second tank before this one on the cold water: the mains enter it, and what leaves it enters this one; `null`: none. */
export interface SecondInput {
  /** Water in it, sediment counted as water. [m³] From 0.02 to 50. For example "80 gal". */
  readonly volume?: Quantity | undefined;
  /** Inside height. [m] From 0.2 to 10. For example "6.5 ft". */
  readonly height?: Quantity | undefined;
  /** Heat loss of the whole tank per kelvin over its room. [W/K] From 0 to 200. For example "4 BTU/(h degF)". */
  readonly lossCoefficient?: Quantity | undefined;
  /** Air around it all year; `null`: that of the first. [°C] From -20 to 50. For example "120 degF". */
  readonly roomTemperature?: Quantity | null | undefined;
  /** Equal layers of the calculation, bottom first. From 4 to 400. */
  readonly nodes?: number | undefined;
  /** Vertical conductivity of water and wall together. [W/(m·K)] From 0.1 to 100. For example "0.023 BTU/(h ft degF)". */
  readonly verticalConductivity?: Quantity | undefined;
  /** Whole tank at the start of the year, where no profile says something else. [°C] From 0 to 95. For example "120 degF". */
  readonly initialTemperature?: Quantity | undefined;
  /** Temperature at which the relief valve opens. [°C] From 60 to 120. For example "120 degF". */
  readonly reliefTemperature?: Quantity | undefined;
  /** Rated temperature of tank and lining; above it a caution is shown. [°C] From 40 to 120. For example "120 degF". */
  readonly ratedTemperature?: Quantity | undefined;
  /** Bore of an inlet that jets upwards and mixes; `null`: the inlet spreads the water without mixing. [m] Default null: judgement: a dip tube or plate that spreads the water. From 0.005 to 0.2. For example "6.5 ft". */
  readonly inletDiameter?: Quantity | null | undefined;
  /** Sediment on the floor: less water, and the coil in it buried. [m] Default 0: judgement: a clean tank. From 0 to 1. For example "6.5 ft". */
  readonly sedimentDepth?: Quantity | undefined;
  /** Coil in it; left out: as that of the first. */
  readonly coil?: CoilInput | undefined;
  /** Which coils the loop's fluid passes. Default 'series': judgement: needs neither valve nor further sensors. */
  readonly charging?: 'series' | 'in-turn' | 'first' | 'second' | undefined;
  /** Top of the first tank at which the valve leads the fluid to the second; used where charging is `in-turn`. [°C] Default 60: as hot as taps and hygiene ask for; common practice, no source. From 20 to 95. For example "120 degF". */
  readonly divertAt?: Quantity | undefined;
}

/** Pool or rooms that take heat from it; `null`: none. */
export interface LoadInput {
  /** Of its water. [°C] From 5 to 60. For example "120 degF". */
  readonly temperature: Quantity;
  /** Most that it takes. [W] From 50 to 100000. For example "40000 BTU/h". */
  readonly power: Quantity;
  /** Of its exchanger. [W/K] Default 200: judgement: a small exchanger between tank and load. From 5 to 20000. For example "4 BTU/(h degF)". */
  readonly conductance?: Quantity | undefined;
  /** It takes nothing from water colder than this. [°C] Default 45: judgement: as the taps want it; hot water goes first. From 5 to 90. For example "120 degF". */
  readonly leastTemperature?: Quantity | undefined;
  /** Where it takes its heat, as a share of the tank's height. [-] Default 0.5: judgement: the middle of the tank. From 0 to 1. For example "35 %". */
  readonly height?: Quantity | undefined;
  /** Most heat that it takes in a day from 00:00; `null`: no such limit. [J] From 0 to 10000000000. For example "5 kWh". */
  readonly dailyHeat?: Quantity | null | undefined;
  /** Days on which it takes heat, `'05-01..09-15'`; empty: all year. */
  readonly days?: readonly string[] | undefined;
}

/** Coil in it; left out: as that of the first. */
export interface CoilInput {
  /** Length of tube. [m] Default 12: judgement: smooth tube, as is common in tanks of a household’s size. From 0.5 to 200. For example "6.5 ft". */
  readonly length?: Quantity | undefined;
  /** Bore. [m] Default 0.02: judgement: smooth tube, as is common in tanks of a household’s size. From 0.004 to 0.1. For example "6.5 ft". */
  readonly innerDiameter?: Quantity | undefined;
  /** Outside of the tube. [m] Default 0.022: judgement: smooth tube, as is common in tanks of a household’s size. From 0.005 to 0.12. For example "6.5 ft". */
  readonly outerDiameter?: Quantity | undefined;
  /** Conductivity of the tube's wall. [W/(m·K)] Default 50: plain steel, handbook value (from memory). From 1 to 450. For example "0.023 BTU/(h ft degF)". */
  readonly wallConductivity?: Quantity | undefined;
  /** Resistance of scale, on the outside area. [m²·K/W] Default 0.0003: thin enamel and clean water, handbook values (from memory); a third of it for bare steel. From 0 to 0.01. For example "0.0002 m2 K/W". */
  readonly fouling?: Quantity | undefined;
  /** Mean diameter of the winding. [m] Default 0.4: judgement: coils a quarter narrower or wider stand in the tanks of houses. From 0.05 to 3. For example "6.5 ft". */
  readonly windingDiameter?: Quantity | undefined;
  /** Lower end as a share of the tank's height. [-] Default 0.05: judgement: a hand above the floor. From 0 to 0.95. For example "35 %". */
  readonly bottom?: Quantity | undefined;
  /** Upper end as a share of the tank's height. [-] Default 0.4: judgement: lower two fifths. From 0.02 to 1. For example "35 %". */
  readonly top?: Quantity | undefined;
}

/** Fluid and pipes. */
export interface LoopInput {
  /** Kind of fluid. Default 'propylene-glycol': food-grade glycol behind a single wall, common practice, no source. */
  readonly fluid?: 'propylene-glycol' | 'ethylene-glycol' | 'water' | undefined;
  /** Glycol by mass when filled, 0 to 0.6. [-] Left out, it follows: judgement: mild winters; check the freezing point against your climate. From 0 to 0.6. For example "35 %". */
  readonly glycolMassFraction?: Quantity | undefined;
  /** Top of the collectors above the gauge. [m] Default 6: judgement: two storeys from the tank to the top of the roof. From 0 to 100. For example "6.5 ft". */
  readonly staticHeight?: Quantity | undefined;
  /** Temperature at which the loop is filled. [°C] Default 10: as in the sizing of the vessel; judgement. From 1 to 60. For example "120 degF". */
  readonly fillTemperature?: Quantity | undefined;
  /** Gauge pressure at the collectors when filled; from it the boiling point follows through the year. [Pa] Left out, it follows: the higher of two makers’ manuals, at the collectors; the column of liquid down to the gauge comes on top. From 0 to 1000000. For example "20 psi". */
  readonly pressure?: Quantity | undefined;
  /** Pressure at the gauge when filled: pressure and the column of liquid up to the collectors. [Pa] Left out, it follows: pressure at the collectors and the column of liquid below them. From 0 to 2000000. For example "20 psi". */
  readonly fillPressure?: Quantity | undefined;
  /** Volume of the expansion vessel. [m³] Left out, it follows: next size sold that takes the expansion up to the fluid’s limit and what steam pushes out, EN 12828 (from memory). From 0.0001 to 10. For example "80 gal". */
  readonly vesselVolume?: Quantity | undefined;
  /** Gauge pressure of the empty vessel's gas. [Pa] Left out, it follows: the vessel holds the reserve of its size when filled, EN 12828 (from memory). From 0 to 1000000. For example "20 psi". */
  readonly vesselPrecharge?: Quantity | undefined;
  /** Gauge pressure at which the loop's relief valve opens. [Pa] Default 600000: relief valve of glycol loops, common practice, no source. From 100000 to 3000000. For example "20 psi". */
  readonly reliefPressure?: Quantity | undefined;
  /** Gauge pressure at the collectors below which air and vapour gather there and nothing circulates. [Pa] Default 0: judgement: below the air’s pressure, vents and seals let air in. From -100000 to 1000000. For example "20 psi". */
  readonly minimumPressure?: Quantity | undefined;
  /** Liquid that seeps out for as long as the gauge shows pressure. [m³/s] Default 0: judgement: a tight loop. From 0 to 0.0001. For example "3 L/min". */
  readonly leak?: Quantity | undefined;
  /** Whether mains water replaces by itself what the loop loses, what its relief valve lets out once it is below its fill pressure again. Default false: no standing connection with the mains, common practice, no source. */
  readonly makeUp?: boolean | undefined;
  /** What becomes of the fluid when the pump stops. Pressure, vessel and steam are of a closed loop only. Default 'closed': common practice, no source. */
  readonly layout?: 'closed' | 'drain-back' | 'direct' | undefined;
  /** Vessel and lift; used where the layout is `drain-back`. */
  readonly drainBack?: DrainBackInput | undefined;
  /** Collectors or outdoor pipes under this let their water run to waste, until they are warm again; used where the layout is `direct`. `null`: they never do. [°C] Default 5: judgement: before anything is at 0 °C. From 0.5 to 20. For example "120 degF". */
  readonly drainBelow?: Quantity | null | undefined;
  /** What hands the heat to the tank; with the layout `direct` it is `plate`, and only its return height counts. Default 'coil': judgement: the tank has a coil. */
  readonly exchanger?: 'coil' | 'plate' | undefined;
  /** Plate exchanger; used where exchanger is `plate`. */
  readonly plate?: PlateInput | undefined;
  /** Whether a check valve keeps the fluid from running by its own buoyancy. Default true: common practice, no source. */
  readonly checkValve?: boolean | undefined;
  /** Fluid temperature above which the glycol ages fast. [°C] Default 120: from about there glycol ages fast (a fluid maker’s technical page). From 60 to 250. For example "120 degF". */
  readonly fluidLimit?: Quantity | undefined;
  /** Pipe from tank to roof and back, both ways added. [m] Default 20: judgement: two storeys, there and back. From 1 to 500. For example "6.5 ft". */
  readonly pipeLength?: Quantity | undefined;
  /** Bore. [m] Default 0.016: a common copper tube of EN 1057. From 0.004 to 0.1. For example "6.5 ft". */
  readonly pipeInnerDiameter?: Quantity | undefined;
  /** Outside of the bare pipe. [m] Default 0.018: a common copper tube of EN 1057. From 0.005 to 0.12. For example "6.5 ft". */
  readonly pipeOuterDiameter?: Quantity | undefined;
  /** Insulation on the pipe. [m] Default 0.019: rubber foam of a common thickness, common practice, no source. From 0 to 0.2. For example "6.5 ft". */
  readonly insulationThickness?: Quantity | undefined;
  /** Conductivity of the insulation. [W/(m·K)] Default 0.042: warm rubber foam, makers’ data sheets (from memory); a tenth less when cold. From 0.01 to 0.5. For example "0.023 BTU/(h ft degF)". */
  readonly insulationConductivity?: Quantity | undefined;
  /** Loss of the pipe with brackets, valves and gaps over that of its insulated length alone. [-] Default 1.3: judgement, as for the tank: 1.2 with care at each bracket and valve, 2 and more as pipes are often found. From 1 to 10. For example "35 %". */
  readonly heatBridgeFactor?: Quantity | undefined;
  /** Heat that steam carries out of the standing array into the pipes, for each m² of collector. [W/m²] Default 120: an array that empties badly; 50 for one that empties well (IEA SHC Task 26, from memory): the safe side where it is not known. From 0 to 300. For example "800 W/m2". */
  readonly steamPower?: Quantity | undefined;
  /** Share of the pipe that is out of doors; the rest is in the tank's room. [-] Default 0.4: judgement. From 0 to 1. For example "35 %". */
  readonly outdoorShare?: Quantity | undefined;
  /** Sum of the loss coefficients of fittings and valves. [-] Default 20: judgement: a dozen elbows, a check valve, two ball valves. From 0 to 500. For example "35 %". */
  readonly fittingLoss?: Quantity | undefined;
}

/** Plate exchanger; used where exchanger is `plate`. */
export interface PlateInput {
  /** UA; from a rated point by `plateConductance`. [W/K] Default 800: judgement: full sun of some four panels with few kelvin between the sides. From 1 to 100000. For example "4 BTU/(h degF)". */
  readonly conductance?: Quantity | undefined;
  /** Tank water through it, taken from the tank's bottom. [m³/s] Default 0.00005: judgement: as much as a small loop moves. From 0.000001 to 0.01. For example "3 L/min". */
  readonly secondaryFlow?: Quantity | undefined;
  /** Where the warmed water returns, as a share of the tank's height. [-] Default 0.5: judgement: half-way up. From 0 to 1. For example "35 %". */
  readonly returnHeight?: Quantity | undefined;
  /** Pressure drop of the loop's side with water at 20 °C and ratedFlow, turbulent. [Pa] Default 5000: judgement: a small brazed exchanger. From 0 to 1000000. For example "20 psi". */
  readonly ratedPressureDrop?: Quantity | undefined;
  /** Flow of the loop's side at ratedPressureDrop. [m³/s] Default 0.00008333333333333333: judgement: a small brazed exchanger. From 0.000001 to 0.01. For example "3 L/min". */
  readonly ratedFlow?: Quantity | undefined;
}

/** Vessel and lift; used where the layout is `drain-back`. */
export interface DrainBackInput {
  /** Water in it when all has drained. [m³] From 0 to 10. For example "80 gal". */
  readonly vesselVolume?: Quantity | undefined;
  /** Its heat loss per kelvin over the tank's room. [W/K] Default 1: judgement: a small vessel with some foam. From 0 to 50. For example "4 BTU/(h degF)". */
  readonly vesselLoss?: Quantity | undefined;
  /** Top of the collectors over the vessel's level when all has drained: what the pump must lift at every start. [m] From 0 to 100. For example "6.5 ft". */
  readonly lift?: Quantity | undefined;
  /** Whether the return runs full once the collectors are: then the falling water's weight takes the lift away. Default true: judgement: a return narrow enough to run full. */
  readonly siphon?: boolean | undefined;
  /** Share of the collectors' water that hangs on in low spots. [-] Default 0.02: judgement: pipes and panels that slope. From 0 to 0.5. For example "35 %". */
  readonly shareStaying?: Quantity | undefined;
}

/** Pump and booster. */
export interface PumpInput {
  /** What turns it. Default 'booster': judgement: a module of its own. */
  readonly drive?: 'booster' | 'direct' | 'mains' | undefined;
  /** Motor; used where the drive is `direct`. */
  readonly motor?: MotorInput | undefined;
  /** Share of the module's maximum power that the booster passes to the pump. [-] Default 0.9: judgement: a plain step-down converter. From 0.1 to 1. For example "35 %". */
  readonly boosterEfficiency?: Quantity | undefined;
  /** Electrical power needed to break the pump away from standstill. [W] Default 2: invented: a small brushless circulator; on its own module at most 1.7 % short of the year’s best start (docs/theory/pump-and-control.md). From 0 to 500. For example "40000 BTU/h". */
  readonly startPower?: Quantity | undefined;
  /** Electrical power below which a running pump stops. [W] Default 1.2: invented: a small brushless circulator. From 0 to 500. For example "40000 BTU/h". */
  readonly stopPower?: Quantity | undefined;
  /** Head at rated speed with no flow. [m] Default 3: invented: a small brushless circulator. From 0.1 to 50. For example "6.5 ft". */
  readonly shutOffHead?: Quantity | undefined;
  /** Flow at rated speed with no head. [m³/s] Default 0.00016666666666666666: invented: a small brushless circulator. From 0.000001 to 0.01. For example "3 L/min". */
  readonly openFlow?: Quantity | undefined;
  /** Electrical power at rated speed with no flow. [W] Default 10: invented: a small brushless circulator. From 0.1 to 1000. For example "40000 BTU/h". */
  readonly shutOffPower?: Quantity | undefined;
  /** Electrical power at rated speed and open flow. [W] Default 16: invented: a small brushless circulator. From 0.1 to 1000. For example "40000 BTU/h". */
  readonly openFlowPower?: Quantity | undefined;
  /** The pump as measured, by rising voltage: in place of heads, flow and powers above, which then are those of the highest voltage. The pump follows a booster up to that voltage. `null`: the four numbers have to do. Default null: judgement: the plate has no more than the four numbers. */
  readonly curves?: readonly CurveInput[] | null | undefined;
  /** Voltage from which a measured pump turns on the module alone; used with curves where the drive is `direct`. [V] From 0.1 to 400. For example "17500 mV". */
  readonly startVoltage?: Quantity | undefined;
}

/** The pump as measured, by rising voltage: in place of heads, flow and powers above, which then are those of the highest voltage. The pump follows a booster up to that voltage. `null`: the four numbers have to do. */
export interface CurveInput {
  /** At the pump's terminals. [V] From 1 to 400. For example "17500 mV". */
  readonly voltage: Quantity;
  /** From the least flow to the most; heads fall. */
  readonly points: readonly PointInput[];
}

/** From the least flow to the most; heads fall. */
export interface PointInput {
  /** [m³/s] From 0 to 0.01. For example "3 L/min". */
  readonly flow: Quantity;
  /** Of the liquid pumped. [m] From 0 to 50. For example "6.5 ft". */
  readonly head: Quantity;
  /** Electrical. [W] From 0.01 to 1000. For example "40000 BTU/h". */
  readonly power: Quantity;
}

/** Motor; used where the drive is `direct`. */
export interface MotorInput {
  /** Voltage at which the pump reaches rated speed at open flow. [V] Default 12: the usual partner of a 36-cell module, common practice, no source. From 1 to 400. For example "17500 mV". */
  readonly ratedVoltage?: Quantity | undefined;
  /** Of winding and leads. [Ω] Left out, it follows: judgement: 15 % of the rated voltage is lost in the winding at rated current. From 0 to 1000. For example "1800 mohm". */
  readonly windingResistance?: Quantity | undefined;
  /** Current that the friction of bearings and brushes takes from a turning rotor; below it the pump stops. [A] Left out, it follows: judgement: a tenth of the current with no flow. From 0 to 30. For example "600 mA". */
  readonly frictionCurrent?: Quantity | undefined;
  /** Current that breaks a standing rotor away. [A] Left out, it follows: judgement: a standing rotor needs twice the friction of a turning one. From 0 to 60. For example "600 mA". */
  readonly startCurrent?: Quantity | undefined;
}

/** PV modules that drive the pump, and their plane. */
export interface PvInput {
  /** Equal modules, or strings of them, in parallel. Default 1: judgement: one module. From 1 to 20. */
  readonly modules?: number | undefined;
  /** Modules of a string, one after the other: a directly driven pump of 24 V may want two of 12. Default 1: judgement: one module. From 1 to 20. */
  readonly inSeries?: number | undefined;
  /** From the horizontal, 0 to 90. [°] Left out, it follows: judgement: module in the collectors’ plane. From 0 to 90. For example "40 deg". */
  readonly tilt?: Quantity | undefined;
  /** Clockwise from north. [°] Left out, it follows: judgement: module in the collectors’ plane. From 0 to 360. For example "40 deg". */
  readonly azimuth?: Quantity | undefined;
  /** One module. */
  readonly module?: ModuleInput | undefined;
}

/** One module. */
export interface ModuleInput {
  /** Name for reports. Default '20 W module': invented: data sheet of a common small 36-cell module. */
  readonly name?: string | undefined;
  /** Short-circuit current. [A] Default 1.24: invented: data sheet of a common small 36-cell module. From 0.01 to 30. For example "600 mA". */
  readonly shortCircuitCurrent?: Quantity | undefined;
  /** Open-circuit voltage. [V] Default 21.6: invented: data sheet of a common small 36-cell module. From 1 to 200. For example "17500 mV". */
  readonly openCircuitVoltage?: Quantity | undefined;
  /** Current at maximum power. [A] Default 1.14: invented: data sheet of a common small 36-cell module. From 0.01 to 30. For example "600 mA". */
  readonly maximumPowerCurrent?: Quantity | undefined;
  /** Voltage at maximum power. [V] Default 17.5: invented: data sheet of a common small 36-cell module. From 1 to 200. For example "17500 mV". */
  readonly maximumPowerVoltage?: Quantity | undefined;
  /** Change of short-circuit current with cell temperature. [A/K] Default 0.0007: invented: data sheet of a common small 36-cell module. From 0 to 0.1. For example "0.7 mA/K". */
  readonly currentTemperatureCoefficient?: Quantity | undefined;
  /** Change of open-circuit voltage with cell temperature, negative. [V/K] Default -0.075: invented: data sheet of a common small 36-cell module. From -1 to 0. For example "-73 mV/K". */
  readonly voltageTemperatureCoefficient?: Quantity | undefined;
  /** Cells in series. Default 36: invented: data sheet of a common small 36-cell module. From 1 to 200. */
  readonly cells?: number | undefined;
  /** Nominal operating cell temperature. [°C] Default 46: glass-front module in the open, common practice, no source. From 30 to 70. For example "120 degF". */
  readonly nominalOperatingCellTemperature?: Quantity | undefined;
  /** Current over voltage as measured at 1000 W/m² and 25 °C, from near short circuit to near open circuit: in place of the four currents and voltages above, which then follow. `null`: the plate has them. Default null: judgement: the plate has what is needed. */
  readonly ivPoints?: readonly IvPointInput[] | null | undefined;
  /** Area on which its light falls; `null`: not known, cells are taken as warm as if no power left them. [m²] Default null: not known: cells as warm as if no power left them, a little less power in full sun. From 0.001 to 20. For example "24 ft2". */
  readonly area?: Quantity | null | undefined;
}

/** Current over voltage as measured at 1000 W/m² and 25 °C, from near short circuit to near open circuit: in place of the four currents and voltages above, which then follow. `null`: the plate has them. */
export interface IvPointInput {
  /** At the terminals. [V] From 0 to 200. For example "17500 mV". */
  readonly voltage: Quantity;
  /** Out of the module. [A] From 0 to 30. For example "600 mA". */
  readonly current: Quantity;
}

/** Panels and their plane. */
export interface ArrayInput {
  /** Number of panels. From 1 to 100. */
  readonly panels: number;
  /** Panels that the fluid passes one after the other; equal rows of so many lie side by side in the flow (parallel). Default 1: judgement: all panels in parallel. From 1 to 20. */
  readonly inSeries?: number | undefined;
  /** From the horizontal, 0 to 90. [°] From 0 to 90. For example "40 deg". */
  readonly tilt: Quantity;
  /** Clockwise from north: 90 east, 180 south, 270 west. [°] From 0 to 360. For example "40 deg". */
  readonly azimuth: Quantity;
  /** Sky model: how diffuse light is spread over the sky. `haydavies` is read as `hay-davies`. Default 'perez': Perez et al. 1990, the closest of the three to measurements on tilted planes. */
  readonly skyModel?: 'perez' | 'hay-davies' | 'isotropic' | 'haydavies' | undefined;
  /** Diffuse reflectance of the ground where the weather has no column of its own, one value or twelve from January. [-] Default 0.2: grass and roofs without snow: 0.2, Liu & Jordan 1963 (from memory). From 0 to 1. For example "35 %". */
  readonly groundAlbedo?: Quantity | readonly number[] | undefined;
  /** Whose reflectance of the ground counts where the weather has a column of its own. Default 'weather': judgement: what was measured at the place. */
  readonly albedoFrom?: 'weather' | 'design' | undefined;
  /** Reflectance of snow on the ground where the weather has its depth; `null` leaves it out. [-] Default 0.6: between fresh snow of 0.8 and old snow of 0.4, handbook values (from memory). From 0 to 1. For example "35 %". */
  readonly snowAlbedo?: Quantity | null | undefined;
  /** What lies on the collectors after a snowfall, where the weather has the depth: nothing, or snow as on plates or on tubes. Default 'ignored': judgement: panels clear themselves. */
  readonly snowOnPanels?: 'ignored' | 'plate' | 'tubes' | undefined;
  /** Horizon around collectors and module, points of rising azimuth; `null` for a flat one. Default null: judgement: an open site. */
  readonly horizon?: readonly HorizonInput[] | null | undefined;
  /** Something near before the collectors (not the module); `null` for nothing. Default null: judgement: an open site. */
  readonly obstacle?: ObstacleInput | null | undefined;
  /** From side to side. [m] Left out, it follows: judgement: panels twice as long as wide, upright side by side. From 0.1 to 1000. For example "6.5 ft". */
  readonly width?: Quantity | undefined;
  /** From its lower to its upper edge, along the slope. [m] Left out, it follows: judgement: panels twice as long as wide, upright side by side. From 0.1 to 100. For example "6.5 ft". */
  readonly slopeLength?: Quantity | undefined;
  /** Wind along the collectors over that at 10 m above open ground; a station's lower or higher wind is first brought to 10 m. [-] Default 0.5: judgement: along a roof among houses half the wind of a station over open ground. From 0 to 2. For example "35 %". */
  readonly windFactor?: Quantity | undefined;
  /** One panel. */
  readonly collector: CollectorInput;
  /** Tilt of the array itself in summer, where its frame is set by hand twice a year; `null`: one tilt all year. Default null: judgement: a fixed frame. */
  readonly summerTilt?: SummerTiltInput | null | undefined;
  /** What lies over all collectors, and when; the PV module is not covered. */
  readonly covers?: readonly CoverInput[] | undefined;
  /** Further groups on the loop; none where all collectors are of one kind on one plane. Horizon, ground, snow and sky are the array's. */
  readonly groups?: readonly GroupInput[] | undefined;
}

/** Further groups on the loop; none where all collectors are of one kind on one plane. Horizon, ground, snow and sky are the array's. */
export interface GroupInput {
  /** Name for reports. */
  readonly name: string;
  /** Number of panels. From 1 to 100. */
  readonly panels: number;
  /** Panels that the fluid passes one after the other, in equal rows side by side. Default 1: judgement: all panels in parallel. From 1 to 20. */
  readonly inSeries?: number | undefined;
  /** Place along the flow, 1 to 10: groups of one stage lie side by side (parallel) and share the flow by their resistances, the fluid of one stage mixes before the next. The array itself is in stage 1. Default 1: judgement: beside the array in the flow. From 1 to 10. */
  readonly stage?: number | undefined;
  /** From the horizontal, 0 to 90. [°] From 0 to 90. For example "40 deg". */
  readonly tilt?: Quantity | undefined;
  /** Clockwise from north: 90 east, 180 south, 270 west. [°] From 0 to 360. For example "40 deg". */
  readonly azimuth?: Quantity | undefined;
  /** Something near before this group; `null` for nothing. Default null: judgement: an open site. */
  readonly obstacle?: ObstacleInput | null | undefined;
  /** Share of the light that gets to the panels: less than 1 under a tree, or behind glass gone blind. [-] Default 1: judgement: nothing over the panels. From 0 to 1. For example "35 %". */
  readonly lightShare?: Quantity | undefined;
  /** From side to side. [m] From 0.1 to 1000. For example "6.5 ft". */
  readonly width?: Quantity | undefined;
  /** From its lower to its upper edge, along the slope. [m] From 0.1 to 100. For example "6.5 ft". */
  readonly slopeLength?: Quantity | undefined;
  /** One panel. */
  readonly collector?: CollectorInput | undefined;
}

/** What lies over all collectors, and when; the PV module is not covered. */
export interface CoverInput {
  /** First and last day, `'07-10..07-24'`; may pass the turn of the year. For example "07-10..07-24". */
  readonly days: string;
  /** Share of the light that still gets to the panels: 0 under a sheet, some 0.3 under shade cloth. [-] Default 0: judgement: a sheet that lets nothing through. From 0 to 1. For example "35 %". */
  readonly lightShare?: Quantity | undefined;
}

/** Tilt of the array itself in summer, where its frame is set by hand twice a year; `null`: one tilt all year. */
export interface SummerTiltInput {
  /** From the horizontal, 0 to 90. [°] From 0 to 90. For example "40 deg". */
  readonly tilt: Quantity;
  /** First and last day with it, `'04-01..09-30'`; may pass the turn of the year. For example "07-10..07-24". */
  readonly days: string;
  /** Whether the PV module is on the same frame and turns with it. Default true: judgement: module and collectors on one frame. */
  readonly withModule?: boolean | undefined;
}

/** One panel. */
export interface CollectorInput {
  /** Name for reports. Default 'flat-plate collector': judgement: a name for reports. */
  readonly name?: string | undefined;
  /** Area of one panel to which eta0, a1 and a2 refer: gross or aperture, as the test report says. [m²] From 0.1 to 20. For example "24 ft2". */
  readonly area: Quantity;
  /** Zero-loss efficiency at normal incidence: that of the beam, η0,b, once defined. Where eta0Basis says that the report's is η0,hem, `defineSystem` turns it into η0,b and says so. [-] From 0.1 to 1. For example "35 %". */
  readonly eta0: Quantity;
  /** What the report's eta0 is: `beam`, η0,b; `hemispherical`, η0,hem = η0,b (0.85 + 0.15 K_d), ISO 9806:2017. A design as defined always holds `beam`. Default 'beam': judgement: η0,b, which ISO 9806:2017 states first; where yours is η0,hem, say so: it is some 1 to 3 % lower. */
  readonly eta0Basis?: 'beam' | 'hemispherical' | undefined;
  /** Linear heat loss coefficient. [W/(m²·K)] From 0.2 to 40. For example "0.65 BTU/(h ft2 degF)". */
  readonly a1: Quantity;
  /** Quadratic heat loss coefficient. [W/(m²·K²)] From 0 to 0.2. For example "0.014 W/(m2 K2)". */
  readonly a2: Quantity;
  /** Growth of a1 with wind, counted from 3 m/s. [J/(m³·K)] Default 0: test report without wind terms. From 0 to 10. For example "0.5 J/(m3 K)". */
  readonly a3?: Quantity | undefined;
  /** Share of the sky's long-wave deficit that the absorber takes, day and night. `null` for a glazed collector whose report has none: then its rated losses hold the sky's share by day, and skyCoefficient stands for it at night. [-] Left out, it follows: glazed: by day the rated losses hold the sky’s share, at night skyCoefficient stands for it. From 0 to 1. For example "35 %". */
  readonly a4?: Quantity | null | undefined;
  /** Fall of eta0 with wind, counted from 3 m/s. [s/m] Default 0: test report without wind terms. From 0 to 0.2. For example "0.02 s/m". */
  readonly a6?: Quantity | undefined;
  /** Fall of a4 with wind, counted from 3 m/s; only with a4. [s/m] Default 0: test report without wind terms. From 0 to 0.2. For example "0.02 s/m". */
  readonly a7?: Quantity | undefined;
  /** Loss with the fourth power of the difference from the air. A run does not count it: 0, or left out. [W/(m²·K⁴)] From 0 to 0. */
  readonly a8?: number | undefined;
  /** Stagnation temperature that the report states, at 1000 W/m² and 30 °C. The run goes by the coefficients, which may fall 30 K short of it; cautions go by this one. Left out: not stated. [°C] From 60 to 400. For example "120 degF". */
  readonly stagnationTemperature?: Quantity | undefined;
  /** Whether a cover lies over the absorber. Default true: judgement: one cover, as on most panels that heat water. */
  readonly glazed?: boolean | undefined;
  /** Incidence angle modifier of the beam; that of diffuse light follows by integration. Default {'b0':0.1}: single glazing: b0 of 0.10, Duffie & Beckman, Solar Engineering of Thermal Processes, §6.17 (from memory). */
  readonly incidenceModifier?:
    | IncidenceModifierInputByB0
    | IncidenceModifierInputByAngles
    | IncidenceModifierInputByCovers
    | IncidenceModifierInputByTransversal
    | undefined;
  /** Effective heat capacity with fluid, a5 of ISO 9806. [J/(m²·K)] Default 8000: judgement: copper plate and tubes, their fluid, half of one glass. From 1000 to 60000. For example "8 kJ/(m2 K)". */
  readonly heatCapacity?: Quantity | undefined;
  /** Share of heatCapacity that is left when the fluid has boiled out. [-] Left out, it follows: judgement: heatCapacity less that of the liquid in the panel, at least 0.3 of it. From 0.1 to 1. For example "35 %". */
  readonly dryCapacityShare?: Quantity | undefined;
  /** Share of the sky's long-wave deficit that cools the absorber at night; equals a4 where that is given. [-] Left out, it follows: judgement: share of the cover’s heat loss to the night sky that the absorber makes good, ε a/(a + 15) with a = a1 without the wind of the test. From 0 to 1. For example "35 %". */
  readonly skyCoefficient?: Quantity | undefined;
  /** Liquid in one panel. [m³] Left out, it follows: judgement: a harp of thin risers, by the area. From 0 to 0.1. For example "80 gal". */
  readonly fluidContent?: Quantity | undefined;
  /** Pressure drop of one panel with water at 20 °C and ratedFlow. [Pa] Default 1000: judgement: parallel risers between two headers. From 0 to 100000. For example "20 psi". */
  readonly ratedPressureDrop?: Quantity | undefined;
  /** Flow through one panel at which ratedPressureDrop was measured. [m³/s] Default 0.000033333333333333335: judgement: a common test flow for a panel of this kind. From 0.000001 to 0.001. For example "3 L/min". */
  readonly ratedFlow?: Quantity | undefined;
}

/** Incidence angle modifier of the beam; that of diffuse light follows by integration. */
export interface IncidenceModifierInputByTransversal {
  /** By the angle across the tubes; values above 1 are common. */
  readonly transversal: TransversalInput;
  /** By the angle along the tubes. */
  readonly longitudinal: LongitudinalInput;
  /** How the tubes lie in the plane: up the slope, or level across it. */
  readonly tubes: 'upright' | 'level';
}

/** By the angle along the tubes. */
export interface LongitudinalInput {
  /** Incidence angles, rising from 0. [°] */
  readonly angles: readonly number[];
  /** Modifier at each angle; 1 at 0°. [-] */
  readonly values: readonly number[];
}

/** By the angle across the tubes; values above 1 are common. */
export interface TransversalInput {
  /** Incidence angles, rising from 0. [°] */
  readonly angles: readonly number[];
  /** Modifier at each angle; 1 at 0°. [-] */
  readonly values: readonly number[];
}

/** Incidence angle modifier of the beam; that of diffuse light follows by integration. */
export interface IncidenceModifierInputByCovers {
  /** Equal plates one over the other, 1 or 2. From 1 to 2. */
  readonly covers: number;
  /** n of the plate; some 1.526 for glass. [-] From 1.05 to 3. For example "35 %". */
  readonly refractiveIndex: Quantity;
  /** K, extinction coefficient: some 4 for clear white glass, 32 for greenish. [1/m] From 0 to 500. For example "0.04 cm^-1". */
  readonly extinction: Quantity;
  /** L, of one plate. [m] From 0 to 0.05. For example "6.5 ft". */
  readonly thickness: Quantity;
}

/** Incidence angle modifier of the beam; that of diffuse light follows by integration. */
export interface IncidenceModifierInputByAngles {
  /** Incidence angles, rising from 0. [°] */
  readonly angles: readonly number[];
  /** Modifier at each angle; 1 at 0°. [-] */
  readonly values: readonly number[];
}

/** Incidence angle modifier of the beam; that of diffuse light follows by integration. */
export interface IncidenceModifierInputByB0 {
  /** b0 ≥ 0. [-] From 0 to 1. For example "35 %". */
  readonly b0: Quantity;
}

/** Something near before the collectors (not the module); `null` for nothing. */
export interface ObstacleInput {
  /** From the middle of the array's lower edge to its middle, level. [m] From 0.05 to 1000. For example "6.5 ft". */
  readonly distance: Quantity;
  /** Across the line of sight. [m] From 0.05 to 1000. For example "6.5 ft". */
  readonly width: Quantity;
  /** Of its top above the array's lower edge; it hides all below. [m] From 0.05 to 500. For example "6.5 ft". */
  readonly height: Quantity;
  /** Direction in which it is seen from the array, clockwise from north. [°] From 0 to 360. For example "40 deg". */
  readonly azimuth: Quantity;
}

/** Horizon around collectors and module, points of rising azimuth; `null` for a flat one. */
export interface HorizonInput {
  /** Clockwise from north, 0 to below 360. [°] From 0 to 360. For example "40 deg". */
  readonly azimuth: Quantity;
  /** Above the level, 0 to 90. [°] From 0 to 90. For example "40 deg". */
  readonly altitude: Quantity;
}
