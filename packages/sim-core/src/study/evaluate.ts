/** From a design to a row: the same in every thread. */
import type { WeatherYear } from '@noonloop/weather-io';
import { defineSystem } from '../define/define.ts';
import type { SystemInput } from '../define/system-input.ts';
import type { SystemDesign } from '../design/design.ts';
import { DesignError } from '../input/errors.ts';
import { ownColumns } from '../year/columns.ts';
import { simulateColumns } from '../year/simulate.ts';
import type { Measure, PeriodSummary } from './measures.ts';
import { summarizePeriods } from './summarize.ts';
import type { RowError, RowRequest, StudyCase, StudyRow } from './types.ts';

/** Whether a design came from `defineSystem`: it lists its assumptions, which no input may. */
export const isDefined = (design: SystemInput | SystemDesign): design is SystemDesign => 'assumptions' in design;

/** Arrays of the columns of the design before, of which a row keeps none: 4 MB that would else be had and thrown away for each design. */
let spare: Float64Array[] = [];

/** Simulates one design; whatever goes wrong with it becomes its row. */
export function evaluateCase(study: StudyCase, weather: WeatherYear, request: RowRequest): StudyRow {
  const head = { index: study.index, inputs: study.inputs, weather: study.weather };
  try {
    const design = isDefined(study.design) ? study.design : defineSystem(study.design);
    const run = simulateColumns(design, weather, { ...request.steps, ...study.steps }, spare);
    const { months, year } = summarizePeriods(run);
    spare = ownColumns(run.columns);
    const measures = Object.fromEntries(request.measures.map((key) => [key, finite(year, key)]));
    if (request.monthly.length === 0) return { ...head, measures };
    const monthly = request.monthly.map((key) => [key, months.map((month) => finite(month, key))]);
    return { ...head, measures, months: Object.fromEntries(monthly) };
  } catch (error) {
    return { ...head, measures: {}, error: describeError(error) };
  }
}

/** A file keeps no sign of zero, so no row has one. */
function finite(period: PeriodSummary, key: Measure): number | null {
  const value = period[key];
  if (value === null) return null;
  if (Number.isFinite(value)) return value === 0 ? 0 : value;
  throw new RangeError(`${key} came out as ${value}. This is a fault of the run, not of the design: please report it.`);
}

function describeError(error: unknown): RowError {
  if (error instanceof DesignError) return { name: error.name, message: error.message, issues: error.issues };
  if (error instanceof Error) return { name: error.name, message: error.message };
  return { name: 'Error', message: String(error) };
}
