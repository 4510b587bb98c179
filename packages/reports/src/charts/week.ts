/** One week by the hour: temperatures of tank and absorber, sun, and when the pump runs. */
import type { RunColumns } from '@noonloop/sim-core';
import { formatDay, formatHour } from '../calendar.ts';
import { COLUMN_KINDS } from '../columns.ts';
import { letterOf } from '../escape.ts';
import { displayUnit, formatNumber, formatQuantity, formatValue, toDisplay } from '../units.ts';
import { chooseWeek, type Season } from './choose-week.ts';
import { axisStyle, type ChartContext, legendEntry, niceAxis, panelTitle, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';
import type { ColourRole } from './palette.ts';

const HOURS = 168;
const LEFT = 58; // [px]
const LEGEND = 26; // [px]
const TEMPERATURES = 180; // [px]
const SUN = 56; // [px]
const PUMP = 16; // [px]
const GAP = 26; // [px]
const AXIS_ROOM = 34; // [px]

interface Line {
  readonly column: keyof RunColumns;
  readonly role: ColourRole;
  readonly word: string;
  /** SVG dash array; empty for a solid line. */
  readonly dash: string;
  /** Where in the hour the value stands: 1 for its end, 0.5 for a mean. [h] */
  readonly at: number;
}

/** Lines differ in dash as well as colour. */
const LINES: readonly Line[] = [
  { column: 'absorberTemperature', role: 'absorber', word: 'absorber (highest)', dash: '2 3', at: 0.5 },
  { column: 'tankTopTemperature', role: 'tankTop', word: 'tank top', dash: '', at: 1 },
  { column: 'tankBottomTemperature', role: 'tankBottom', word: 'tank bottom', dash: '7 4', at: 1 },
];

const TABLE: readonly [column: keyof RunColumns, word: string][] = [
  ['tankTopTemperature', 'Tank top'],
  ['tankBottomTemperature', 'Tank bottom'],
  ['absorberTemperature', 'Absorber, highest'],
  ['irradiance', 'Sun on the collectors'],
  ['pumpRunning', 'Pump runs'],
];

const firstHour = ({ results }: ChartContext, season: Season): number => chooseWeek(results[0]!, season) * 24;

/** The week of the first design, for all of them, each in three panels. */
export function week(context: ChartContext, season: Season): Drawing {
  const { results, units, palette, narrow, width } = context;
  const several = results.length > 1;
  const from = firstHour(context, season);
  const title = several ? TITLE_ROOM : 0;
  const body = TEMPERATURES + GAP + SUN + GAP + PUMP;
  const step = title + 18 + body + AXIS_ROOM;
  const plot = width - LEFT - 10;
  const hours = Array.from({ length: HOURS }, (_, hour) => hour);
  const read = (index: number, column: keyof RunColumns, hour: number): number =>
    toDisplay(results[index]!.columns[column][from + hour]!, COLUMN_KINDS[column], units);
  const all = results.flatMap((_, index) =>
    LINES.flatMap(({ column }) => hours.map((hour) => read(index, column, hour))),
  );
  const degrees = niceAxis(Math.min(...all), Math.max(...all), 7);
  const brightest = Math.max(1, ...results.flatMap((_, index) => hours.map((hour) => read(index, 'irradiance', hour))));
  const sun = niceAxis(0, brightest, 2);
  const style = axisStyle(context);
  const grids: object[] = [];
  const xAxes: object[] = [];
  const yAxes: object[] = [];
  const series: object[] = [];
  const titles: object[] = [];

  results.forEach((_, index) => {
    const top = LEGEND + index * step + title + 18;
    if (several) titles.push(panelTitle(context, index, top - title - 14));
    const panels: [top: number, height: number][] = [
      [top, TEMPERATURES],
      [top + TEMPERATURES + GAP, SUN],
      [top + TEMPERATURES + GAP + SUN + GAP, PUMP],
    ];
    panels.forEach(([y, height], panel) => {
      const gridIndex = 3 * index + panel;
      grids.push({ left: LEFT, width: plot, top: y, height, outerBoundsMode: 'none' });
      xAxes.push({
        ...style,
        gridIndex,
        type: 'value',
        min: 0,
        max: HOURS,
        interval: 24,
        axisLine: { show: true, onZero: false, lineStyle: { color: palette.muted } },
        axisTick: { show: panel === 2, lineStyle: { color: palette.muted } },
        axisLabel: {
          ...style.axisLabel,
          show: panel === 2,
          customValues: Array.from({ length: 7 }, (_unused, day) => day * 24 + 12),
          formatter: (hour: number) => {
            const day = formatDay(from / 24 + Math.floor(hour / 24));
            return narrow ? day.split(' ')[0]! : day;
          },
        },
      });
      const value = { ...style, gridIndex, type: 'value', nameLocation: 'end', nameGap: 7, axisTick: { show: false } };
      const number = { ...style.axisLabel, formatter: (one: number) => formatNumber(one, 0) };
      const name = { nameTextStyle: { ...style.nameTextStyle, align: 'left', padding: [0, 0, 0, 6 - LEFT + 48] } };
      yAxes.push(
        [
          { ...value, ...degrees, ...name, name: displayUnit('temperature', units).symbol, axisLabel: number },
          { ...value, ...sun, ...name, name: `sun, ${displayUnit('irradiance', units).symbol}`, axisLabel: number },
          {
            ...value,
            ...name,
            min: 0,
            max: 1,
            interval: 1,
            name: 'pump',
            axisLabel: { show: false },
            splitLine: { show: false },
          },
        ][panel]!,
      );
    });
    const at = (panel: number) => ({ xAxisIndex: 3 * index + panel, yAxisIndex: 3 * index + panel });
    for (const { column, role, dash, at: moment } of LINES)
      series.push({
        ...at(0),
        type: 'line',
        symbol: 'none',
        lineStyle: {
          color: palette[role],
          width: role === 'absorber' ? 1.5 : 2,
          type: dash === '' ? 'solid' : dash.split(' ').map(Number),
        },
        data: hours.map((hour) => [hour + moment, read(index, column, hour)]),
      });
    series.push(
      {
        ...at(1),
        type: 'line',
        symbol: 'none',
        lineStyle: { color: palette.sun, width: 1.5 },
        areaStyle: { color: palette.sun, opacity: 0.35 },
        data: hours.map((hour) => [hour + 0.5, read(index, 'irradiance', hour)]),
      },
      {
        ...at(2),
        type: 'line',
        step: 'middle',
        symbol: 'none',
        lineStyle: { width: 0 },
        areaStyle: { color: palette.pump, opacity: 1 },
        // A point before and after, so that the first and the last hour have their whole width.
        data: [-1, ...hours, HOURS].map((hour) => [
          hour + 0.5,
          results[index]!.columns.pumpRunning[from + Math.min(HOURS - 1, Math.max(0, hour))]!,
        ]),
      },
    );
  });

  let front = '';
  let x = 4;
  for (const { role, word, dash } of [LINES[1]!, LINES[2]!, LINES[0]!]) {
    const [entry, next] = legendEntry(x, 14, { colour: palette[role], dash }, word, palette.ink);
    front += entry;
    x = next;
  }
  return {
    height: LEGEND + results.length * step,
    front,
    label: weekLabel(context, season),
    option: { title: titles, grid: grids, xAxis: xAxes, yAxis: yAxes, series },
  };
}

function weekLabel(context: ChartContext, season: Season): string {
  const { results, units } = context;
  const from = firstHour(context, season);
  const peak = (column: Float64Array): number => column.subarray(from, from + HOURS).reduce((a, b) => Math.max(a, b));
  return `${season === 'summer' ? 'Sunniest summer' : 'Dullest winter'} week, ${formatDay(from / 24)} to ${formatDay(from / 24 + 6)}. ${results
    .map(
      ({ design, columns }) =>
        `${design.name}: tank top up to ${formatQuantity(peak(columns.tankTopTemperature), 'temperature', units)}, absorber up to ${formatQuantity(peak(columns.absorberTemperature), 'temperature', units)}`,
    )
    .join('. ')}`;
}

/** First and last day of the week in words. */
export function weekDates(context: ChartContext, season: Season): string {
  const day = firstHour(context, season) / 24;
  return `${formatDay(day)} to ${formatDay(day + 6)}`;
}

/** The numbers of {@link week}. */
export function weekTable(context: ChartContext, season: Season): { header: string[]; rows: string[][] } {
  const { results, units } = context;
  const from = firstHour(context, season);
  const letter = (index: number): string => (results.length > 1 ? `${letterOf(index)}: ` : '');
  return {
    header: [
      'Hour from',
      ...results.flatMap((_, index) =>
        TABLE.map(([column, word]) => `${letter(index)}${word} [${displayUnit(COLUMN_KINDS[column], units).symbol}]`),
      ),
    ],
    rows: Array.from({ length: HOURS }, (_, hour) => [
      formatHour(from + hour),
      ...results.flatMap(({ columns }) =>
        TABLE.map(([column]) =>
          column === 'pumpRunning'
            ? formatNumber(100 * columns[column][from + hour]!, 0)
            : formatValue(columns[column][from + hour]!, COLUMN_KINDS[column], units),
        ),
      ),
    ]),
  };
}
