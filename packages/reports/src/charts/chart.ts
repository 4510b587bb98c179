import { ReportError } from '../errors.ts';
import { listRuns, type Runs } from '../options.ts';
import type { Units } from '../units.ts';
import { barsMissing, comparisonBars, comparisonBarsTable } from './bars.ts';
import { type ChartContext, chartContext } from './context.ts';
import { tankDuration, tankDurationTable } from './duration.ts';
import { energyFlow, energyFlowTable, flowMissing } from './energy-flow.ts';
import { type ChartTheme, type Drawing, draw } from './frame.ts';
import { layersMissing, tankLayers, tankLayersTable } from './layers.ts';
import { monthlyEnergy, monthlyEnergyTable } from './monthly.ts';
import { monthMultiples, monthMultiplesTable } from './multiples.ts';
import { pumpMap, pumpMapTable } from './pump-map.ts';
import { week, weekTable } from './week.ts';
import { ABSORBER_MAP, FLOW_MAP, TANK_MAP, type YearMap, yearMap, yearMapTable } from './year-map.ts';

/** The charts of a report. */
export type ChartName =
  | 'comparison'
  | 'monthly-energy'
  | 'month-multiples'
  | 'energy-flow'
  | 'tank-year'
  | 'absorber-year'
  | 'flow-year'
  | 'tank-duration'
  | 'summer-week'
  | 'tank-layers'
  | 'winter-week'
  | 'pump-map';

/** Options of {@link chart}. */
export interface ChartOptions {
  /** Units of axes and labels. Default `metric`. */
  readonly units?: Units;
  /** Width of the picture; under 600 it is laid out for a telephone. Default 960, at least 300. [px] */
  readonly width?: number;
  /** Colours for light or dark ground, or `page` for the CSS variables of the HTML report. Default `light`. */
  readonly theme?: ChartTheme;
  /** `monthly-energy`: also what pipes, tank and heater lose, below the line. Default false. */
  readonly losses?: boolean;
}

/** Numbers behind a chart, as shown. */
export interface ChartTable {
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

const map = (of: YearMap): Chart => ({
  drawing: (context) => yearMap(context, of),
  table: (context) => yearMapTable(context, of),
});

const CHARTS: Record<ChartName, Chart> = {
  comparison: { drawing: comparisonBars, table: comparisonBarsTable, missing: barsMissing },
  'monthly-energy': { drawing: monthlyEnergy, table: monthlyEnergyTable },
  'month-multiples': { drawing: monthMultiples, table: monthMultiplesTable },
  'energy-flow': { drawing: energyFlow, table: energyFlowTable, missing: flowMissing },
  'tank-year': map(TANK_MAP),
  'absorber-year': map(ABSORBER_MAP),
  'flow-year': map(FLOW_MAP),
  'tank-duration': { drawing: tankDuration, table: tankDurationTable },
  'summer-week': { drawing: (context) => week(context, 'summer'), table: (context) => weekTable(context, 'summer') },
  'tank-layers': { drawing: tankLayers, table: tankLayersTable, missing: layersMissing },
  'winter-week': { drawing: (context) => week(context, 'winter'), table: (context) => weekTable(context, 'winter') },
  'pump-map': { drawing: pumpMap, table: pumpMapTable },
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
 * - `comparison`: the leading numbers of two or more designs
 * - `monthly-energy`: heat by month from solar tank and burner, solar share over the bars
 * - `month-multiples`: the month table as small pictures
 * - `energy-flow`: from sun and fuel to the taps with each loss, bands as wide as what flows in them
 * - `tank-year`, `absorber-year`, `flow-year`: day on x, hour on y
 * - `tank-duration`: hours of the year at or above a temperature
 * - `summer-week`, `winter-week`: the week with most sun on the first design's collectors in the summer half of the year, and
 *   with least in the winter half, hour by hour
 * - `tank-layers`: layers of the tank in the summer week; needs `keepTankNodes` of `simulate`
 * - `pump-map`: light on the PV module against flow, every lit hour a dot
 *
 * @param name - which chart
 * @param runs - one run, or several in panels to one scale
 * @param options - units, width and colours
 * @returns an `<svg>` element; the same input gives the same text
 * @throws {@link ReportError} for an unknown name, no run, runs that the chart cannot show, or a column that is not a whole year of finite numbers.
 */
export async function chart(name: ChartName, runs: Runs, options: ChartOptions = {}): Promise<string> {
  const { units = 'metric', width = 960, theme = 'light', losses = false } = options;
  if (!Object.hasOwn(CHARTS, name))
    throw new ReportError('name', JSON.stringify(name), `one of ${CHART_NAMES.join(', ')}`, 'Choose one of these.');
  const context = {
    ...chartContext(listRuns(runs), units, Math.max(NARROWEST, Math.round(width)), theme),
    losses,
  };
  const missing = chartMissing(name, context);
  if (missing !== null) throw new ReportError('results', missing, `what ${name} shows`, 'Give other runs.');
  return drawChart(name, context, theme);
}
