/** The tank through the year: day on x, hour on y, temperature as colour. */
import { formatHour, MONTH_NAMES, MONTH_STARTS } from '../calendar.ts';
import { letterOf } from '../escape.ts';
import { formatQuantity } from '../units.ts';
import { clockAxis, grid, yearAxis } from './axes.ts';
import { heatKey, heatStep, KEY_ROOM, type KeyMark } from './colour-steps.ts';
import { type ChartContext, panelTitle, TITLE_ROOM } from './context.ts';
import { decisiveTemperatures } from './decisive.ts';
import type { Drawing } from './frame.ts';
import { HEAT_COUNT, heatColour } from './palette.ts';

const CELL_HEIGHT = { wide: 5, narrow: 5 }; // [px]
const AXIS_ROOM = 30; // [px]
const LEFT = 44; // [px]

export const keyMarks = ({ results, units }: ChartContext): KeyMark[] =>
  decisiveTemperatures(
    results.map(({ design }) => design),
    units,
  );

/**
 * One path a step, made of the runs of equal colour within each day: a thousand or two strokes instead of 8760 rectangles, as
 * the tank changes slowly from hour to hour. One unit is a cell; the day starts at the bottom.
 */
export function heatPaths(column: Float64Array, level: (value: number) => number, count: number): string[] {
  const paths = Array.from({ length: count }, () => '');
  for (let day = 0; day < 365; day++) {
    let start = 0;
    let current = level(column[day * 24]!);
    for (let clock = 1; clock <= 24; clock++) {
      const next = clock === 24 ? -1 : level(column[day * 24 + clock]!);
      if (next === current) continue;
      if (current >= 0) paths[current] += `M${day} ${24 - clock}h1v${clock - start}h-1z`;
      start = clock;
      current = next;
    }
  }
  return paths;
}

/** Panels of the year by day and hour, one a design, with marks of one's own in them. @param top - over the first [px] @param shown - which designs */
export function yearPanels(
  context: ChartContext,
  top: number,
  shown: readonly number[],
  marksOf: (index: number) => string,
) {
  const { results, narrow, width } = context;
  const title = results.length > 1 ? TITLE_ROOM : 0;
  const height = 24 * (narrow ? CELL_HEIGHT.narrow : CELL_HEIGHT.wide);
  const step = height + AXIS_ROOM + title;
  const plot = width - LEFT - 6;
  const at = (place: number): number => top + place * step + title;
  return {
    height: top + shown.length * step,
    marks: shown
      .map(
        (index, place) =>
          `<g shape-rendering="crispEdges" transform="translate(${LEFT} ${at(place)}) scale(${plot / 365} ${height / 24})">${marksOf(index)}</g>`,
      )
      .join(''),
    option: {
      title: title > 0 ? shown.map((index, place) => panelTitle(context, index, at(place) - 20)) : [],
      grid: shown.map((_, place) => grid({ left: LEFT, top: at(place), width: plot, height })),
      xAxis: shown.map((_, place) => yearAxis(context, place)),
      yAxis: shown.map((_, place) => clockAxis(context, place)),
      series: [],
    },
  };
}

/** One panel a design, all in the same colours. */
export function tankYear(context: ChartContext): Drawing {
  const { results, units, palette } = context;
  const { height, marks, option } = yearPanels(context, KEY_ROOM, [...results.keys()], (index) =>
    heatPaths(results[index]!.columns.tankMaximumTemperature, heatStep(units), HEAT_COUNT)
      .map((path, step) => (path === '' ? '' : `<path fill="${heatColour(palette, step)}" d="${path}"/>`))
      .join(''),
  );
  return {
    height,
    behind: marks,
    front: heatKey(context, keyMarks(context), LEFT),
    label: results
      .map(({ design, columns: { tankMaximumTemperature: column } }) => {
        const hour = column.reduce((best, value, at) => (value > column[best]! ? at : best), 0);
        return `Hottest part of the tank by day and hour, ${design.name}: highest ${formatQuantity(column[hour]!, 'temperature', units)} on ${formatHour(hour)}`;
      })
      .join('. '),
    option,
  };
}

/** Hours a month in which the tank is at least as hot as taps, heater and limit ask. */
export function tankYearTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { results } = context;
  const marks = keyMarks(context);
  const count = (index: number, month: number, least: number): number => {
    let hours = 0;
    for (let hour = 24 * MONTH_STARTS[month]!; hour < 24 * MONTH_STARTS[month + 1]!; hour++)
      if (results[index]!.columns.tankMaximumTemperature[hour]! >= least) hours++;
    return hours;
  };
  const letter = (index: number): string => (results.length > 1 ? `${letterOf(index)}: ` : '');
  const columns = results.flatMap((_, index) =>
    marks.map(({ word, value }) => ({
      head: `${letter(index)}at least ${word} [h]`,
      hours: MONTH_NAMES.map((_unused, month) => count(index, month, value)),
    })),
  );
  return {
    header: ['Month', ...columns.map(({ head }) => head)],
    rows: [
      ...MONTH_NAMES.map((name, month) => [name, ...columns.map(({ hours }) => String(hours[month]))]),
      ['Year', ...columns.map(({ hours }) => String(hours.reduce((a, b) => a + b, 0)))],
    ],
  };
}
