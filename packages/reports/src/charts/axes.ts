/** Axes of all charts, set up once: panels below each other, values, months, days of a week. */
import { formatDay, MONTH_NAMES, MONTH_STARTS, monthOfDay } from '../calendar.ts';
import { formatNumber } from '../units.ts';
import { type ChartContext, TEXT } from './context.ts';

/** Where a panel stands. [px] */
export interface Place {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Least, greatest and step of an axis. */
export interface Scale {
  readonly min: number;
  readonly max: number;
  readonly interval: number;
}

/** What axes need of a chart. */
type AxisContext = Pick<ChartContext, 'palette' | 'narrow'>;

/** A panel: exactly where it is said to be. */
export const grid = (place: Place): object => ({ ...place, outerBoundsMode: 'none' });

/** Style of a value axis. */
const axisStyle = ({ palette }: AxisContext) => ({
  axisLine: { show: true, onZero: false, lineStyle: { color: palette.axis } },
  axisTick: { show: true, lineStyle: { color: palette.axis } },
  axisLabel: { color: palette.muted, fontSize: TEXT },
  splitLine: { lineStyle: { color: palette.grid } },
  nameTextStyle: { color: palette.muted, fontSize: TEXT },
});

/** Decimals that a scale needs. */
export function digitsOf(interval: number): number {
  let digits = 0;
  while (digits < 6 && Math.abs(interval * 10 ** digits - Math.round(interval * 10 ** digits)) > 1e-6) digits++;
  return digits;
}

/** Upright axis of numbers, its unit over it, from the picture's edge. @param room - left of the panel [px] */
export function uprightAxis(context: AxisContext, gridIndex: number, scale: Scale, name: string, room: number) {
  const style = axisStyle(context);
  const digits = digitsOf(scale.interval);
  return {
    ...style,
    ...scale,
    gridIndex,
    type: 'value',
    name,
    nameLocation: 'end',
    nameGap: 8,
    nameTextStyle: { ...style.nameTextStyle, align: 'left', padding: [0, 0, 0, 4 - room] },
    axisTick: { show: false },
    axisLabel: { ...style.axisLabel, formatter: (value: number) => formatNumber(value, digits) },
  };
}

/** Level axis of numbers, its name below it. */
export function levelAxis(context: AxisContext, gridIndex: number, scale: Scale, name: string) {
  const style = axisStyle(context);
  const digits = digitsOf(scale.interval);
  return {
    ...style,
    ...scale,
    gridIndex,
    type: 'value',
    name,
    nameLocation: 'middle',
    nameGap: 28,
    splitLine: { show: false },
    axisLabel: {
      ...style.axisLabel,
      // Whole steps alone: an end between them would stand at the picture's edge.
      customValues: Array.from(
        { length: Math.floor((scale.max - scale.min) / scale.interval + 1e-9) + 1 },
        (_, step) => scale.min + step * scale.interval,
      ),
      formatter: (value: number) => formatNumber(value, digits),
    },
  };
}

/** Twelve months for bars. */
export const monthsAxis = (context: AxisContext, gridIndex: number) => ({
  ...axisStyle(context),
  gridIndex,
  type: 'category',
  data: MONTH_NAMES.map((name) => name.slice(0, context.narrow ? 1 : 3)),
  axisTick: { show: false },
  splitLine: { show: false },
  axisLabel: { ...axisStyle(context).axisLabel, interval: 0 },
});

/** The days of the year, named by month. */
export function yearAxis(context: AxisContext, gridIndex: number) {
  const style = axisStyle(context);
  return {
    ...style,
    gridIndex,
    type: 'value',
    min: 0,
    max: 365,
    splitLine: { show: false },
    axisTick: { customValues: [...MONTH_STARTS], lineStyle: style.axisTick.lineStyle },
    axisLabel: {
      ...style.axisLabel,
      hideOverlap: false,
      customValues: MONTH_STARTS.slice(0, 12).map((start, month) => (start + MONTH_STARTS[month + 1]!) / 2),
      formatter: (day: number) => MONTH_NAMES[monthOfDay(Math.floor(day))]!.slice(0, context.narrow ? 1 : 3),
    },
  };
}

/** The hours of a day, midnight at the bottom. */
export const clockAxis = (context: AxisContext, gridIndex: number) => ({
  ...uprightAxis(context, gridIndex, { min: 0, max: 24, interval: 6 }, '', 0),
  splitLine: { show: false },
  axisTick: { show: true, lineStyle: { color: context.palette.axis } },
  axisLabel: { ...axisStyle(context).axisLabel, formatter: (hour: number) => `${hour}:00` },
});

/** The hours of a week, named by day. @param from - first day of the year [d] @param named - whether days are named below it */
export function weekAxis(context: AxisContext, gridIndex: number, from: number, named: boolean) {
  const style = axisStyle(context);
  return {
    ...style,
    gridIndex,
    type: 'value',
    min: 0,
    max: 168,
    interval: 24,
    axisTick: { show: named, lineStyle: style.axisTick.lineStyle },
    axisLabel: {
      ...style.axisLabel,
      show: named,
      customValues: Array.from({ length: 7 }, (_, day) => day * 24 + 12),
      formatter: (hour: number) => {
        const day = formatDay(from + Math.floor(hour / 24));
        return context.narrow ? day.split(' ')[0]! : day;
      },
    },
  };
}
