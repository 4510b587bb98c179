/** Efficiency lines of collectors, with their bands and the readings of a yard test. */
import { ReportError } from '../errors.ts';
import { cut, escapeHtml, plainText } from '../escape.ts';
import { formatNumber } from '../units.ts';
import { grid, levelAxis, uprightAxis } from './axes.ts';
import { legendEntry } from './context.ts';
import { dashOf, designStyle } from './designs.ts';
import { type ChartTheme, type Drawing, draw, isNarrow, paletteOf } from './frame.ts';
import type { Palette } from './palette.ts';

/** Coefficients of a line. */
export interface EfficiencyLine {
  /** Zero-loss efficiency. [-] */
  readonly eta0: number;
  /** Linear loss. [W/(m²·K)] */
  readonly a1: number;
  /** Quadratic loss. [W/(m²·K²)] */
  readonly a2: number;
}

/** One collector of {@link collectorChart}. */
export interface CollectorLine extends EfficiencyLine {
  /** Name in the legend. */
  readonly name: string;
  /** Lower and upper end, such as `low` and `high` of a survey; drawn as thin lines. */
  readonly limits?: readonly [low: EfficiencyLine, high: EfficiencyLine];
  /** Readings, such as the points of a yard test; those with the panel covered (`null`) are left out. */
  readonly points?: readonly CollectorReading[];
}

/** One reading of {@link CollectorLine}. */
export interface CollectorReading {
  /** (t_m − t_a)/G. [m²·K/W] */
  readonly reducedTemperature: number | null;
  /** η. [-] */
  readonly efficiency: number | null;
  /** Either side of η. [-] */
  readonly error: number;
}

/** Options of {@link collectorChart}. */
export interface CollectorChartOptions {
  /** Light for which the lines are drawn, 100 to 1400. Default 800. [W/m²] */
  readonly irradiance?: number;
  /** Width of the picture, at least 300. Default 760. [px] */
  readonly width?: number;
  /** Colours for light or dark ground. Default `light`. */
  readonly theme?: ChartTheme;
}

const PLOT = 300; // [px]
const LEFT = 48; // [px]
const TOP = 30; // [px]
const AXIS_ROOM = 52; // [px]
const LINE = 20; // [px] of the legend
const HOTTEST = 100; // [K] over the air

/**
 * Efficiency of collectors by how much warmer than the air the fluid is, as SVG text: η = eta0 − (a1 + a2 d) d/G, with the ends of a
 * survey and the readings of a yard test.
 *
 * @param collectors - one or more lines; from `rateFromSurvey`, `rateFromYardTest` or a test report
 * @param options - light, width and colours
 * @returns an `<svg>` element; the same input gives the same text
 * @throws {@link ReportError} for no collector, a number that is not finite, or an option out of its range.
 */
export async function collectorChart(
  collectors: readonly CollectorLine[],
  options: CollectorChartOptions = {},
): Promise<string> {
  const { irradiance = 800, width: wanted = 760, theme = 'light' } = options;
  if (collectors.length === 0) throw new ReportError('collectors', 'none', 'one or more lines', 'Give a collector.');
  if (!(irradiance >= 100 && irradiance <= 1400))
    throw new ReportError('irradiance', String(irradiance), 'a number from 100 to 1400 W/m²', 'Give the light.');
  collectors.forEach((collector, at) => {
    for (const line of [collector, ...(collector.limits ?? [])])
      for (const name of ['eta0', 'a1', 'a2'] as const)
        if (!Number.isFinite(line[name]))
          throw new ReportError(`collectors[${at}].${name}`, String(line[name]), 'a finite number', 'Give all three.');
  });
  const width = Math.max(300, Math.round(wanted));
  return draw(drawing(collectors, irradiance, width, paletteOf(theme)), `nl-collectors-${width}`, width, theme);
}

function drawing(collectors: readonly CollectorLine[], irradiance: number, width: number, palette: Palette): Drawing {
  const [legend, legendRoom] = legendOf(collectors, width, palette);
  const context = { palette, narrow: isNarrow(width) };
  const at = (line: EfficiencyLine, d: number) => line.eta0 - ((line.a1 + line.a2 * d) * d) / irradiance;
  const curve = (line: EfficiencyLine, colour: string, thin: boolean, dash: string) => ({
    type: 'line',
    symbol: 'none',
    lineStyle: {
      color: colour,
      width: thin ? 1 : 2.5,
      type: thin ? [4, 3] : dashOf(dash),
    },
    data: Array.from({ length: HOTTEST + 1 }, (_, d) => [d, 100 * at(line, d)]).filter(
      ([, efficiency]) => efficiency! >= 0,
    ),
  });
  const series = collectors.flatMap((collector, index) => {
    const { colour, dash } = designStyle(palette, index);
    const points = (collector.points ?? []).flatMap(({ reducedTemperature: x, efficiency, error }) =>
      x === null || efficiency === null ? [] : [{ d: x * irradiance, efficiency, error }],
    );
    return [
      curve(collector, colour, false, dash),
      ...(collector.limits ?? []).map((line) => curve(line, colour, true, dash)),
      ...points.map(({ d, efficiency, error }) => ({
        type: 'line',
        symbol: 'none',
        lineStyle: { color: colour, width: 1.5 },
        data: [
          [d, 100 * (efficiency - error)],
          [d, 100 * (efficiency + error)],
        ],
      })),
      {
        type: 'scatter',
        symbolSize: 8,
        itemStyle: { color: colour, borderColor: palette.ink, borderWidth: 1 },
        data: points.map(({ d, efficiency }) => [d, 100 * efficiency]),
      },
    ];
  });
  return {
    height: legendRoom + TOP + PLOT + AXIS_ROOM,
    front: legend,
    label: collectors
      .map(
        (collector) =>
          `${plainText(collector.name)}: efficiency ${formatNumber(100 * collector.eta0, 0)} % at the air’s temperature, ${formatNumber(100 * at(collector, 30), 0)} % at 30 K and ${formatNumber(Math.max(100 * at(collector, 60), 0), 0)} % at 60 K above it in ${irradiance} W/m²`,
      )
      .join('. '),
    option: {
      grid: grid({ left: LEFT, top: legendRoom + TOP, width: width - LEFT - 20, height: PLOT }),
      xAxis: levelAxis(
        context,
        0,
        { min: 0, max: HOTTEST, interval: context.narrow ? 20 : 10 },
        `fluid above the air in ${irradiance} W/m² [K]`,
      ),
      yAxis: uprightAxis(context, 0, { min: 0, max: 100, interval: 20 }, 'efficiency [%]', LEFT),
      series,
    },
  };
}

function legendOf(
  collectors: readonly CollectorLine[],
  width: number,
  palette: Palette,
): [svg: string, height: number] {
  let svg = '';
  let x = 4;
  let row = 0;
  collectors.forEach(({ name }, index) => {
    const word = cut(plainText(name), isNarrow(width) ? 36 : 44);
    if (x > 4 && x + 30 + word.length * 6.4 > width) {
      row++;
      x = 4;
    }
    const { colour } = designStyle(palette, index);
    const [entry, next] = legendEntry(x, 14 + row * LINE, { colour }, escapeHtml(word), palette.ink);
    svg += entry;
    x = next;
  });
  return [svg, (row + 1) * LINE];
}
