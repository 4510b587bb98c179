/** The hottest tank node through the year: day on x, hour on y. */
import { formatHour, MONTH_NAMES, MONTH_STARTS, monthOfDay } from '../calendar.ts';
import { letterOf } from '../escape.ts';
import { displayUnit, formatNumber, formatQuantity, formatValue, toDisplay } from '../units.ts';
import { axisStyle, type ChartContext, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';
import { heatColour } from './palette.ts';

const CELL_HEIGHT = { wide: 8, narrow: 5 }; // [px]
const AXIS_ROOM = 30; // [px]
const LEFT = 44; // [px]
const KEY_ROOM = 50; // [px]

/** Width of a colour step in shown degrees. [°C or °F] */
const STEP = { metric: 5, us: 10 };

interface Steps {
  /** Lower end of the coldest step, shown degrees. */
  readonly from: number;
  readonly step: number;
  readonly count: number;
}

function heatSteps({ results, units }: ChartContext): Steps {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const { columns } of results)
    for (const value of columns.tankMaximumTemperature) {
      if (value < low) low = value;
      if (value > high) high = value;
    }
  const step = STEP[units];
  const from = Math.floor(toDisplay(low, 'temperature', units) / step) * step;
  const to = Math.floor(toDisplay(high, 'temperature', units) / step) * step + step;
  return { from, step, count: Math.round((to - from) / step) };
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

/** Heat map of {@link heatPaths}, one panel a design, all in the same colours. */
export function tankYear(context: ChartContext): Drawing {
  const { results, summaries, units, narrow, palette, width } = context;
  const several = results.length > 1;
  const title = several ? TITLE_ROOM : 0;
  const panel = 24 * (narrow ? CELL_HEIGHT.narrow : CELL_HEIGHT.wide);
  const step = panel + AXIS_ROOM + title;
  const top = (index: number): number => KEY_ROOM + index * step + title;
  const plot = width - LEFT - 6;
  const steps = heatSteps(context);
  const level = (value: number): number =>
    Math.min(
      steps.count - 1,
      Math.max(0, Math.floor((toDisplay(value, 'temperature', units) - steps.from) / steps.step)),
    );
  const colour = (at: number): string => heatColour(steps.count < 2 ? 0.5 : at / (steps.count - 1));
  const maps = results.map(({ columns }, index) => {
    const paths = heatPaths(columns.tankMaximumTemperature, level, steps.count);
    const marks = paths.map((path, at) => (path === '' ? '' : `<path fill="${colour(at)}" d="${path}"/>`)).join('');
    return `<g shape-rendering="crispEdges" transform="translate(${LEFT} ${top(index)}) scale(${plot / 365} ${panel / 24})">${marks}</g>`;
  });
  const style = axisStyle(context);
  const middles = MONTH_STARTS.slice(0, 12).map((start, month) => (start + MONTH_STARTS[month + 1]!) / 2);
  return {
    height: KEY_ROOM + results.length * step,
    behind: maps.join(''),
    front: heatKey(context, steps, colour),
    label: summaries
      .map(
        ({ design, year }) =>
          `Hottest tank node by day and hour, ${design.name}: highest ${formatQuantity(year.peakTankTemperature, 'temperature', units)} on ${formatHour(year.peakTankHour)}`,
      )
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

function heatKey(
  { narrow, palette, units, width }: ChartContext,
  steps: Steps,
  colour: (at: number) => string,
): string {
  const size = Math.min(40, Math.floor((width - LEFT - 20) / steps.count));
  const every = Math.ceil((narrow ? 26 : 30) / size);
  const boxes = Array.from(
    { length: steps.count },
    (_, at) => `<rect x="${LEFT + at * size}" y="6" width="${size}" height="11" fill="${colour(at)}"/>`,
  );
  const words: string[] = [];
  for (let at = 0; at <= steps.count; at += every)
    words.push(
      `<text x="${LEFT + at * size}" y="31" font-size="${TEXT}" text-anchor="middle" fill="${palette.muted}">${formatNumber(steps.from + at * steps.step, 0)}</text>`,
    );
  const { symbol } = displayUnit('temperature', units);
  return `<text x="4" y="16" font-size="${TEXT}" fill="${palette.muted}">${symbol}</text>${boxes.join('')}${words.join('')}`;
}

/** The numbers of {@link tankYear}, condensed: the highest of each month at each hour of the clock. */
export function tankYearTable({ results, units }: ChartContext): { header: string[]; rows: string[][] } {
  const letter = (index: number): string => (results.length > 1 ? `${letterOf(index)} ` : '');
  return {
    header: [
      'Highest, from hour',
      ...MONTH_NAMES.map((name) => `${name.slice(0, 3)} [${displayUnit('temperature', units).symbol}]`),
    ],
    rows: results.flatMap(({ columns }, index) =>
      Array.from({ length: 24 }, (_, clock) => [
        `${letter(index)}${clock}:00`,
        ...MONTH_NAMES.map((_, month) => {
          let high = Number.NEGATIVE_INFINITY;
          for (let day = MONTH_STARTS[month]!; day < MONTH_STARTS[month + 1]!; day++)
            high = Math.max(high, columns.tankMaximumTemperature[day * 24 + clock]!);
          return formatValue(high, 'temperature', units);
        }),
      ]),
    ),
  };
}
