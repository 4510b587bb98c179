// Whether what comes by the day has changed, and when.
import { percentile } from '../../study/percentiles.ts';

/** A change between two stretches of days. */
export interface Change {
  /** First day of the later stretch, as a place in the list. */
  readonly at: number;
  readonly before: number;
  readonly after: number;
  /** Days with a value, before and after. */
  readonly counts: readonly [number, number];
}

/** Fewest days with a value on either side. Judgement. */
const LEAST_BEFORE = 7;
const LEAST_AFTER = 5;
/** Days on either side that are compared: beyond, seasons differ. Judgement. */
const REACH = 45;
/** A hole of so many days without a value ends a stretch. Judgement. */
const HOLE = 10;
/** Deviations of the rank sum from which two stretches differ. Judgement: 1 in 1000 of one split, and the splits hang together. */
const FAR = 3.3;

/** Median of what is no NaN; NaN of nothing. */
export const medianOf = (values: ArrayLike<number>): number => quantileOf(values, 0.5);

/** Quantile of what is no NaN. */
export function quantileOf(values: ArrayLike<number>, share: number): number {
  const known = new Float64Array(values.length);
  let count = 0;
  for (let at = 0; at < values.length; at++) if (!Number.isNaN(values[at]!)) known[count++] = values[at]!;
  const sorted = known.subarray(0, count).sort();
  return sorted.length === 0 ? Number.NaN : percentile(sorted, share);
}

/** Deviations by which later values rank above earlier ones (Wilcoxon 1945, Mann & Whitney 1947, ties by halves). */
function rankDeviations(before: readonly number[], after: readonly number[]): number {
  const [m, n] = [before.length, after.length];
  let above = 0;
  for (const a of after) for (const b of before) above += a > b ? 1 : a === b ? 0.5 : 0;
  return (above - (m * n) / 2) / Math.sqrt((m * n * (m + n + 1)) / 12);
}

/** Values next to a day on one side, as far as they hang together. @param way - −1 before the day, +1 from it on. */
function stretch(days: Float64Array, at: number, way: -1 | 1): number[] {
  const values: number[] = [];
  let hole = 0;
  for (let far = 0; far < REACH && hole < HOLE; far++) {
    const value = days[way < 0 ? at - 1 - far : at + far] ?? Number.NaN;
    hole = Number.isNaN(value) ? hole + 1 : 0;
    if (hole === 0) values.push(value);
  }
  return values;
}

/** The clearest change of level of daily values; `null` where none is clear. @param days - NaN on days without. */
export function changeOf(days: Float64Array): Change | null {
  let best: Change | null = null;
  let most = FAR;
  for (let at = LEAST_BEFORE; at <= days.length - LEAST_AFTER; at++) {
    if (Number.isNaN(days[at]!)) continue;
    const [before, after] = [stretch(days, at, -1), stretch(days, at, 1)];
    if (before.length < LEAST_BEFORE || after.length < LEAST_AFTER) continue;
    const size = Math.abs(rankDeviations(before, after));
    if (size <= most) continue;
    most = size;
    best = { at, before: medianOf(before), after: medianOf(after), counts: [before.length, after.length] };
  }
  return best;
}
