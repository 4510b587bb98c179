/** What is drawn in the panel of one gauge: ranges, middles, arrows, readings. */
import type { CheckedNumber } from '@noonloop/sim-core';
import type { Units } from '../units.ts';
import { shownReading } from './check-words.ts';
import type { Palette } from './palette.ts';

/** Where and how a panel's series are drawn. */
interface PanelPlace {
  /** Of the panel among all. */
  readonly index: number;
  /** Day of the year at the left edge. [d] */
  readonly firstDay: number;
  /** Days from edge to edge. [d] */
  readonly days: number;
  /** Width of the plot. [px] */
  readonly plot: number;
  /** Hour from which the named fault fits best; `null` for none. [h] */
  readonly since: number | null;
  readonly units: Units;
  readonly palette: Palette;
  /** Of the upright axis, in the unit shown. */
  readonly limits: { readonly min: number; readonly max: number };
}

/** Series of one gauge, echarts' options. @param read - Its readings; one at least. */
export function gaugeSeries(read: readonly CheckedNumber[], place: PanelPlace): object[] {
  const { index, firstDay, days, plot, since, units, palette, limits } = place;
  const x = (hour: number): number => hour / 24 - firstDay;
  const here = { xAxisIndex: index, yAxisIndex: index };
  const shown = (value: number): number => shownReading(value, read[0]!.gauge, units);
  const thick = Math.min(7, Math.max(2, (0.5 * plot) / read.length));
  const half = ((thick / 2 + 2) * days) / plot; // [d]
  const { min, max } = limits;
  const held = (value: number): number => Math.min(max, Math.max(min, shown(value)));
  return [
    {
      ...here,
      type: 'line',
      symbol: 'none',
      lineStyle: { color: palette.axis, width: thick, opacity: 0.45, cap: 'butt' },
      data: read.flatMap(({ hour, low, high }) => [
        [x(hour), held(low)],
        [x(hour), held(high)],
        [x(hour), null],
      ]),
    },
    {
      ...here,
      type: 'line',
      symbol: 'none',
      lineStyle: { color: palette.axis, width: 2, cap: 'butt' },
      data: read.flatMap(({ hour, expected }) => [
        [x(hour) - half, shown(expected)],
        [x(hour) + half, shown(expected)],
        [x(hour), null],
      ]),
    },
    // A range that goes on beyond the panel ends in an arrow.
    {
      ...here,
      type: 'scatter',
      symbol: 'arrow',
      symbolSize: [thick + 3, 7],
      itemStyle: { color: palette.axis, opacity: 1 },
      data: read.flatMap(({ hour, low, high }) => [
        ...(shown(high) > max ? [{ value: [x(hour), max], symbolOffset: [0, 4] }] : []),
        ...(shown(low) < min ? [{ value: [x(hour), min], symbolRotate: 180, symbolOffset: [0, -4] }] : []),
      ]),
    },
    ...(since === null ? [] : [{ ...here, ...sinceLine(since / 24 - firstDay, days, palette) }]),
    {
      ...here,
      type: 'scatter',
      data: read.map((number) => ({ value: [x(number.hour), shown(number.found)], ...markOf(number, palette) })),
    },
  ];
}

/** Outside the band: another shape and size, and which way it is off; a slip of the pen is hollow. */
function markOf({ outside, deviation, slip }: CheckedNumber, palette: Palette): object {
  const colour = palette.ink;
  return {
    symbol: outside ? 'triangle' : 'circle',
    symbolRotate: outside && deviation < 0 ? 180 : 0,
    symbolSize: outside ? 11 : 6,
    itemStyle: slip
      ? { color: 'transparent', borderColor: colour, borderWidth: 2, opacity: 1 }
      : { color: colour, opacity: 1 },
  };
}

const sinceLine = (day: number, days: number, palette: Palette): object => ({
  type: 'line',
  data: [],
  markLine: {
    silent: true,
    symbol: 'none',
    label: { show: false },
    lineStyle: { color: palette.ink, width: 1.5, type: [2, 3] },
    data: day >= 0 && day <= days ? [{ xAxis: day }] : [],
  },
});
