/** Two or more designs by what leads a report, each number as bars beside each other. */
import { DEFINITIONS, type NumberKey } from '../definitions.ts';
import { letterOf } from '../escape.ts';
import { labelWithUnit } from '../shown.ts';
import { formatQuantity, formatValue, toDisplay } from '../units.ts';
import { axisStyle, type ChartContext, niceAxis, TEXT } from './context.ts';
import { designLegend, designStyle } from './designs.ts';
import type { Drawing } from './frame.ts';

const KEYS = [
  'deliveredEnergy',
  'stagnationHours',
  'peakTankTemperature',
  'solarFraction',
  'fuelSaved',
  'hottestAbsorber',
] as const satisfies readonly NumberKey[];
const ROW = 24; // [px] a design
const TITLE = 26; // [px]
const GAP = 16; // [px]

/** Why there is no picture, or `null`. */
export const barsMissing = ({ results }: ChartContext): string | null =>
  results.length > 1 ? null : 'One design alone has nothing to be compared with.';

/** A small panel for each number. Temperatures are dots: their scale has no natural nought. */
export function comparisonBars(context: ChartContext): Drawing {
  const { summaries, units, palette, narrow, width } = context;
  const columns = narrow ? 1 : 2;
  const [legend, legendRoom] = designLegend(context);
  const body = summaries.length * ROW;
  const step = TITLE + body + GAP;
  const share = width / columns;
  const style = axisStyle(context);
  const spots = KEYS.map((_, at) => ({
    left: (at % columns) * share,
    top: legendRoom + 10 + Math.floor(at / columns) * step,
  }));
  const shown = (key: NumberKey, index: number): number | null => {
    const value = summaries[index]!.year[key];
    return value === null ? null : toDisplay(value, DEFINITIONS[key].kind, units);
  };
  const isTemperature = (key: NumberKey): boolean => DEFINITIONS[key].kind === 'temperature';
  const ends = KEYS.map((key) => {
    const all = summaries.map((_, index) => shown(key, index) ?? 0);
    const low = isTemperature(key) ? Math.min(...all) : 0;
    const high = Math.max(...all, low + 1e-9);
    if (isTemperature(key))
      return { min: low - Math.max(5, (high - low) * 0.3), max: high + Math.max(5, (high - low) * 0.3) };
    return { min: Math.min(0, ...all), max: niceAxis(0, high, 4).max };
  });
  return {
    height: legendRoom + 10 + Math.ceil(KEYS.length / columns) * step,
    front: legend,
    label: summaries
      .map(
        ({ design, year }) =>
          `${design.name}: ${KEYS.map((key) => `${DEFINITIONS[key].label.toLowerCase()} ${formatQuantity(year[key], DEFINITIONS[key].kind, units)}`).join(', ')}`,
      )
      .join('. '),
    option: {
      title: KEYS.map((key, at) => ({
        text: labelWithUnit(key, units),
        left: spots[at]!.left + 4,
        top: spots[at]!.top + 4,
        padding: 0,
        textStyle: { fontSize: TEXT + 1, fontWeight: 600, color: palette.ink },
      })),
      grid: spots.map(({ left, top }) => ({
        left: left + 26,
        top: top + TITLE,
        width: share - 26 - 76,
        height: body,
        outerBoundsMode: 'none',
      })),
      xAxis: KEYS.map((_, at) => ({
        gridIndex: at,
        type: 'value',
        ...ends[at],
        axisLabel: { show: false },
        axisTick: { show: false },
        axisLine: { show: false },
        splitLine: { show: false },
      })),
      yAxis: KEYS.map((_, at) => ({
        gridIndex: at,
        type: 'category',
        inverse: true,
        data: summaries.map((_unused, index) => letterOf(index)),
        axisTick: { show: false },
        axisLine: { show: true, lineStyle: { color: palette.muted } },
        axisLabel: { ...style.axisLabel, color: palette.ink, interval: 0 },
      })),
      series: KEYS.map((key, at) => ({
        type: isTemperature(key) ? 'scatter' : 'bar',
        xAxisIndex: at,
        yAxisIndex: at,
        barWidth: '62%',
        symbolSize: 11,
        label: {
          show: true,
          position: 'right',
          color: palette.ink,
          fontSize: TEXT,
          formatter: ({ dataIndex }: { dataIndex: number }) =>
            formatValue(summaries[dataIndex]!.year[key], DEFINITIONS[key].kind, units),
        },
        data: summaries.map((_, index) => {
          const value = shown(key, index) ?? 0;
          const itemStyle = { color: designStyle(palette, index).colour };
          return isTemperature(key) ? { value: [value, index], itemStyle } : { value, itemStyle };
        }),
      })),
    },
  };
}

/** The numbers of {@link comparisonBars}. */
export function comparisonBarsTable({ summaries, units }: ChartContext): { header: string[]; rows: string[][] } {
  return {
    header: ['Number', ...summaries.map((_, index) => letterOf(index))],
    rows: KEYS.map((key) => [
      labelWithUnit(key, units),
      ...summaries.map(({ year }) => formatValue(year[key], DEFINITIONS[key].kind, units)),
    ]),
  };
}
