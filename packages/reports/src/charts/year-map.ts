/** One hourly column through the year: day on x, hour on y. */
import type { RunColumns } from '@noonloop/sim-core';
import { formatHour, MONTH_NAMES, MONTH_STARTS, monthOfDay } from '../calendar.ts';
import { letterOf } from '../escape.ts';
import { displayUnit, formatQuantity, formatValue, toDisplay, type Units } from '../units.ts';
import { type ColourSteps, colourKey, levelOf, stepColour } from './colour-steps.ts';
import { axisStyle, type ChartContext, niceAxis, panelTitle, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';

const CELL_HEIGHT = { wide: 8, narrow: 5 }; // [px]
const AXIS_ROOM = 30; // [px]
const LEFT = 44; // [px]
const KEY_ROOM = 50; // [px]

/** What a map shows. */
export interface YearMap {
  readonly column: keyof RunColumns;
  readonly kind: 'temperature' | 'flow';
  /** Width of a colour step in shown units; `null`: an eighth or so of the highest, and nothing has a colour of its own. */
  readonly step: Readonly<Record<Units, number>> | null;
  /** What it is, for the label and the table. */
  readonly what: string;
}

/** Hottest node of the tank. */
export const TANK_MAP: YearMap = {
  column: 'tankMaximumTemperature',
  kind: 'temperature',
  step: { metric: 5, us: 10 },
  what: 'Hottest tank node',
};
/** Hottest part of the absorber. */
export const ABSORBER_MAP: YearMap = {
  column: 'absorberTemperature',
  kind: 'temperature',
  step: { metric: 10, us: 20 },
  what: 'Hottest part of the absorber',
};
/** Flow in the loop. */
export const FLOW_MAP: YearMap = { column: 'loopFlow', kind: 'flow', step: null, what: 'Mean flow in the loop' };

const range = ({ results }: ChartContext, column: keyof RunColumns): [low: number, high: number] => {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { columns } of results)
    for (const value of columns[column]) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  return [low, high];
};

function colourSteps(context: ChartContext, { column, kind, step }: YearMap): ColourSteps {
  const [low, high] = range(context, column).map((value) => toDisplay(value, kind, context.units)) as [number, number];
  if (step === null) {
    const { interval, max } = niceAxis(0, Math.max(high, 1e-6), 8);
    return { from: 0, step: interval, count: Math.max(1, Math.round(max / interval)) };
  }
  const width = step[context.units];
  const from = Math.floor(low / width) * width;
  const to = Math.floor(high / width) * width + width;
  return { from, step: width, count: Math.round((to - from) / width) };
}

/**
 * One path a colour step, made of the runs of equal colour within each day: a thousand or two strokes instead of 8760
 * rectangles, as the tank changes slowly from hour to hour. One unit is a cell; the day starts at the bottom.
 */
export function heatPaths(column: Float64Array, level: (value: number) => number, count: number): string[] {
  const paths = Array.from({ length: count }, () => '');
  for (let day = 0; day < 365; day++) {
    let start = 0;
    let current = level(column[day * 24]!);
    for (let clock = 1; clock <= 24; clock++) {
      const next = clock === 24 ? -1 : level(column[day * 24 + clock]!);
      if (next === current) continue;
      paths[current] += `M${day} ${24 - clock}h1v${clock - start}h-1z`;
      start = clock;
      current = next;
    }
  }
  return paths;
}

/** Map of {@link heatPaths}, one panel a design, all in the same colours. */
export function yearMap(context: ChartContext, map: YearMap): Drawing {
  const { results, units, narrow, palette, width } = context;
  const several = results.length > 1;
  const title = several ? TITLE_ROOM : 0;
  const panel = 24 * (narrow ? CELL_HEIGHT.narrow : CELL_HEIGHT.wide);
  const step = panel + AXIS_ROOM + title;
  const top = (index: number): number => KEY_ROOM + index * step + title;
  const plot = width - LEFT - 6;
  const steps = colourSteps(context, map);
  const level = levelOf(steps, map.kind, units);
  const colour = stepColour(steps);
  const maps = results.map(({ columns }, index) => {
    const paths = heatPaths(columns[map.column], level, steps.count);
    const marks = paths.map((path, at) => (path === '' ? '' : `<path fill="${colour(at)}" d="${path}"/>`)).join('');
    return `<g shape-rendering="crispEdges" transform="translate(${LEFT} ${top(index)}) scale(${plot / 365} ${panel / 24})">${marks}</g>`;
  });
  const style = axisStyle(context);
  const middles = MONTH_STARTS.slice(0, 12).map((start, month) => (start + MONTH_STARTS[month + 1]!) / 2);
  return {
    height: KEY_ROOM + results.length * step,
    behind: maps.join(''),
    front: colourKey(context, steps, displayUnit(map.kind, units).symbol, LEFT),
    label: results
      .map(({ design, columns }) => {
        const hour = columns[map.column].reduce((best, value, at, all) => (value > all[best]! ? at : best), 0);
        return `${map.what} by day and hour, ${design.name}: highest ${formatQuantity(columns[map.column][hour]!, map.kind, units)} on ${formatHour(hour)}`;
      })
      .join('. '),
    option: {
      title: several ? results.map((_, index) => panelTitle(context, index, top(index) - 20)) : [],
      grid: results.map((_, index) => ({
        left: LEFT,
        top: top(index),
        width: plot,
        height: panel,
        outerBoundsMode: 'none',
      })),
      xAxis: results.map((_, index) => ({
        ...style,
        gridIndex: index,
        type: 'value',
        min: 0,
        max: 365,
        axisLine: { show: true, onZero: false, lineStyle: { color: palette.muted } },
        splitLine: { show: false },
        axisTick: { customValues: [...MONTH_STARTS], lineStyle: { color: palette.muted } },
        axisLabel: {
          ...style.axisLabel,
          hideOverlap: false,
          customValues: middles,
          formatter: (day: number) => MONTH_NAMES[monthOfDay(Math.floor(day))]!.slice(0, narrow ? 1 : 3),
        },
      })),
      yAxis: results.map((_, index) => ({
        ...style,
        gridIndex: index,
        type: 'value',
        min: 0,
        max: 24,
        interval: 6,
        axisLine: { show: false },
        splitLine: { show: false },
        axisLabel: { ...style.axisLabel, formatter: (hour: number) => `${hour}:00` },
      })),
      series: [],
    },
  };
}

/** The numbers of {@link yearMap}, condensed: highest temperature or mean flow of each month at each hour of the clock. */
export function yearMapTable({ results, units }: ChartContext, map: YearMap): { header: string[]; rows: string[][] } {
  const letter = (index: number): string => (results.length > 1 ? `${letterOf(index)} ` : '');
  const { symbol } = displayUnit(map.kind, units);
  const condense = (column: Float64Array, month: number, clock: number): number => {
    const [first, end] = [MONTH_STARTS[month]!, MONTH_STARTS[month + 1]!];
    let high = Number.NEGATIVE_INFINITY;
    let sum = 0;
    for (let day = first; day < end; day++) {
      const value = column[day * 24 + clock]!;
      high = Math.max(high, value);
      sum += value;
    }
    return map.kind === 'flow' ? sum / (end - first) : high;
  };
  return {
    header: [
      map.kind === 'flow' ? 'Mean, from hour' : 'Highest, from hour',
      ...MONTH_NAMES.map((name) => `${name.slice(0, 3)} [${symbol}]`),
    ],
    rows: results.flatMap(({ columns }, index) =>
      Array.from({ length: 24 }, (_, clock) => [
        `${letter(index)}${clock}:00`,
        ...MONTH_NAMES.map((_, month) => formatValue(condense(columns[map.column], month, clock), map.kind, units)),
      ]),
    ),
  };
}
