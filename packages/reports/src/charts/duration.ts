/** How many hours of the year the tank is hotter than a temperature. */
import { letterOf } from '../escape.ts';
import { displayUnit, formatNumber, formatQuantity, formatValue, toDisplay } from '../units.ts';
import { axisStyle, type ChartContext, niceAxis, TEXT } from './context.ts';
import { designLegend, designStyle } from './designs.ts';
import type { Drawing } from './frame.ts';
import type { ColourRole } from './palette.ts';

const PLOT = { wide: 260, narrow: 210 }; // [px]
const LEFT = 52; // [px]
const TOP = 34; // [px]
const AXIS_ROOM = 52; // [px]
/** Every how many ranks the line has a point. [h] */
const EVERY = 24;

interface Curve {
  readonly word: string;
  readonly colour: string;
  readonly dash: string;
  /** Highest first. Shape [8760]. [°C] */
  readonly sorted: Float64Array;
}

const descending = (column: Float64Array): Float64Array => Float64Array.from(column).sort().reverse();

/** One design: hottest, mean and bottom of the tank; several: the hottest of each. */
function curves({ results, palette }: ChartContext): Curve[] {
  if (results.length === 1) {
    const { columns } = results[0]!;
    const lines: readonly [word: string, role: ColourRole, dash: string, column: Float64Array][] = [
      ['hottest', 'tankTop', '', columns.tankMaximumTemperature],
      ['mean', 'absorber', '2 3', columns.tankMeanTemperature],
      ['bottom', 'tankBottom', '7 4', columns.tankBottomTemperature],
    ];
    return lines.map(([word, role, dash, column]) => ({
      word,
      dash,
      colour: palette[role],
      sorted: descending(column),
    }));
  }
  return results.map(({ columns }, index) => ({
    word: letterOf(index),
    ...designStyle(palette, index),
    sorted: descending(columns.tankMaximumTemperature),
  }));
}

/** Sorted curves, each with its word beside it. */
export function tankDuration(context: ChartContext): Drawing {
  const { results, units, palette, narrow, width } = context;
  const all = curves(context);
  const shown = (value: number): number => toDisplay(value, 'temperature', units);
  const lowest = Math.min(...all.map(({ sorted }) => shown(sorted[8759]!)));
  const highest = Math.max(...all.map(({ sorted }) => shown(sorted[0]!)));
  const scale = niceAxis(lowest, highest, 6);
  const plot = narrow ? PLOT.narrow : PLOT.wide;
  const style = axisStyle(context);
  const [legend, legendRoom] = results.length > 1 ? designLegend(context) : ['', 0];
  const { symbol } = displayUnit('temperature', units);
  return {
    height: legendRoom + TOP + plot + AXIS_ROOM,
    front: legend,
    label: results
      .map(
        ({ design, columns }) =>
          `Hours in which the tank is hotter than a temperature, ${design.name}: above ${formatQuantity(60, 'temperature', units)} in ${columns.tankMaximumTemperature.filter((value) => value > 60).length} h`,
      )
      .join('. '),
    option: {
      grid: {
        left: LEFT,
        top: legendRoom + TOP,
        width: width - LEFT - (results.length > 1 ? 36 : 62),
        height: plot,
        outerBoundsMode: 'none',
      },
      xAxis: {
        ...style,
        type: 'value',
        min: 0,
        max: 8760,
        interval: narrow ? 2000 : 1000,
        name: 'hours of the year at or above',
        nameLocation: 'middle',
        nameGap: 30,
        axisLine: { show: true, onZero: false, lineStyle: { color: palette.muted } },
        axisLabel: { ...style.axisLabel, hideOverlap: true, formatter: (hours: number) => formatNumber(hours, 0) },
      },
      yAxis: {
        ...style,
        ...scale,
        type: 'value',
        name: symbol,
        nameLocation: 'end',
        nameGap: 8,
        axisLabel: { ...style.axisLabel, formatter: (value: number) => formatNumber(value, 0) },
      },
      series: all.map(({ word, colour, dash, sorted }) => ({
        type: 'line',
        symbol: 'none',
        lineStyle: { color: colour, width: 2, type: dash === '' ? 'solid' : dash.split(' ').map(Number) },
        endLabel: { show: true, formatter: word, color: palette.ink, fontSize: TEXT, distance: 4 },
        labelLayout: { moveOverlap: 'shiftY' },
        data: Array.from({ length: 8760 / EVERY + 1 }, (_, point) => [
          point * EVERY,
          shown(sorted[Math.min(8759, point * EVERY)]!),
        ]),
      })),
    },
  };
}

/** The numbers of {@link tankDuration}: hours at or above every five degrees, and the temperature held in some hours. */
export function tankDurationTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { units } = context;
  const all = curves(context);
  const { symbol } = displayUnit('temperature', units);
  const ranks = [1, 10, 100, 500, 1000, 2000, 3000, 4000, 5000, 6000, 7000, 8000, 8760];
  return {
    header: ['Hours of the year', ...all.map(({ word }) => `${word}, at least [${symbol}]`)],
    rows: ranks.map((rank) => [
      formatNumber(rank, 0),
      ...all.map(({ sorted }) => formatValue(sorted[rank - 1]!, 'temperature', units)),
    ]),
  };
}
