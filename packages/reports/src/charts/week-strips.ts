/** Strips of one week: what each shows, and to which scale. */
import type { RunColumns } from '@noonloop/sim-core';
import { COLUMN_KINDS } from '../columns.ts';
import { displayUnit, toDisplay } from '../units.ts';
import type { Scale } from './axes.ts';
import { type ChartContext, letterBefore, niceAxis } from './context.ts';
import { dashOf } from './designs.ts';
import type { ColourRole } from './palette.ts';

/** A week. [h] */
export const HOURS = 168;
const HEIGHT = { temperatures: 120, layers: 56, sun: 34, pump: 10, draw: 26 }; // [px]
/** Of the temperatures of each of several designs. [px] */
const SEVERAL = 80;

/** A temperature that is drawn. */
interface Line {
  readonly column: keyof RunColumns;
  readonly role: ColourRole;
  readonly word: string;
  /** SVG dash array; empty for a solid line. */
  readonly dash: string;
  readonly thick: number;
  /** Where in the hour the value stands: 1 for its end, 0.5 for a mean. [h] */
  readonly at: number;
}

/** Lines differ in dash and weight as well as colour. */
export const LINES: readonly Line[] = [
  { column: 'absorberTemperature', role: 'solar', word: 'panels, hottest part', dash: '2 3', thick: 1.5, at: 0.5 },
  { column: 'tankTopTemperature', role: 'tankTop', word: 'tank top', dash: '', thick: 2.5, at: 1 },
  { column: 'tankBottomTemperature', role: 'tankBottom', word: 'tank bottom', dash: '6 3', thick: 1.5, at: 1 },
];

/** Scales that all designs share. */
interface Scales {
  readonly degrees: Scale;
  readonly sun: Scale;
  readonly draw: Scale;
}

const reader =
  ({ results, units }: ChartContext, from: number) =>
  (index: number, column: keyof RunColumns, hour: number): number =>
    toDisplay(results[index]!.columns[column][24 * from + hour]!, COLUMN_KINDS[column], units);

/** Scales over all designs. @param from - first day of the week [d] */
export function scalesOf(context: ChartContext, from: number): Scales {
  const read = reader(context, from);
  const all = (columns: readonly (keyof RunColumns)[]): number[] =>
    context.results.flatMap((_, index) =>
      columns.flatMap((column) => Array.from({ length: HOURS }, (_unused, hour) => read(index, column, hour))),
    );
  const degrees = all(LINES.map(({ column }) => column));
  return {
    degrees: niceAxis(Math.min(...degrees), Math.max(...degrees), 6),
    sun: niceAxis(0, Math.max(1, ...all(['irradiance'])), 2),
    draw: niceAxis(0, Math.max(1e-3, ...all(['tapVolume'])), 1),
  };
}

/** What one strip adds to the picture. */
interface Strip {
  readonly height: number;
  /** Over it, or before it where it is bare. */
  readonly name: string;
  readonly scale: Scale;
  readonly series: readonly object[];
  /** No numbers at its axis. */
  readonly bare?: boolean;
  /** Design whose layers fill it. */
  readonly layers?: number;
  /** Design whose name stands over it. */
  readonly title?: number;
}

const HOUR_LIST = Array.from({ length: HOURS }, (_, hour) => hour);

/** Designs whose week of a column differs from that of every design before: the others need no strip of their own. */
function distinct({ results }: ChartContext, column: keyof RunColumns, from: number): number[] {
  const week = (index: number): Float64Array => results[index]!.columns[column].subarray(24 * from, 24 * from + HOURS);
  const same = (a: Float64Array, b: Float64Array): boolean =>
    a.every((value, at) => Math.abs(value - b[at]!) <= 1e-3 * Math.abs(value));
  return results.flatMap((_, index) =>
    results.slice(0, index).some((_unused, before) => same(week(index), week(before))) ? [] : [index],
  );
}

function temperatures(context: ChartContext, index: number, from: number, { degrees }: Scales): Strip[] {
  const { results, units, palette } = context;
  const read = reader(context, from);
  const strip: Strip = {
    height: results.length > 1 ? SEVERAL : HEIGHT.temperatures,
    name: displayUnit('temperature', units).symbol,
    scale: degrees,
    series: LINES.map(({ column, role, dash, thick, at }) => ({
      type: 'line',
      symbol: 'none',
      lineStyle: { color: palette[role], width: thick, type: dashOf(dash) },
      data: HOUR_LIST.map((hour) => [hour + at, read(index, column, hour)]),
    })),
    ...(results.length > 1 ? { title: index } : {}),
  };
  if (results.length > 1 || results[index]!.tankNodes.length === 0) return [strip];
  return [
    strip,
    {
      height: HEIGHT.layers,
      name: 'layers',
      scale: { min: 0, max: 1, interval: 1 },
      series: [],
      bare: true,
      layers: index,
    },
  ];
}

/** Strips of all designs: each its temperatures and its pump; sun and draw once where they are the same. */
export function stripsOf(context: ChartContext, from: number, scales: Scales): Strip[] {
  const { results, units, palette } = context;
  const read = reader(context, from);
  // A point before and after, so that the first and the last hour have their whole width.
  const blocks = (index: number, column: keyof RunColumns, colour: string): object => ({
    type: 'line',
    step: 'middle',
    symbol: 'none',
    lineStyle: { width: 0 },
    areaStyle: { color: colour, opacity: 1 },
    data: [-1, ...HOUR_LIST, HOURS].map((hour) => [
      hour + 0.5,
      read(index, column, Math.min(HOURS - 1, Math.max(0, hour))),
    ]),
  });
  const symbol = (column: keyof RunColumns): string => displayUnit(COLUMN_KINDS[column], units).symbol;
  const [suns, draws] = [distinct(context, 'irradiance', from), distinct(context, 'tapVolume', from)];
  const of = (all: readonly number[], index: number): string => (all.length > 1 ? letterBefore(context, index) : '');
  return [
    ...results.flatMap((_, index) => temperatures(context, index, from, scales)),
    ...suns.map(
      (index): Strip => ({
        height: HEIGHT.sun,
        name: `${of(suns, index)}sun on the panels, ${symbol('irradiance')}`,
        scale: scales.sun,
        series: [
          {
            type: 'line',
            symbol: 'none',
            lineStyle: { color: palette.sunLine, width: 1.2 },
            areaStyle: { color: palette.sun, opacity: 1 },
            data: HOUR_LIST.map((hour) => [hour + 0.5, read(index, 'irradiance', hour)]),
          },
        ],
      }),
    ),
    ...results.map(
      (_, index): Strip => ({
        height: HEIGHT.pump,
        name: `${letterBefore(context, index)}pump`,
        scale: { min: 0, max: 100, interval: 100 },
        series: [blocks(index, 'pumpRunning', palette.ink)],
        bare: true,
      }),
    ),
    ...draws.map(
      (index): Strip => ({
        height: HEIGHT.draw,
        name: `${of(draws, index)}water at the taps, ${symbol('tapVolume')} in the hour`,
        scale: scales.draw,
        series: [blocks(index, 'tapVolume', palette.tankTop)],
      }),
    ),
  ];
}
