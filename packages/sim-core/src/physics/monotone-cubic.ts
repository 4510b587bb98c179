/**
 * A smooth curve through measured points that makes no wave of its own: cubic between the points, with the slope at each by Fritsch & Butland's
 * weighted harmonic mean, 0 where the points turn.
 *
 *     y = y_k (1 + 2t)(1 − t)² + h d_k t (1 − t)² + y_k+1 t² (3 − 2t) + h d_k+1 t² (t − 1),   t = (x − x_k)/h
 *
 * Fritsch & Butland (1984), SIAM J. Sci. Stat. Comput. 5(2) 300; end slopes by three points, as in the usual libraries ("pchip").
 */

import { DesignError, quote, requireNumber } from '../input/errors.ts';

/** Points and the slopes there. */
export interface MonotoneCubic {
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly slope: readonly number[];
}

/** Works points into a curve. @param x - Rising, at least two. */
export function monotoneCubic(x: readonly number[], y: readonly number[]): MonotoneCubic {
  const h = x.slice(1).map((value, at) => value - x[at]!);
  const s = h.map((width, at) => (y[at + 1]! - y[at]!) / width);
  const last = x.length - 1;
  const slope = x.map((_, at) => {
    if (last === 1) return s[0]!;
    if (at === 0) return endSlope(h[0]!, h[1]!, s[0]!, s[1]!);
    if (at === last) return endSlope(h[last - 1]!, h[last - 2]!, s[last - 1]!, s[last - 2]!);
    const before = s[at - 1]!;
    const after = s[at]!;
    if (before * after <= 0) return 0;
    const w1 = 2 * h[at]! + h[at - 1]!;
    const w2 = h[at]! + 2 * h[at - 1]!;
    return (w1 + w2) / (w1 / before + w2 / after);
  });
  return { x, y, slope };
}

/** Of the parabola through the three last points, held so that the curve turns no more than they do. */
function endSlope(near: number, next: number, sNear: number, sNext: number): number {
  const slope = ((2 * near + next) * sNear - near * sNext) / (near + next);
  if (slope * sNear <= 0) return 0;
  return sNear * sNext < 0 && Math.abs(slope) > 3 * Math.abs(sNear) ? 3 * sNear : slope;
}

/** Value of a curve; beyond its ends along the slope there. */
export function cubicAt({ x, y, slope }: MonotoneCubic, at: number): number {
  const last = x.length - 1;
  if (at <= x[0]!) return y[0]! + slope[0]! * (at - x[0]!);
  if (at >= x[last]!) return y[last]! + slope[last]! * (at - x[last]!);
  let k = 0;
  while (x[k + 1]! < at) k++;
  const h = x[k + 1]! - x[k]!;
  const t = (at - x[k]!) / h;
  const u = 1 - t;
  return (
    y[k]! * (1 + 2 * t) * u * u +
    h * slope[k]! * t * u * u +
    y[k + 1]! * t * t * (3 - 2 * t) -
    h * slope[k + 1]! * t * t * u
  );
}

/**
 * Value of a smooth curve through measured points; beyond the ends it goes on straight.
 *
 * @param x - Rising, at least two.
 * @param y - As many.
 * @param at - Where it is asked.
 * @throws {@link DesignError} for points that do not rise, or too few.
 * @see Fritsch & Butland (1984), SIAM J. Sci. Stat. Comput. 5(2) 300.
 */
export function throughPoints(x: readonly number[], y: readonly number[], at: number): number {
  requirePoints('x', x, y, Number.MAX_VALUE);
  requireNumber('at', at, -Number.MAX_VALUE, Number.MAX_VALUE, '');
  return cubicAt(monotoneCubic(x, y), at);
}

/** @throws DesignError where there are no points to lay a curve through. */
export function requirePoints(path: string, x: readonly number[], y: readonly number[], most: number): void {
  const rising = x.every((value, at) => Number.isFinite(value) && value <= most && (at === 0 || value > x[at - 1]!));
  if (rising && x.length > 1 && x.length === y.length && y.every(Number.isFinite)) return;
  const found = quote(x.join(', '));
  const expected = 'two numbers or more, each above the one before, and as many values';
  throw new DesignError([{ path, found, expected, remedy: 'Sort the points, one value for each.' }]);
}
