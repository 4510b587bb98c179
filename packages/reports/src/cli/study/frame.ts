// What all pictures of studies share.
import type { Measure } from '@noonloop/sim-core';
import { type Drawing, draw, paletteOf } from '../../charts/frame.ts';
import { unitIn } from '../../shown-units.ts';
import type { Units } from '../../units.ts';
import { unitOf, wordsOf } from './measures.ts';

/** Width of every study picture. [px] */
export const WIDTH = 860;
/** Colours of study pictures. */
export const palette = paletteOf('light');
/** Size of words. [px] */
export const TEXT = 13;
/** Words beside axes. */
export const text = { color: palette.muted, fontSize: TEXT };
/** An axis. */
export const axis = {
  axisLine: { show: true, lineStyle: { color: palette.muted } },
  axisLabel: text,
  nameTextStyle: { ...text, color: palette.ink },
  nameLocation: 'middle',
  splitLine: { lineStyle: { color: palette.grid } },
};

/** The picture itself. */
export const svg = (drawing: Drawing): Promise<string> => draw(drawing, 'nl-study', WIDTH, 'light');
/** A key figure with its unit. */
export const labelled = (measure: Measure, units: Units): string =>
  `${wordsOf(measure)} [${unitIn(unitOf(measure), units).symbol}]`;
/** A title at the upper left. */
export const title = (words: string) => ({
  text: words,
  left: 8,
  top: 4,
  textStyle: { ...text, color: palette.ink, fontSize: 15, fontWeight: 'normal' },
});
/** An axis as far as its numbers go, not from 0. */
export const near = { scale: true };
