import {
  type BalancePart,
  type PeriodSummary,
  type RunColumns,
  type RunResult,
  type SystemDesign,
  summarizePeriods,
} from '@noonloop/sim-core';
import type { Site } from '@noonloop/weather-io';
import { ReportError } from './errors.ts';

export type { PeriodSummary } from '@noonloop/sim-core';

/** The part and the hour whose energy balance closes worst. */
export interface WorstBalance {
  /** Part of the system. */
  readonly part: BalancePart;
  /** |residual| over the energy that flowed through the part in that hour. [-] */
  readonly worstRelative: number;
  /** Hour of the year, 0 to 8759. [h] */
  readonly hour: number;
}

/** Share of a month's hot water from which the sun alone is said to have sufficed: what is left is within the model's error; judgement. [-] */
export const SUN_ALONE = 0.95;

/** A run in numbers, SI with °C; only renderers convert. */
export interface Summary {
  /** What was simulated. */
  readonly design: SystemDesign;
  /** Where. */
  readonly site: Site;
  /** File or label of the weather. */
  readonly weatherSource: string;
  /** Absorber temperature from which standstill in sun counts as stagnation. [°C] */
  readonly stagnationLimit: number;
  /** January first. Shape [12]. */
  readonly months: readonly PeriodSummary[];
  /** Sums of {@link months} in order, and extremes over them. */
  readonly year: PeriodSummary;
  /** Months in which the sun alone sufficed: {@link PeriodSummary.sunShare} of {@link SUN_ALONE} or more. [0 for January to 11] */
  readonly sunAloneMonths: readonly number[];
  /** Proof that no energy was lost or invented. */
  readonly worstBalance: WorstBalance;
}

/** @throws {@link ReportError} when a column is not a whole year of finite numbers. */
function checkColumns(columns: RunColumns): void {
  for (const [name, column] of Object.entries(columns) as [string, Float64Array][]) {
    const path = `columns.${name}`;
    if (column.length !== 8760)
      throw new ReportError(path, `${column.length} values`, '8760', 'Give the result of simulate() as it came.');
    // An index is several times as fast as a function for each of 400,000 numbers.
    for (let hour = 0; hour < column.length; hour++) {
      if (Number.isFinite(column[hour])) continue;
      const place = `${path}[${hour}]`;
      const remedy = 'This is a fault of the run, not of the report.';
      throw new ReportError(place, String(column[hour]), 'a finite number', remedy);
    }
  }
}

/**
 * The numbers of a run by month and year, as {@link summarizePeriods} computes them, and proof that no energy was lost.
 *
 * @throws {@link ReportError} when a column is not a whole year of finite numbers.
 */
export function summarize(result: RunResult): Summary {
  checkColumns(result.columns);
  const parts = Object.entries(result.balance) as [BalancePart, RunResult['balance'][BalancePart]][];
  const [part, worst] = parts.reduce((a, b) => (b[1].worstRelative > a[1].worstRelative ? b : a));
  const { months, year } = summarizePeriods(result);
  return {
    design: result.design,
    site: result.site,
    weatherSource: result.weatherSource,
    stagnationLimit: result.stagnationLimit,
    months,
    year,
    sunAloneMonths: months.flatMap(({ sunShare }, month) =>
      sunShare !== null && sunShare >= SUN_ALONE ? [month] : [],
    ),
    worstBalance: { part, worstRelative: worst.worstRelative, hour: worst.worstHour },
  };
}
