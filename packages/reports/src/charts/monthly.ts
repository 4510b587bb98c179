/** Heat into the house's hot water by month and source, with the share of the hot water that the sun makes. */
import { MONTH_NAMES } from '../calendar.ts';
import { labelWithUnit, shownMonths } from '../shown.ts';
import type { PeriodSummary } from '../summary.ts';
import { displayUnit, formatNumber, formatQuantity, toDisplay } from '../units.ts';
import { grid, monthsAxis, uprightAxis } from './axes.ts';
import { type ChartContext, legendLines, letterBefore, niceAxis, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';

const PANEL = { wide: 150, narrow: 160 }; // [px]
const AXIS_ROOM = { wide: 50, narrow: 32 }; // [px]
const LEFT = 48; // [px]
/** Over a panel, for the unit. [px] */
const UNIT_ROOM = 28;

const LOSS_KEYS = ['pipeLoss', 'tankLoss', 'heaterLoss'] as const;

/** What hangs below the line: a part that gained heat from its room in a month has no bar. [J] */
const lost = (month: PeriodSummary): number => LOSS_KEYS.reduce((sum, key) => sum + Math.max(0, month[key]), 0);

/** Months, with the sun's share of the hot water below each. */
function shareAxis(context: ChartContext, index: number) {
  const axis = monthsAxis(context, index);
  if (context.narrow) return axis;
  const { months } = context.summaries[index]!;
  const formatter = (name: string, month: number): string =>
    `${name}\n{ink|${formatNumber(100 * (months[month]!.sunShare ?? 0), 0)} %}`;
  const rich = { ink: { color: context.palette.ink, fontSize: TEXT, lineHeight: 17 } };
  return { ...axis, axisLabel: { ...axis.axisLabel, formatter, rich } };
}

/** Bars of one design: solar heat, the burner's on it, losses below, and what the burner would give without the sun. */
function seriesOf(context: ChartContext, index: number): object[] {
  const { summaries, units, palette, losses } = context;
  const { months } = summaries[index]!;
  const energy = (value: number): number => toDisplay(value, 'energy', units);
  const at = { xAxisIndex: index, yAxisIndex: index };
  const bar = { ...at, type: 'bar', stack: `heat${index}`, barCategoryGap: '30%' };
  // Two pixels of the page between sun and fuel, which touch.
  const edge = { borderColor: palette.page, borderWidth: 1 };
  return [
    { ...bar, itemStyle: { color: palette.solar, ...edge }, data: months.map((one) => energy(one.deliveredEnergy)) },
    {
      ...bar,
      itemStyle: { color: palette.fuel, ...edge },
      data: months.map((one) => energy(one.heaterHeat)),
    },
    ...(losses
      ? [
          {
            ...bar,
            itemStyle: { color: 'none', borderColor: palette.loss, borderWidth: 1.5 },
            data: months.map((one) => -energy(lost(one))),
          },
        ]
      : []),
    {
      ...at,
      type: 'line',
      step: 'middle',
      symbol: 'none',
      lineStyle: { color: palette.ink, width: 1.2 },
      data: months.map((one) => energy(one.baselineHeat)),
    },
  ];
}

/** Stacked bars, one panel a design, all to the same scale. */
export function monthlyEnergy(context: ChartContext): Drawing {
  const { summaries, units, palette, narrow, width, losses } = context;
  const title = summaries.length > 1 ? TITLE_ROOM : 0;
  const panel = narrow ? PANEL.narrow : PANEL.wide;
  const step = UNIT_ROOM + panel + (narrow ? AXIS_ROOM.narrow : AXIS_ROOM.wide) + title;
  const energy = (value: number): number => toDisplay(value, 'energy', units);
  const all = summaries.flatMap(({ months }) => months);
  const tallest = Math.max(
    ...all.map((one) => energy(Math.max(one.deliveredEnergy + one.heaterHeat, one.baselineHeat))),
  );
  const deepest = losses ? Math.max(0, ...all.map((month) => energy(lost(month)))) : 0;
  const scale = niceAxis(-deepest, tallest, losses ? 6 : 4);
  const [legend, room] = legendLines(
    [
      { colour: palette.solar, word: 'from the sun' },
      { colour: palette.fuel, word: 'from the burner' },
      { colour: palette.ink, dash: '', word: 'burner without the sun' },
      ...(losses ? [{ colour: 'none', line: palette.loss, word: 'lost by pipes, tank and heater' }] : []),
    ],
    context,
  );
  const top = (index: number): number => room + index * step + title + UNIT_ROOM;
  return {
    height: room + summaries.length * step,
    front: legend,
    label: summaries
      .map(
        ({ design, year }) =>
          `Heat by month and source, ${design.name}: ${formatQuantity(year.deliveredEnergy, 'energy', units)} from the solar tank and ${formatQuantity(year.heaterHeat, 'energy', units)} from the burner in the year, hot water by the sun ${formatQuantity(year.sunShare, 'fraction', units)}`,
      )
      .join('. '),
    option: {
      title: title === 0 ? [] : summaries.map((_, index) => panelTitle(context, index, top(index) - UNIT_ROOM - 16)),
      grid: summaries.map((_, index) => grid({ left: LEFT, width: width - LEFT - 8, top: top(index), height: panel })),
      xAxis: summaries.map((_, index) => shareAxis(context, index)),
      yAxis: summaries.map((_, index) => uprightAxis(context, index, scale, displayUnit('energy', units).symbol, LEFT)),
      series: summaries.flatMap((_, index) => seriesOf(context, index)),
    },
  };
}

/** The numbers of {@link monthlyEnergy}. */
export function monthlyEnergyTable(context: ChartContext): { header: string[]; rows: string[][] } {
  const { summaries, units, losses } = context;
  const { symbol } = displayUnit('energy', units);
  const keys = ['deliveredEnergy', 'heaterHeat', 'baselineHeat', 'sunShare', ...(losses ? LOSS_KEYS : [])] as const;
  const columns = summaries.flatMap((summary) => keys.map((key) => shownMonths(summary, key, units)));
  return {
    header: [
      'Month',
      ...summaries.flatMap((_, index) => {
        const letter = letterBefore(context, index);
        return [
          `${letter}from the sun [${symbol}]`,
          `${letter}from the burner [${symbol}]`,
          `${letter}burner without the sun [${symbol}]`,
          `${letter}hot water by the sun [%]`,
          ...(losses ? LOSS_KEYS.map((key) => `${letter}${labelWithUnit(key, units)}`) : []),
        ];
      }),
    ],
    rows: [...MONTH_NAMES, 'Year'].map((name, row) => [name, ...columns.map((column) => column[row]!)]),
  };
}
