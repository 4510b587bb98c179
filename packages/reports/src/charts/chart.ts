import { ReportError } from '../errors.ts';
import { listRuns, type Runs } from '../options.ts';
import type { Units } from '../units.ts';
import { type ChartContext, chartContext } from './context.ts';
import { type ChartTheme, type Drawing, draw } from './frame.ts';
import { tankYear, tankYearTable } from './heat-map.ts';
import { monthlyEnergy, monthlyEnergyTable } from './monthly.ts';
import { week, weekTable } from './week.ts';

/** The charts of a report. */
export type ChartName = 'monthly-energy' | 'tank-year' | 'summer-week' | 'winter-week';

/** Options of {@link chart}. */
export interface ChartOptions {
  /** Units of axes and labels. Default `metric`. */
  readonly units?: Units;
  /** Width of the picture; under 600 it is laid out for a telephone. Default 960, at least 300. [px] */
  readonly width?: number;
  /** Colours for light or dark ground, or `page` for the CSS variables of the HTML report. Default `light`. */
  readonly theme?: ChartTheme;
}

/** Numbers behind a chart, as shown. */
export interface ChartTable {
  /** Column heads with units. */
  readonly header: readonly string[];
  /** Rows, the first cell naming each. */
  readonly rows: readonly (readonly string[])[];
}

const CHARTS: Record<
  ChartName,
  { drawing: (context: ChartContext) => Drawing; table: (context: ChartContext) => ChartTable }
> = {
  'monthly-energy': { drawing: monthlyEnergy, table: monthlyEnergyTable },
  'tank-year': { drawing: tankYear, table: tankYearTable },
  'summer-week': { drawing: (context) => week(context, 'summer'), table: (context) => weekTable(context, 'summer') },
  'winter-week': { drawing: (context) => week(context, 'winter'), table: (context) => weekTable(context, 'winter') },
};

/** Narrowest chart whose labels still fit. [px] */
const NARROWEST = 300;

/** @internal */
export const drawChart = (name: ChartName, context: ChartContext, theme: ChartTheme): Promise<string> =>
  draw(CHARTS[name].drawing(context), `nl-${name}-${context.width}`, context.width, theme);

/** @internal */
export const tabulateChart = (name: ChartName, context: ChartContext): ChartTable => CHARTS[name].table(context);

/**
 * One chart as SVG text: still, without script, with its own description for screen readers. Asynchronous because the
 * drawing library is loaded with the first chart.
 *
 * - `monthly-energy`: heat by month from solar tank and burner, solar share over the bars
 * - `tank-year`: hottest tank node, day on x, hour on y
 * - `summer-week`, `winter-week`: the week with most sun on the first design's collectors in the summer half of the year, and
 *   with least in the winter half, hour by hour
 *
 * @param name - which chart
 * @param runs - one run, or several in panels to one scale
 * @param options - units, width and colours
 * @returns an `<svg>` element; the same input gives the same text
 * @throws {@link ReportError} for an unknown name, no run, or a column that is not a whole year of finite numbers.
 */
export async function chart(name: ChartName, runs: Runs, options: ChartOptions = {}): Promise<string> {
  const { units = 'metric', width = 960, theme = 'light' } = options;
  if (!Object.hasOwn(CHARTS, name))
    throw new ReportError(
      'name',
      JSON.stringify(name),
      `one of ${Object.keys(CHARTS).join(', ')}`,
      'Choose one of these.',
    );
  return drawChart(name, chartContext(listRuns(runs), units, Math.max(NARROWEST, Math.round(width)), theme), theme);
}
