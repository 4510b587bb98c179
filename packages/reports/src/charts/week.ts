/** One week by the hour: temperatures, layers of the tank where they were kept, sun and pump, water at the taps. */
import type { RunColumns } from '@noonloop/sim-core';
import { formatDay, formatHour } from '../calendar.ts';
import { COLUMN_KINDS } from '../columns.ts';
import { displayUnit, formatNumber, formatQuantity, formatValue } from '../units.ts';
import { grid, uprightAxis, weekAxis } from './axes.ts';
import { chooseWeek, type WeekKind } from './choose-week.ts';
import { type ChartContext, legendLines, letterBefore, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';
import { layerMarks } from './layers.ts';
import { HOURS, LINES, scalesOf, stripsOf } from './week-strips.ts';

const LEFT = 48; // [px]
const UNIT_ROOM = 23; // [px] over a strip
const AXIS_ROOM = 32; // [px]
/** Over a strip whose name stands before it. [px] */
const CLOSE = 8;

const TABLE: readonly [column: keyof RunColumns, word: string][] = [
  ['tankTopTemperature', 'Tank top'],
  ['tankBottomTemperature', 'Tank bottom'],
  ['absorberTemperature', 'Panels, hottest part'],
  ['irradiance', 'Sun on the panels'],
  ['pumpRunning', 'Pump runs'],
  ['tapVolume', 'Water used at the taps'],
];

/** First day of the week: that of the first design, for all of them. [d] */
const firstDay = ({ results }: ChartContext, kind: WeekKind): number => chooseWeek(results[0]!, kind);

/** The week of the first design, for all of them, in strips on one axis of time. */
export function week(context: ChartContext, kind: WeekKind): Drawing {
  const { palette, width } = context;
  const from = firstDay(context, kind);
  const strips = stripsOf(context, from, scalesOf(context, from));
  const plot = width - LEFT - 10;
  const [legend, room] = legendLines(
    LINES.map(({ role, word, dash }) => ({ colour: palette[role], dash, word })),
    context,
  );
  const grids: object[] = [];
  const xAxes: object[] = [];
  const yAxes: object[] = [];
  const series: object[] = [];
  const titles: object[] = [];
  let [behind, words] = ['', ''];
  let y = room;
  strips.forEach(({ height, name, scale, bare, layers, title, series: of }, gridIndex) => {
    if (title !== undefined) {
      titles.push(panelTitle(context, title, y + 11));
      y += TITLE_ROOM - 2;
    }
    y += bare === true ? CLOSE : UNIT_ROOM;
    const place = { left: LEFT, top: y, width: plot, height };
    grids.push(grid(place));
    if (layers !== undefined) behind += layerMarks(context, layers, from, place);
    xAxes.push(weekAxis(context, gridIndex, from, gridIndex === strips.length - 1));
    const axis = uprightAxis(context, gridIndex, scale, name, LEFT);
    const quiet = { name: '', axisLabel: { show: false }, axisTick: { show: false }, splitLine: { show: false } };
    yAxes.push(bare === true ? { ...axis, ...quiet } : axis);
    if (bare === true)
      words += `<text x="4" y="${y + height / 2 + 4}" font-size="${TEXT}" fill="${palette.muted}">${name}</text>`;
    series.push(...of.map((one) => ({ ...one, xAxisIndex: gridIndex, yAxisIndex: gridIndex })));
    y += height;
  });
  return {
    height: y + AXIS_ROOM,
    behind,
    front: legend + words,
    label: weekLabel(context, kind),
    option: { title: titles, grid: grids, xAxis: xAxes, yAxis: yAxes, series },
  };
}

function weekLabel(context: ChartContext, kind: WeekKind): string {
  const { results, units } = context;
  const from = 24 * firstDay(context, kind);
  const peak = (column: Float64Array): string =>
    formatQuantity(
      column.subarray(from, from + HOURS).reduce((a, b) => Math.max(a, b)),
      'temperature',
      units,
    );
  return `${kind === 'hottest' ? 'Hottest' : 'Coldest'} week, ${weekDates(context, kind)}. ${results
    .map(
      ({ design, columns }) =>
        `${design.name}: tank top up to ${peak(columns.tankTopTemperature)}, panels up to ${peak(columns.absorberTemperature)}`,
    )
    .join('. ')}`;
}

/** First and last day of the week in words. */
export function weekDates(context: ChartContext, kind: WeekKind): string {
  const day = firstDay(context, kind);
  return `${formatDay(day)} to ${formatDay(day + 6)}`;
}

/** The numbers of {@link week}. */
export function weekTable(context: ChartContext, kind: WeekKind): { header: string[]; rows: string[][] } {
  const { results, units } = context;
  const from = 24 * firstDay(context, kind);
  return {
    header: [
      'Hour from',
      ...results.flatMap((_, index) =>
        TABLE.map(
          ([column, word]) =>
            `${letterBefore(context, index)}${word} [${displayUnit(COLUMN_KINDS[column], units).symbol}]`,
        ),
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
