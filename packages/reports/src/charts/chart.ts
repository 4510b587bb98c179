import { ReportError } from '../errors.ts';
import type { MoneyGiven } from '../money/types.ts';
import { checkOptions, listRuns, type Runs } from '../options.ts';
import type { Units } from '../units.ts';
import type { WeekKind } from './choose-week.ts';
import { type ChartContext, chartContext } from './context.ts';
import { tankDuration, tankDurationTable } from './duration.ts';
import { energyFlow, energyFlowTable, flowMissing } from './energy-flow.ts';
import { type ChartTheme, type Drawing, draw } from './frame.ts';
import { hardHours, hardHoursMissing, hardHoursTable } from './hard-hours.ts';
import { moneyMissing, moneyYears, moneyYearsTable } from './money-years.ts';
import { monthlyEnergy, monthlyEnergyTable } from './monthly.ts';
import { pumpFlow, pumpFlowTable } from './pump.ts';
import { week, weekTable } from './week.ts';
import { tankYear, tankYearTable } from './year-map.ts';

/** The charts of a report. */
export type ChartName =
  | 'monthly-energy'
  | 'energy-flow'
  | 'money-years'
  | 'tank-year'
  | 'tank-duration'
  | 'hottest-week'
  | 'coldest-week'
  | 'hard-hours'
  | 'pump';

/** Options of {@link chart}. */
export interface ChartOptions {
  /** Units of axes and labels. Default `metric`. */
  readonly units?: Units;
  /** Width of the picture; under 600 it is laid out for a telephone. Default 720, at least 300. [px] */
  readonly width?: number;
  /** Colours for light or dark ground, or `page` for the CSS variables of the HTML report. Default `light`. */
  readonly theme?: ChartTheme;
  /** `monthly-energy`: also what pipes, tank and heater lose, below the line. Default false. */
  readonly losses?: boolean;
  /** Prices: one set for all designs, or one for each; needed for `money-years`. */
  readonly money?: MoneyGiven;
}

/** Numbers behind a chart, as shown. */
interface ChartTable {
  /** Column heads with units. */
  readonly header: readonly string[];
  /** Rows, the first cell naming each. */
  readonly rows: readonly (readonly string[])[];
}

interface Chart {
  readonly drawing: (context: ChartContext) => Drawing;
  readonly table: (context: ChartContext) => ChartTable;
  /** Why there is no picture of these runs, or `null`. */
  readonly missing?: (context: ChartContext) => string | null;
}

const weekOf = (kind: WeekKind): Chart => ({
  drawing: (context) => week(context, kind),
  table: (context) => weekTable(context, kind),
});

const CHARTS: Record<ChartName, Chart> = {
  'monthly-energy': { drawing: monthlyEnergy, table: monthlyEnergyTable },
  'energy-flow': { drawing: energyFlow, table: energyFlowTable, missing: flowMissing },
  'money-years': { drawing: moneyYears, table: moneyYearsTable, missing: moneyMissing },
  'tank-year': { drawing: tankYear, table: tankYearTable },
  'tank-duration': { drawing: tankDuration, table: tankDurationTable },
  'hottest-week': weekOf('hottest'),
  'coldest-week': weekOf('coldest'),
  'hard-hours': { drawing: hardHours, table: hardHoursTable, missing: hardHoursMissing },
  pump: { drawing: pumpFlow, table: pumpFlowTable },
};

/** Every chart, in the order of the page. @internal */
export const CHART_NAMES = Object.keys(CHARTS) as readonly ChartName[];

/** Narrowest chart whose labels still fit. [px] */
const NARROWEST = 300;

/** @internal */
export const drawChart = (name: ChartName, context: ChartContext, theme: ChartTheme): Promise<string> =>
  draw(CHARTS[name].drawing(context), `nl-${name}-${context.width}`, context.width, theme);

/** Why there is no picture of these runs, or `null`. @internal */
export const chartMissing = (name: ChartName, context: ChartContext): string | null =>
  CHARTS[name].missing?.(context) ?? null;

/** @internal */
export const tabulateChart = (name: ChartName, context: ChartContext): ChartTable => CHARTS[name].table(context);

/**
 * One chart as SVG text: still, without script, with its own description for screen readers. Asynchronous because the
 * drawing library is loaded with the first chart.
 *
 * - `monthly-energy`: heat by month from sun and burner, hot water by the sun under each month, and the burner's heat without the sun
 * - `energy-flow`: from sun and fuel to the taps with each loss, bands as wide as what flows in them
 * - `money-years`: present worth of the savings less the investment, year by year; needs `money`
 * - `tank-year`: hottest part of the tank, day on x, hour on y
 * - `tank-duration`: hours of the year at or above a temperature
 * - `hottest-week`, `coldest-week`: the seven days with the hottest and with the coldest air, hour by hour; with layers of the tank
 *   where the run kept them (`keepTankNodes` of `simulate`)
 * - `hard-hours`: hours in the sun in which limit, stagnation or boiling kept the system standing
 * - `pump`: flow for the light on the PV module, the middle and four hours of five
 *
 * @param name - which chart
 * @param runs - one run, or several in panels to one scale
 * @param options - units, width and colours
 * @returns an `<svg>` element; the same input gives the same text
 * @throws {@link ReportError} for an unknown name, no run, runs that the chart cannot show, or a column that is not a whole year of finite numbers.
 */
export async function chart(name: ChartName, runs: Runs, options: ChartOptions = {}): Promise<string> {
  checkOptions(options, ['units', 'width', 'theme', 'losses', 'money']);
  const { units = 'metric', width = 720, theme = 'light', losses = false, money = null } = options;
  if (!Object.hasOwn(CHARTS, name))
    throw new ReportError('name', JSON.stringify(name), `one of ${CHART_NAMES.join(', ')}`, 'Choose one of these.');
  const context = {
    ...chartContext(listRuns(runs), units, Math.max(NARROWEST, Math.round(width)), theme),
    losses,
    money,
  };
  const missing = chartMissing(name, context);
  if (missing !== null) throw new ReportError('results', missing, `what ${name} shows`, 'Give other runs.');
  return drawChart(name, context, theme);
}
