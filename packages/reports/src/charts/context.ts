import type { RunResult } from '@noonloop/sim-core';
import { cut, letterOf, plainText } from '../escape.ts';
import { type Summary, summarize } from '../summary.ts';
import type { Units } from '../units.ts';
import { type ChartTheme, isNarrow, paletteOf } from './frame.ts';
import type { Palette } from './palette.ts';

/** What every chart draws from. */
export interface ChartContext {
  readonly results: readonly RunResult[];
  readonly summaries: readonly Summary[];
  readonly units: Units;
  /** [px] */
  readonly width: number;
  readonly narrow: boolean;
  readonly palette: Palette;
  /** Whether losses hang below the months. */
  readonly losses: boolean;
}

/** Text sizes of axes and labels. [px] */
export const TEXT = 12;
/** Room for a design's name over its panel, where there are several. [px] */
export const TITLE_ROOM = 26;

/** Context of one chart. */
export function chartContext(
  results: readonly RunResult[],
  units: Units,
  width: number,
  theme: ChartTheme,
  summaries: readonly Summary[] = results.map(summarize),
): ChartContext {
  return { results, summaries, units, width, narrow: isNarrow(width), palette: paletteOf(theme), losses: false };
}

/** Name of a design over its panel, cut to fit. */
export const panelTitle = ({ results, narrow, palette }: ChartContext, index: number, top: number) => ({
  text: `${letterOf(index)}  ${cut(plainText(results[index]!.design.name), narrow ? 38 : 90)}`,
  left: 4,
  top,
  padding: 0,
  textStyle: { fontSize: 13, fontWeight: 600, color: palette.ink },
});

/** Style of a value axis. */
export const axisStyle = ({ palette }: ChartContext) => ({
  axisLine: { show: true, lineStyle: { color: palette.muted } },
  axisTick: { show: true, lineStyle: { color: palette.muted } },
  axisLabel: { color: palette.muted, fontSize: TEXT },
  splitLine: { lineStyle: { color: palette.grid } },
  nameTextStyle: { color: palette.muted, fontSize: TEXT },
});

/** Upper end of an axis: 1, 2, 2.5 or 5 times a power of ten above the value, in about `steps` steps. */
export function niceAxis(
  minimum: number,
  maximum: number,
  steps: number,
): { min: number; max: number; interval: number } {
  const span = Math.max(maximum - minimum, 1e-9);
  const raw = span / steps;
  const power = 10 ** Math.floor(Math.log10(raw));
  const interval = [1, 2, 2.5, 5, 10].map((factor) => factor * power).find((step) => step >= raw * 0.999) ?? 10 * power;
  return { min: Math.floor(minimum / interval) * interval, max: Math.ceil(maximum / interval) * interval, interval };
}

/** Mark with a word, for legends drawn by hand. @returns the SVG and where the next may start [px] */
export function legendEntry(
  x: number,
  y: number,
  mark: { readonly colour: string; readonly dash?: string },
  word: string,
  ink: string,
): [svg: string, next: number] {
  const { colour, dash } = mark;
  const size = dash === undefined ? 11 : 22;
  const shape =
    dash === undefined
      ? `<rect x="${x}" y="${y - 10}" width="${size}" height="11" fill="${colour}"/>`
      : `<path d="M${x} ${y - 4}h${size}" stroke="${colour}" stroke-width="2"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`;
  const text = `<text x="${x + size + 5}" y="${y}" font-size="${TEXT}" fill="${ink}">${word}</text>`;
  return [shape + text, x + size + 5 + Math.ceil(word.length * 6.4) + 14];
}
