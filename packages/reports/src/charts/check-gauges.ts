/** Panels of a checked log: each gauge over the weeks, its readings beside what a healthy system would show. */
import type { CheckedNumber } from '@noonloop/sim-core';
import { formatDay } from '../calendar.ts';
import { formatNumber, type Units } from '../units.ts';
import { digitsOf, grid } from './axes.ts';
import { gaugeSeries } from './check-gauge-series.ts';
import { GAUGE_KEYS, gaugeUnit, gaugeWord, shownReading } from './check-words.ts';
import { legendEntry, niceAxis, TEXT } from './context.ts';
import { isNarrow } from './frame.ts';
import type { Palette } from './palette.ts';

const PLOT = 96; // [px]
const TITLE = 30; // [px]
const GAP = 12; // [px]
const LEFT = 48; // [px]
const RIGHT = 14; // [px]
const AXIS_ROOM = 26; // [px]
const LINE = 20; // [px] of the legend
/** Days between two dates on the axis. */
const DAY_STEPS = [1, 2, 5, 7, 14, 21, 28, 56];

/** What the panels are drawn from. */
interface GaugePanels {
  readonly numbers: readonly CheckedNumber[];
  /** Hour from which the named fault fits best; `null` for none, or all through. [h] */
  readonly since: number | null;
  readonly units: Units;
  /** [px] */
  readonly width: number;
  readonly palette: Palette;
  /** Upper edge. [px] */
  readonly top: number;
}

/** Parts of an echarts option, with legend and height. */
interface Panels {
  readonly title: readonly object[];
  readonly grid: readonly object[];
  readonly xAxis: readonly object[];
  readonly yAxis: readonly object[];
  readonly series: readonly object[];
  readonly front: string;
  /** [px] */
  readonly height: number;
}

/**
 * A panel for each gauge that was read. What a healthy system would show is known for the moments of the readings alone, so it is
 * drawn as an upright bar at each of them and not as a band: between morning and evening it would be invented.
 */
export function gaugePanels(of: GaugePanels): Panels {
  const { numbers, since, units, width, palette, top } = of;
  const gauges = GAUGE_KEYS.filter((key) => numbers.some(({ gauge }) => gauge === key));
  if (gauges.length === 0) return { title: [], grid: [], xAxis: [], yAxis: [], series: [], front: '', height: 0 };
  const [front, legendRoom] = legendOf(of);
  const firstDay = Math.floor(Math.min(...numbers.map(({ hour }) => hour)) / 24);
  const days = Math.max(1, Math.ceil(Math.max(...numbers.map(({ hour }) => hour)) / 24) - firstDay);
  const plot = width - LEFT - RIGHT;
  const most = isNarrow(width) ? 5 : 10;
  const step = DAY_STEPS.find((one) => days / one <= most) ?? Math.ceil(days / most);
  const dates = Array.from({ length: Math.ceil(days / step) }, (_, at) => at * step);
  const at = (index: number): number => top + legendRoom + TITLE + index * (PLOT + TITLE + GAP);
  const label = { color: palette.muted, fontSize: TEXT };
  const axis = { type: 'value', axisTick: { show: false }, splitLine: { lineStyle: { color: palette.grid } } };

  return {
    front,
    height: legendRoom + gauges.length * (PLOT + TITLE + GAP) - GAP + AXIS_ROOM,
    title: gauges.map((gauge, index) => ({
      text: `${gaugeWord(gauge)} [${gaugeUnit(gauge, units)}]`,
      left: 4,
      top: at(index) - TITLE + 8,
      padding: 0,
      textStyle: { fontSize: TEXT + 1, fontWeight: 600, color: palette.ink },
    })),
    grid: gauges.map((_, index) => grid({ left: LEFT, top: at(index), width: plot, height: PLOT })),
    xAxis: gauges.map((_, index) => ({
      ...axis,
      gridIndex: index,
      min: 0,
      max: days,
      interval: step,
      axisLine: { show: true, onZero: false, lineStyle: { color: palette.muted } },
      axisTick: { show: true, customValues: dates, lineStyle: { color: palette.muted } },
      axisLabel: {
        ...label,
        show: index === gauges.length - 1,
        customValues: dates,
        // The last date of a long axis would run over the picture’s edge.
        formatter: (day: number) => (day > days - step / 3 ? '' : formatDay(firstDay + Math.round(day))),
      },
    })),
    yAxis: gauges.map((gauge, index) => {
      const scale = scaleOf(numbers, gauge, units);
      const digits = digitsOf(scale.interval);
      return {
        ...axis,
        ...scale,
        gridIndex: index,
        axisLine: { show: false },
        axisLabel: { ...label, formatter: (value: number) => formatNumber(value, digits) },
      };
    }),
    series: gauges.flatMap((gauge, index) =>
      gaugeSeries(
        numbers.filter((number) => number.gauge === gauge),
        { index, firstDay, days, plot, since, units, palette, limits: scaleOf(numbers, gauge, units) },
      ),
    ),
  };
}

/** Readings and what was expected, with half their span on either side (of one alone, half its range): the widest range must not flatten the rest. */
function scaleOf(numbers: readonly CheckedNumber[], gauge: CheckedNumber['gauge'], units: Units) {
  const of = numbers.filter((number) => number.gauge === gauge);
  const shown = (pick: (number: CheckedNumber) => number): number[] =>
    of.map((number) => shownReading(pick(number), gauge, units));
  const near = [...shown(({ found }) => found), ...shown(({ expected }) => expected)];
  const ranges = shown(({ high }) => high).map((high, at) => high - shown(({ low }) => low)[at]!);
  const span = Math.max(...near) - Math.min(...near);
  const margin = (span > 0 ? span : Math.min(...ranges)) / 2;
  const least = Math.max(Math.min(...near) - margin, Math.min(...near, ...shown(({ low }) => low)));
  const most = Math.min(Math.max(...near) + margin, Math.max(...near, ...shown(({ high }) => high)));
  // A meter never counts back: what a normal distribution says below nought is cut off.
  const bottom = gauge === 'heaterMeter' ? Math.max(0, least) : least;
  return niceAxis(bottom, Math.max(most, bottom), 4);
}

function legendOf({ numbers, since, width, palette, top }: GaugePanels): [svg: string, height: number] {
  const { ink, axis } = palette;
  const triangle = (x: number, y: number, size: number): string =>
    `<path d="M${x} ${y}h11l-5.5 ${size}z" fill="${ink}"/>`;
  const entries: [word: string, mark: (x: number, y: number) => string][] = [
    [
      'a healthy system: 95 % of readings, and the middle',
      (x, y) =>
        `<rect x="${x + 2}" y="${y - 12}" width="7" height="14" fill="${axis}" opacity="0.45"/><rect x="${x}" y="${y - 6}" width="11" height="2" fill="${axis}"/>`,
    ],
    ['read, within', (x, y) => `<circle cx="${x + 5.5}" cy="${y - 4}" r="3" fill="${ink}"/>`],
  ];
  const outside = numbers.filter((number) => number.outside);
  if (outside.some(({ deviation }) => deviation >= 0)) entries.push(['read, above', (x, y) => triangle(x, y, -9)]);
  if (outside.some(({ deviation }) => deviation < 0)) entries.push(['read, below', (x, y) => triangle(x, y - 9, 9)]);
  if (numbers.some(({ slip }) => slip))
    entries.push([
      'hollow: taken for a slip of the pen',
      (x, y) => `<circle cx="${x + 5.5}" cy="${y - 4}" r="4" fill="none" stroke="${ink}" stroke-width="2"/>`,
    ]);
  if (since !== null)
    entries.push([
      'likely since here',
      (x, y) => `<path d="M${x + 5.5} ${y - 12}v14" stroke="${ink}" stroke-width="1.5" stroke-dasharray="2 3"/>`,
    ]);
  let svg = '';
  let x = 4;
  let row = 0;
  for (const [word, mark] of entries) {
    if (x > 4 && x + 30 + word.length * 6.4 > width) {
      row++;
      x = 4;
    }
    const y = top + 14 + row * LINE;
    // The word of a usual entry beside a mark of our own: its square is of no colour.
    const [text, next] = legendEntry(x, y, { colour: 'none' }, word, ink);
    svg += mark(x, y) + text;
    x = next;
  }
  return [svg, (row + 1) * LINE];
}
