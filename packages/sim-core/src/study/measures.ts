/** The key figures of a run, by month and year: the one place where columns become sums. */
import { MONTH_STARTS } from '../physics/draw/calendar.ts';
import type { RunColumns, RunResult } from '../year/result.ts';

/** Numbers of one month or of the year. What each means in full: `DEFINITIONS` of the reports. */
export interface PeriodSummary {
  /** Heat that the draw took out of the solar tank, above mains. [J] */
  readonly deliveredEnergy: number;
  /** Sun, no flow, absorber above the stagnation limit. [h] */
  readonly stagnationHours: number;
  /** Hottest node of the tank. [°C] */
  readonly peakTankTemperature: number;
  /** Hour of the year of {@link peakTankTemperature}, the first of equals, 0 to 8759. [h] */
  readonly peakTankHour: number;
  /**
   * Share of the heat asked for at the taps that the sun made, day by day at most all of it; `null` where none was asked for,
   * 0 to 1. [-]
   */
  readonly sunShare: number | null;
  /** Delivered over delivered and burner's heat; `null` where both are 0. [-] */
  readonly solarFraction: number | null;
  /** 1 − fuel with over fuel without; `null` where nothing is burnt without. [-] */
  readonly fuelSaving: number | null;
  /** Fuel without less fuel with, gross calorific value. [J] */
  readonly fuelSaved: number;
  /** Fuel with the solar system. [J] */
  readonly heaterFuel: number;
  /** Fuel without the solar system. [J] */
  readonly baselineFuel: number;
  /** Burner's heat into the water, with the solar system. [J] */
  readonly heaterHeat: number;
  /** Burner's heat into the water, without the solar system. [J] */
  readonly baselineHeat: number;
  /** The pump moves fluid. [h] */
  readonly pumpHours: number;
  /** Taken by the pump from the mains. [J] */
  readonly pumpElectricity: number;
  /** Taken by the controls of the backup heater from the mains, besides {@link heaterFuel}. [J] */
  readonly heaterElectricity: number;
  /** The same without the solar system. [J] */
  readonly baselineElectricity: number;
  /** Fluid has boiled out of the collectors. [h] */
  readonly boilingHours: number;
  /** The pump would run and the loop has too little pressure. [h] */
  readonly lowPressureHours: number;
  /** Sun on the collectors, no fluid moves. [h] */
  readonly noFlowHours: number;
  /** The pump would run and the high limit keeps it off. [h] */
  readonly highLimitHours: number;
  /** Hottest part of the absorber. [°C] */
  readonly hottestAbsorber: number;
  /** Hour of the year of {@link hottestAbsorber}, 0 to 8759. [h] */
  readonly hottestAbsorberHour: number;
  /** Coldest part of the absorber. [°C] */
  readonly coldestAbsorber: number;
  /** Hour of the year of {@link coldestAbsorber}, 0 to 8759. [h] */
  readonly coldestAbsorberHour: number;
  /** Mixed water used at the taps. [m³] */
  readonly tapVolume: number;
  /** Hot water drawn for it. [m³] */
  readonly hotVolume: number;
  /** Heat that the taps asked for, above mains. [J] */
  readonly tapHeatAsked: number;
  /** Heat that came out at the taps, above mains. [J] */
  readonly tapHeat: number;
  /** Sunlight on the whole array. [J] */
  readonly irradiation: number;
  /** Sunlight on the array less {@link collectorHeat}. [J] */
  readonly collectorLoss: number;
  /** Heat carried out of the array by the fluid. [J] */
  readonly collectorHeat: number;
  /** Lost by the pipes of the loop. [J] */
  readonly pipeLoss: number;
  /** From the coil into the tank. [J] */
  readonly coilHeat: number;
  /** Taken back out of the tank by the coil. [J] */
  readonly heatGivenBack: number;
  /** Lost by the solar tank. [J] */
  readonly tankLoss: number;
  /** Standby loss of the backup heater. [J] */
  readonly heaterLoss: number;
  /** Fuel less the heat that it put into water. [J] */
  readonly burnerLoss: number;
  /** Water let out by the tank's relief valve. [m³] */
  readonly reliefVolume: number;
  /** Fluid let out by the loop's relief valve. [m³] */
  readonly loopReliefVolume: number;
  /** Heat let out by the tank's relief valve. [J] */
  readonly reliefHeat: number;
}

/** Name of a key figure. */
export type Measure = keyof PeriodSummary;

/** Unit of every key figure; its keys are the names that studies take as measures. */
export const MEASURE_UNITS: Readonly<Record<Measure, string>> = {
  deliveredEnergy: 'J',
  stagnationHours: 'h',
  peakTankTemperature: '°C',
  peakTankHour: 'h',
  sunShare: '-',
  solarFraction: '-',
  fuelSaving: '-',
  fuelSaved: 'J',
  heaterFuel: 'J',
  baselineFuel: 'J',
  heaterHeat: 'J',
  baselineHeat: 'J',
  pumpHours: 'h',
  pumpElectricity: 'J',
  heaterElectricity: 'J',
  baselineElectricity: 'J',
  boilingHours: 'h',
  lowPressureHours: 'h',
  noFlowHours: 'h',
  highLimitHours: 'h',
  hottestAbsorber: '°C',
  hottestAbsorberHour: 'h',
  coldestAbsorber: '°C',
  coldestAbsorberHour: 'h',
  tapVolume: 'm³',
  hotVolume: 'm³',
  tapHeatAsked: 'J',
  tapHeat: 'J',
  irradiation: 'J',
  collectorLoss: 'J',
  collectorHeat: 'J',
  pipeLoss: 'J',
  coilHeat: 'J',
  heatGivenBack: 'J',
  tankLoss: 'J',
  heaterLoss: 'J',
  burnerLoss: 'J',
  reliefVolume: 'm³',
  loopReliefVolume: 'm³',
  reliefHeat: 'J',
};

/** Key figures that every row has. */
export const DEFAULT_MEASURES = [
  'deliveredEnergy',
  'solarFraction',
  'fuelSaving',
  'fuelSaved',
  'heaterFuel',
  'pumpHours',
  'stagnationHours',
  'peakTankTemperature',
  'hottestAbsorber',
  'coldestAbsorber',
  'tapHeatAsked',
  'tapHeat',
] as const satisfies readonly Measure[];

/** Name of a key figure that every row has. */
export type DefaultMeasure = (typeof DEFAULT_MEASURES)[number];

/** Key figures of a run. */
export interface PeriodSummaries {
  /** January first. Shape [12]. */
  readonly months: readonly PeriodSummary[];
  /** Sums of {@link months} in order, and extremes over them. */
  readonly year: PeriodSummary;
}

/** Sums that come straight from one column. */
const SUMS = {
  deliveredEnergy: 'solarHeat',
  stagnationHours: 'stagnation',
  heaterFuel: 'heaterFuel',
  baselineFuel: 'baselineFuel',
  heaterHeat: 'heaterHeat',
  baselineHeat: 'baselineHeat',
  pumpHours: 'pumpRunning',
  pumpElectricity: 'pumpElectricity',
  heaterElectricity: 'heaterElectricity',
  baselineElectricity: 'baselineElectricity',
  boilingHours: 'boiling',
  lowPressureHours: 'lowPressure',
  loopReliefVolume: 'loopReliefVolume',
  noFlowHours: 'noFlowInSun',
  highLimitHours: 'highLimit',
  tapVolume: 'tapVolume',
  hotVolume: 'hotVolume',
  tapHeatAsked: 'tapHeatAsked',
  tapHeat: 'tapHeat',
  collectorHeat: 'collectorHeat',
  pipeLoss: 'pipeLoss',
  coilHeat: 'coilHeat',
  heatGivenBack: 'heatGivenBack',
  tankLoss: 'tankLoss',
  heaterLoss: 'heaterLoss',
  reliefVolume: 'reliefVolume',
  reliefHeat: 'reliefHeat',
} as const satisfies Partial<Record<keyof PeriodSummary, keyof RunColumns>>;

type SumKey = keyof typeof SUMS | 'irradiation';
type Sums = Record<SumKey, number>;
const COLUMN_KEYS = Object.keys(SUMS) as readonly (keyof typeof SUMS)[];
const SUM_KEYS = [...COLUMN_KEYS, 'irradiation'] as const;

/** Where a column is highest (sign 1) or lowest (sign −1), the first of equals. */
function extremeHour(column: Float64Array, from: number, to: number, sign: number): number {
  let best = from;
  for (let hour = from + 1; hour < to; hour++) if (sign * column[hour]! > sign * column[best]!) best = hour;
  return best;
}

function columnSum(column: Float64Array, from: number, to: number): number {
  let total = 0;
  for (let hour = from; hour < to; hour++) total += column[hour]!;
  return total;
}

/**
 * Heat asked for at the taps that the sun made: of each day what the draw took out of the solar tank, at most what the taps asked
 * for, so that what one day has to spare makes up for no other. [J]
 */
function heatBySun({ solarHeat, tapHeatAsked }: RunColumns, from: number, to: number): number {
  let made = 0;
  for (let day = from; day < to; day += 24) {
    const sun = columnSum(solarHeat, day, day + 24);
    made += Math.min(Math.max(sun, 0), columnSum(tapHeatAsked, day, day + 24));
  }
  return made;
}

function period(columns: RunColumns, sums: Sums, from: number, to: number): PeriodSummary {
  const peakTankHour = extremeHour(columns.tankMaximumTemperature, from, to, 1);
  const hottestAbsorberHour = extremeHour(columns.absorberTemperature, from, to, 1);
  const coldestAbsorberHour = extremeHour(columns.absorberMinimumTemperature, from, to, -1);
  const heat = sums.deliveredEnergy + sums.heaterHeat;
  return {
    ...sums,
    sunShare: sums.tapHeatAsked > 0 ? heatBySun(columns, from, to) / sums.tapHeatAsked : null,
    solarFraction: heat > 0 ? sums.deliveredEnergy / heat : null,
    fuelSaving: sums.baselineFuel > 0 ? 1 - sums.heaterFuel / sums.baselineFuel : null,
    fuelSaved: sums.baselineFuel - sums.heaterFuel,
    collectorLoss: sums.irradiation - sums.collectorHeat,
    burnerLoss: sums.heaterFuel - sums.heaterHeat,
    peakTankHour,
    peakTankTemperature: columns.tankMaximumTemperature[peakTankHour]!,
    hottestAbsorberHour,
    hottestAbsorber: columns.absorberTemperature[hottestAbsorberHour]!,
    coldestAbsorberHour,
    coldestAbsorber: columns.absorberMinimumTemperature[coldestAbsorberHour]!,
  };
}

/**
 * Key figures of a run by month and year. Sums, extremes and shares only; no physics.
 *
 * The sums of the year are the twelve monthly sums added in order, so the months add up to the year to the last bit;
 * differences of sums (fuel saved, not collected, lost in burning) do so to rounding of double precision.
 *
 * @param result - From `simulate`.
 */
export function summarizePeriods(result: Pick<RunResult, 'columns' | 'design'>): PeriodSummaries {
  const { columns, design } = result;
  const area = design.array.panels * design.array.collector.area;
  const monthSums = Array.from({ length: 12 }, (_, month): Sums => {
    const from = MONTH_STARTS[month]!;
    const to = MONTH_STARTS[month + 1]!;
    const sums = { irradiation: columnSum(columns.irradiance, from, to) * 3600 * area } as Sums;
    for (const key of COLUMN_KEYS) sums[key] = columnSum(columns[SUMS[key]], from, to);
    return sums;
  });
  const yearSums = {} as Sums;
  for (const key of SUM_KEYS) yearSums[key] = monthSums.reduce((total, sums) => total + sums[key], 0);
  return {
    months: monthSums.map((sums, month) => period(columns, sums, MONTH_STARTS[month]!, MONTH_STARTS[month + 1]!)),
    year: period(columns, yearSums, 0, MONTH_STARTS[12]!),
  };
}
