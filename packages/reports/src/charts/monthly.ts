/** Heat into the house's hot water by month and source, with the solar share. */
import { MONTH_NAMES } from '../calendar.ts';
import { letterOf } from '../escape.ts';
import { labelWithUnit, shownMonths } from '../shown.ts';
import type { PeriodSummary } from '../summary.ts';
import { displayUnit, formatNumber, formatQuantity, toDisplay } from '../units.ts';
import { axisStyle, type ChartContext, legendEntry, niceAxis, panelTitle, TEXT, TITLE_ROOM } from './context.ts';
import type { Drawing } from './frame.ts';

const PANEL = 210; // [px]
const LEGEND = 30; // [px]
const AXIS_ROOM = 44; // [px]

const LOSSES = [
  ['pipeLoss', 'lost by pipes', 'absorber'],
  ['tankLoss', 'lost by solar tank', 'tankBottom'],
  ['heaterLoss', 'lost by backup heater', 'pump'],
] as const;

const LOSS_KEYS = LOSSES.map(([key]) => key);
type BarKey = 'deliveredEnergy' | 'heaterHeat' | (typeof LOSS_KEYS)[number];

/** What hangs below the line: a part that gained heat from its room in a month has no bar. [J] */
const lost = (month: PeriodSummary): number => LOSS_KEYS.reduce((sum, key) => sum + Math.max(0, month[key]), 0);

/** Stacked bars, one panel a design, all to the same scale. */
export function monthlyEnergy(context: ChartContext): Drawing {
  const { summaries, units, palette, narrow, width, losses } = context;
  const several = summaries.length > 1;
  const title = several ? TITLE_ROOM : 0;
  const step = PANEL + AXIS_ROOM + title;
  const { symbol } = displayUnit('energy', units);
  const energy = (value: number): number => toDisplay(value, 'energy', units);
  const tallest = Math.max(
    ...summaries.flatMap(({ months }) => months.map((one) => energy(one.deliveredEnergy + one.heaterHeat))),
  );
  const deepest = losses
    ? Math.max(0, ...summaries.flatMap(({ months }) => months.map((month) => energy(lost(month)))))
    : 0;
  const scale = niceAxis(-deepest, tallest * 1.12, losses ? 6 : 4);
  const top = (index: number): number => LEGEND + 18 + index * step + title;
  const style = axisStyle(context);
  const axes = summaries.map((_, index) => ({ gridIndex: index }));
  const bars = (index: number, key: BarKey, colour: string, sign: 1 | -1, label: object) => ({
    type: 'bar',
    name: key,
    stack: `heat${index}`,
    xAxisIndex: index,
    yAxisIndex: index,
    barCategoryGap: '28%',
    itemStyle: { color: colour },
    data: summaries[index]!.months.map((month) => sign * energy(sign < 0 ? Math.max(0, month[key]) : month[key])),
    ...label,
  });
  const share = (index: number) => ({
    label: {
      show: true,
      position: 'top',
      distance: 4,
      color: palette.ink,
      fontSize: narrow ? 10 : TEXT,
      formatter: ({ dataIndex }: { dataIndex: number }) => {
        const fraction = summaries[index]!.months[dataIndex]!.solarFraction;
        return fraction === null ? '' : `${formatNumber(100 * fraction, 0)}%`;
      },
    },
  });
  const [first, next] = legendEntry(4, 14, { colour: palette.solar }, 'from the solar tank', palette.ink);
  const [second, last] = legendEntry(next, 14, { colour: palette.burner }, 'from the burner', palette.ink);
  const shareNote = narrow
    ? `<text x="4" y="32" font-size="${TEXT}" fill="${palette.muted}">% over the bars: solar share</text>`
    : `<text x="${last}" y="14" font-size="${TEXT}" fill="${palette.muted}">% over the bars: solar share</text>`;
  const offset = (narrow ? 16 : 0) + (losses ? (narrow ? 60 : 20) : 0);
  let lossLegend = '';
  let x = 4;
  LOSSES.forEach(([, word, role], at) => {
    const [entry, after] = legendEntry(
      narrow ? 4 : x,
      narrow ? 52 + at * 19 : 34,
      { colour: palette[role] },
      word,
      palette.ink,
    );
    lossLegend += entry;
    x = after;
  });
  return {
    height: LEGEND + 18 + summaries.length * step + offset,
    front: first + second + shareNote + (losses ? lossLegend : ''),
    label: summaries
      .map(
        ({ design, year }) =>
          `Heat by month and source, ${design.name}: ${formatQuantity(year.deliveredEnergy, 'energy', units)} from the solar tank and ${formatQuantity(year.heaterHeat, 'energy', units)} from the burner in the year, solar fraction ${formatQuantity(year.solarFraction, 'fraction', units)}`,
      )
      .join('. '),
    option: {
      title: several ? summaries.map((_, index) => panelTitle(context, index, top(index) + offset - title - 14)) : [],
      grid: summaries.map((_, index) => ({
        left: 52,
        width: width - 52 - 8,
        top: top(index) + offset,
        height: PANEL,
        outerBoundsMode: 'none',
      })),
      xAxis: axes.map((axis) => ({
        ...axis,
        ...style,
        type: 'category',
        data: MONTH_NAMES.map((name) => name.slice(0, narrow ? 1 : 3)),
        axisTick: { show: false },
        axisLine: { ...style.axisLine, onZero: false },
      })),
      yAxis: axes.map((axis) => ({
        ...axis,
        ...style,
        ...scale,
        type: 'value',
        name: symbol,
        nameLocation: 'end',
        nameGap: 8,
        axisLabel: { ...style.axisLabel, formatter: (value: number) => formatNumber(value, 0) },
      })),
      series: summaries.flatMap((_, index) => [
        bars(index, 'deliveredEnergy', palette.solar, 1, {}),
        bars(index, 'heaterHeat', palette.burner, 1, share(index)),
        ...(losses ? LOSSES.map(([key, , role]) => bars(index, key, palette[role], -1, {})) : []),
      ]),
    },
  };
}

/** The numbers of {@link monthlyEnergy}. */
export function monthlyEnergyTable({ summaries, units, losses }: ChartContext): { header: string[]; rows: string[][] } {
  const { symbol } = displayUnit('energy', units);
  const letter = (index: number): string => (summaries.length > 1 ? `${letterOf(index)}: ` : '');
  const columns = summaries.flatMap((summary) =>
    [...(['deliveredEnergy', 'heaterHeat', 'solarFraction'] as const), ...(losses ? LOSS_KEYS : [])].map((key) =>
      shownMonths(summary, key, units),
    ),
  );
  return {
    header: [
      'Month',
      ...summaries.flatMap((_, index) => [
        `${letter(index)}from the solar tank [${symbol}]`,
        `${letter(index)}from the burner [${symbol}]`,
        `${letter(index)}solar share [%]`,
        ...(losses ? LOSS_KEYS.map((key) => `${letter(index)}${labelWithUnit(key, units)}`) : []),
      ]),
    ],
    rows: [...MONTH_NAMES, 'Year'].map((name, row) => [name, ...columns.map((column) => column[row]!)]),
  };
}
