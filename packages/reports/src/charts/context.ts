import type { RunResult } from '@noonloop/sim-core';
import { cut, letterOf, plainText } from '../escape.ts';
import type { MoneyGiven } from '../money/types.ts';
import { type Summary, summarize } from '../summary.ts';
import type { Units } from '../units.ts';
import { CHARACTER, type ChartTheme, isNarrow, paletteOf } from './frame.ts';
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
  /** Prices, for the chart of money. */
  readonly money: MoneyGiven | null;
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
  const palette = paletteOf(theme);
  return { results, summaries, units, width, narrow: isNarrow(width), palette, losses: false, money: null };
}

/** Characters of a size of text that fit into a width, about. @param width - [px] @param size - [px] */
export const charactersIn = (width: number, size: number = TEXT): number => Math.floor(width / (CHARACTER * size));

/** Name of a design over its panel, cut to fit. */
export const panelTitle = ({ results, width, palette }: ChartContext, index: number, top: number) => ({
  text: `${letterOf(index)}  ${cut(plainText(results[index]!.design.name), charactersIn(width - 40, 13))}`,
  left: 4,
  top,
  padding: 0,
  textStyle: { fontSize: 13, fontWeight: 600, color: palette.ink },
});

/** `A: ` before what is one design's, where there are several. */
export const letterBefore = ({ results }: ChartContext, index: number): string =>
  results.length > 1 ? `${letterOf(index)}: ` : '';

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
  mark: { readonly colour: string; readonly dash?: string; readonly line?: string },
  word: string,
  ink: string,
): [svg: string, next: number] {
  const { colour, dash, line } = mark;
  const size = dash === undefined ? 11 : 26;
  const outline = line === undefined ? '' : ` stroke="${line}"`;
  const shape =
    dash === undefined
      ? `<rect x="${x}" y="${y - 10}" width="${size}" height="11" fill="${colour}"${outline}/>`
      : `<path d="M${x} ${y - 4}h${size}" stroke="${colour}" stroke-width="2"${dash === '' ? '' : ` stroke-dasharray="${dash}"`}/>`;
  const text = `<text x="${x + size + 5}" y="${y}" font-size="${TEXT}" fill="${ink}">${word}</text>`;
  return [shape + text, x + size + 5 + Math.ceil(word.length * CHARACTER * TEXT) + 14];
}

/** Height of a line of a legend. [px] */
const LINE = 19;

/** Entries in as many lines as they need. @returns the SVG and its height [px] */
export function legendLines(
  entries: readonly {
    readonly colour: string;
    readonly dash?: string;
    readonly line?: string;
    readonly word: string;
  }[],
  { width, palette }: ChartContext,
): [svg: string, height: number] {
  let [svg, x, line] = ['', 4, 0];
  for (const { word, ...mark } of entries) {
    if (x > 4 && x + 31 + word.length * CHARACTER * TEXT > width) [x, line] = [4, line + 1];
    const [entry, next] = legendEntry(x, 14 + line * LINE, mark, word, palette.ink);
    svg += entry;
    x = next;
  }
  return [svg, (line + 1) * LINE];
}
