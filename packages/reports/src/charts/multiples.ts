/** The month table as small pictures, one a number. */
import { MONTH_NAMES } from '../calendar.ts';
import { DEFINITIONS, MONTH_KEYS } from '../definitions.ts';
import { letterOf } from '../escape.ts';
import { labelWithUnit, shownMonths } from '../shown.ts';
import { formatNumber, formatQuantity, toDisplay } from '../units.ts';
import { axisStyle, type ChartContext, niceAxis, TEXT } from './context.ts';
import { designLegend, designStyle } from './designs.ts';
import type { Drawing } from './frame.ts';

const PLOT = 84; // [px]
const STEP = PLOT + 64; // [px]
const LEFT = 44; // [px]

/** Bars for what adds up and for shares, dots for temperatures; designs side by side in each month. */
export function monthMultiples(context: ChartContext): Drawing {
  const { summaries, units, palette, narrow, width } = context;
  const several = summaries.length > 1;
  const [legend, room] = several ? designLegend(context) : ['', 0];
  const columns = narrow ? 1 : 3;
  const share = width / columns;
  const spots = MONTH_KEYS.map((_, at) => ({
    left: (at % columns) * share,
    top: room + 6 + Math.floor(at / columns) * STEP,
  }));
  const style = axisStyle(context);
  const scales = MONTH_KEYS.map((key) => {
    const { kind } = DEFINITIONS[key];
    const all = summaries.flatMap(({ months }) => months.map((month) => toDisplay(month[key] ?? 0, kind, units)));
    if (kind === 'temperature') return niceAxis(Math.min(...all), Math.max(...all), 3);
    // Nothing at all, such as a year without stagnation, still has a scale.
    return niceAxis(Math.min(0, ...all), Math.max(0, ...all) || 1, 3);
  });
  return {
    height: room + 6 + Math.ceil(MONTH_KEYS.length / columns) * STEP,
    front: legend,
    label: summaries
      .map(
        ({ design, months }) =>
          `Months of ${design.name}: ${MONTH_KEYS.map((key) => {
            const best = months.reduce(
              (at, month, index) => ((month[key] ?? 0) > (months[at]![key] ?? 0) ? index : at),
              0,
            );
            return `${DEFINITIONS[key].label.toLowerCase()} highest in ${MONTH_NAMES[best]} with ${formatQuantity(months[best]![key], DEFINITIONS[key].kind, units)}`;
          }).join(', ')}`,
      )
      .join('. '),
    option: {
      title: MONTH_KEYS.map((key, at) => ({
        text: labelWithUnit(key, units),
        left: spots[at]!.left + 4,
        top: spots[at]!.top + 4,
        padding: 0,
        textStyle: { fontSize: TEXT + 1, fontWeight: 600, color: palette.ink },
      })),
      grid: spots.map(({ left, top }) => ({
        left: left + LEFT,
        top: top + 30,
        width: share - LEFT - 14,
        height: PLOT,
        outerBoundsMode: 'none',
      })),
      xAxis: MONTH_KEYS.map((_, at) => ({
        ...style,
        gridIndex: at,
        type: 'category',
        data: MONTH_NAMES.map((name) => name[0]),
        axisTick: { show: false },
        axisLine: { show: true, onZero: false, lineStyle: { color: palette.muted } },
        axisLabel: { ...style.axisLabel, fontSize: 11, interval: 0 },
      })),
      yAxis: MONTH_KEYS.map((_, at) => ({
        ...style,
        ...scales[at],
        gridIndex: at,
        type: 'value',
        axisLine: { show: false },
        axisTick: { show: false },
        axisLabel: {
          ...style.axisLabel,
          fontSize: 11,
          formatter: (value: number) => formatNumber(value, value % 1 === 0 ? 0 : 1),
        },
      })),
      series: MONTH_KEYS.flatMap((key, at) =>
        summaries.map(({ months }, index) => {
          const { kind } = DEFINITIONS[key];
          const colour = several ? designStyle(palette, index).colour : palette.solar;
          return {
            type: kind === 'temperature' ? 'scatter' : 'bar',
            xAxisIndex: at,
            yAxisIndex: at,
            symbolSize: 6,
            barCategoryGap: '24%',
            barGap: '0%',
            itemStyle: { color: colour },
            data: months.map((month) => toDisplay(month[key] ?? 0, kind, units)),
          };
        }),
      ),
    },
  };
}

/** The numbers of {@link monthMultiples}: the month table of each design. */
export function monthMultiplesTable({ summaries, units }: ChartContext): { header: string[]; rows: string[][] } {
  const letter = (index: number): string => (summaries.length > 1 ? `${letterOf(index)}: ` : '');
  const columns = summaries.flatMap((summary) => MONTH_KEYS.map((key) => shownMonths(summary, key, units)));
  return {
    header: [
      'Month',
      ...summaries.flatMap((_, index) => MONTH_KEYS.map((key) => `${letter(index)}${labelWithUnit(key, units)}`)),
    ],
    rows: [...MONTH_NAMES, 'Year'].map((name, row) => [name, ...columns.map((column) => column[row]!)]),
  };
}
