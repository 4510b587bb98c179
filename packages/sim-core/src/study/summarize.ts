/** The key figures of a run, by month and year: the one place where columns become sums. */

import { MONTH_STARTS } from '../physics/calendar.ts';
import { arrayArea } from '../physics/collector/groups.ts';
import type { RunColumns, RunResult } from '../year/result.ts';
import type { PeriodSummary } from './measures.ts';

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
  heaterPvEnergy: 'heaterPvEnergy',
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
  loadHeat: 'loadHeat',
  heaterLoss: 'heaterLoss',
  ringLoss: 'ringLoss',
  hotPipeLoss: 'hotPipeLoss',
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
    burnerLoss: sums.heaterFuel + sums.heaterPvEnergy - sums.heaterHeat,
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
  const area = arrayArea(design.array);
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
