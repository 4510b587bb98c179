import type { Site, WeatherAssumption } from '@noonloop/weather-io';
import type { SystemDesign } from '../design/design.ts';
import type { Saying } from '../input/saying.ts';
import type { LoopYear } from './loop-result.ts';
import type { RunNotice } from './notice-codes.ts';
import type { BalancePart, PartBalance } from './part-balance.ts';
import type { RunAssumptionCode } from './run-assumptions.ts';
import type { SecondTankYear } from './second-tank-result.ts';
import type { RunSteps } from './step-result.ts';

export type { LoopYear } from './loop-result.ts';
export { NOTICE_CODES, type NoticeCode, type RunNotice } from './notice-codes.ts';
export type { BalancePart, PartBalance } from './part-balance.ts';
export type { SecondTankColumns, SecondTankYear } from './second-tank-result.ts';
export type { RunSteps, StepColumns } from './step-result.ts';

/**
 * Hourly columns of a run, each of 8760 values; index 0 is the hour from 00:00 on 1 January, local standard time.
 * Energies are sums over the hour, temperatures as said at each.
 */
export interface RunColumns {
  /** Hemispherical irradiance on the collector plane, mean. [W/m²] */
  readonly irradiance: Float64Array;
  /** Irradiance on the PV module's plane, mean. [W/m²] */
  readonly pvIrradiance: Float64Array;
  /** Outdoor air. [°C] */
  readonly ambientTemperature: Float64Array;
  /** Hottest part of the absorber, highest in the hour. [°C] */
  readonly absorberTemperature: Float64Array;
  /** Coldest part of the absorber, lowest in the hour. [°C] */
  readonly absorberMinimumTemperature: Float64Array;
  /** Fluid leaving the array, mean over the time that the pump runs; the absorber's outlet end where it does not. [°C] */
  readonly collectorOutletTemperature: Float64Array;
  /** Top node of the tank at the end of the hour. [°C] */
  readonly tankTopTemperature: Float64Array;
  /** Hottest node of the tank, highest in the hour. [°C] */
  readonly tankMaximumTemperature: Float64Array;
  /** Bottom node of the tank at the end of the hour. [°C] */
  readonly tankBottomTemperature: Float64Array;
  /** Mean of the tank at the end of the hour. [°C] */
  readonly tankMeanTemperature: Float64Array;
  /** Volume flow in the collector loop, mean over the hour, standstill included. [m³/s] */
  readonly loopFlow: Float64Array;
  /** Share of the hour in which the pump moves fluid, 0 to 1. [-] */
  readonly pumpRunning: Float64Array;
  /** Energy that the turning pump takes from its modules, the booster's loss in it; 0 with the mains. [J] */
  readonly pumpPvEnergy: Float64Array;
  /** Electricity that the pump takes from the mains; 0 on its own modules. [J] */
  readonly pumpElectricity: Float64Array;
  /** Share of the hour in which sun falls on the collectors ({@link RunResult.sunThreshold}) and no fluid moves, 0 to 1. [-] */
  readonly noFlowInSun: Float64Array;
  /** Share of the hour in stagnation: sun, no flow, absorber above {@link RunResult.stagnationLimit}. [-] */
  readonly stagnation: Float64Array;
  /** Share of the hour in which fluid has boiled out of the collectors; the loop does not circulate. [-] */
  readonly boiling: Float64Array;
  /** Share of the hour in which the pump would run and the high limit of the tank keeps it off. [-] */
  readonly highLimit: Float64Array;
  /** Heat that the fluid carries out of the array, less what it carries in. [J] */
  readonly collectorHeat: Float64Array;
  /** Heat lost by the pipes of the loop. [J] */
  readonly pipeLoss: Float64Array;
  /** Heat from the coil into the tank; negative when the loop cools it. [J] */
  readonly coilHeat: Float64Array;
  /** Heat that the coil takes back out of the tank, summed over the steps in which the loop cools it; in {@link coilHeat} with a minus. [J] */
  readonly heatGivenBack: Float64Array;
  /** Heat lost by the tank to its room. [J] */
  readonly tankLoss: Float64Array;
  /** Heat that a pool or rooms take out of the tank. [J] */
  readonly loadHeat: Float64Array;
  /**
   * Heat that the draw takes out of the solar tank, above mains temperature: the energy delivered. With an element in that tank
   * less what the element gave it in the hour, so that the year's sum is the sun's; it may be negative in an hour. [J]
   */
  readonly solarHeat: Float64Array;
  /** Flow by buoyancy alone where there is no check valve, mean over the hour; negative against the pump's direction. [m³/s] */
  readonly thermosiphonFlow: Float64Array;
  /** Heat that this flow takes from the tank; negative where it brings some. [J] */
  readonly thermosiphonHeat: Float64Array;
  /** Loop pressure at the gauge at the end of the hour. [Pa gauge] */
  readonly loopPressure: Float64Array;
  /** Highest loop pressure at the gauge in the hour. [Pa gauge] */
  readonly loopMaximumPressure: Float64Array;
  /** Liquid let out by the loop's relief valve. [m³] */
  readonly loopReliefVolume: Float64Array;
  /** Share of the hour in which the pump would run and the loop has too little pressure to circulate. [-] */
  readonly lowPressure: Float64Array;
  /** Glycol by mass in the loop at the end of the hour. [-] */
  readonly glycolMassFraction: Float64Array;
  /** Freezing point of the loop's fluid at the end of the hour. [°C] */
  readonly freezingPoint: Float64Array;
  /** Coldest of the outdoor pipes, lowest in the hour. [°C] */
  readonly pipeMinimumTemperature: Float64Array;
  /** Water let out by the tank's relief valve. [m³] */
  readonly reliefVolume: Float64Array;
  /** Heat let out with it, above mains temperature. [J] */
  readonly reliefHeat: Float64Array;
  /** Cold mains. [°C] */
  readonly mainsTemperature: Float64Array;
  /** Mixed water used at the taps. [m³] */
  readonly tapVolume: Float64Array;
  /** Hot water taken from the heater for it (through the solar tank), and for what cooled in the pipe to the taps. [m³] */
  readonly hotVolume: Float64Array;
  /** Heat asked for at the taps, above mains. [J] */
  readonly tapHeatAsked: Float64Array;
  /** Part of {@link hotVolume} that passed an instantaneous heater that did not fire though it might, whether warm enough or not. [m³] */
  readonly unfiredVolume: Float64Array;
  /** Heat that water lacked which passed unheated and colder than the taps want: part of what was asked and not got. [J] */
  readonly unfiredShortfall: Float64Array;
  /** Part of {@link hotVolume} that left the heater, or a tank with an element, more than 1 K below 60 °C. [m³] */
  readonly undisinfectedVolume: Float64Array;
  /** Heat that came out at the taps, above mains. [J] */
  readonly tapHeat: Float64Array;
  /**
   * Highest temperature that the taps can run at: what the mixing valve lets through by its accuracy and least difference, or
   * the heater's outlet where there is none. [°C]
   */
  readonly tapTemperature: Float64Array;
  /** Heat that the backup heater's burner or element puts into the water, with the solar system. [J] */
  readonly heaterHeat: Float64Array;
  /**
   * Final energy of the backup heater's carrier (`design.heater.carrier`), with the solar system: fuel by gross calorific value,
   * heat from a network, or electricity from the mains. [J]
   */
  readonly heaterFuel: Float64Array;
  /** Electricity that the backup heater takes from the house's spare PV, besides {@link heaterFuel}. [J] */
  readonly heaterPvEnergy: Float64Array;
  /** Standby loss of the backup heater, with the solar system. [J] */
  readonly heaterLoss: Float64Array;
  /** Heat lost by the recirculation ring while its pump runs, and put back after its rests, with the solar system. [J] */
  readonly ringLoss: Float64Array;
  /** Heat lost by the pipe from heater or ring to the taps, in hot water that the taps do not use, with the solar system. [J] */
  readonly hotPipeLoss: Float64Array;
  /** Electricity that the backup heater's controls and the pump of a ring draw besides {@link heaterFuel}; it heats no water. [J] */
  readonly heaterElectricity: Float64Array;
  /** Heat that the baseline heater gives the same house without the solar system. [J] */
  readonly baselineHeat: Float64Array;
  /** Final energy of the baseline heater's carrier (`design.baseline.carrier`), without the solar system. [J] */
  readonly baselineFuel: Float64Array;
  /** Electricity that the baseline heater's controls and the pump of a ring draw besides {@link baselineFuel}. [J] */
  readonly baselineElectricity: Float64Array;
}

/** What one group of collectors did in a year. */
export interface GroupYear {
  /** Of the group; that of its collector for the array itself. */
  readonly name: string;
  /** [m²] */
  readonly area: number;
  /** Light that got to it. [J] */
  readonly irradiation: number;
  /** Carried out of it by the fluid, less what it carried in. [J] */
  readonly heat: number;
}

/** One simulated year. */
export interface RunResult {
  /** Groups of the array in the order of the flow; left out where it is one. */
  readonly groups?: readonly GroupYear[];
  /** What a second tank did; left out where there is none. */
  readonly secondTank?: SecondTankYear;
  /** The design with every default written out. */
  readonly design: SystemDesign;
  /** Where the weather was taken. */
  readonly site: Site;
  /** File or label of the weather. */
  readonly weatherSource: string;
  /** What the weather’s reader assumed. */
  readonly weatherAssumptions: readonly WeatherAssumption[];
  /** What the run assumed about the weather; `@noonloop/reports` has the sentences. */
  readonly assumptions: readonly Saying<RunAssumptionCode>[];
  /** Hourly columns. */
  readonly columns: RunColumns;
  /** Tank nodes at the end of each hour, bottom first; empty unless asked for. Shape [8760 × nodes]. [°C] */
  readonly tankNodes: Float64Array;
  /** The days asked for (`stepDays`) step by step; left out where none were. */
  readonly steps?: RunSteps;
  /** Steps in an hour with sun or draw. */
  readonly stepsPerHour: number;
  /** Absorber temperature above which standstill in sun counts as stagnation. [°C] */
  readonly stagnationLimit: number;
  /** Irradiance on the collector plane from which sun is said to fall on it. [W/m²] */
  readonly sunThreshold: number;
  /** Freezing point of the loop's fluid as filled. [°C] */
  readonly freezingPoint: number;
  /** What the year did to the loop's fluid and pressure. */
  readonly loop: LoopYear;
  /** Energy balance of each part. */
  readonly balance: Readonly<Record<BalancePart, PartBalance>>;
  /** What was clamped, extrapolated or left out. */
  readonly notices: readonly RunNotice[];
}
