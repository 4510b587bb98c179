// Means over months, and the root of a rising function.
import { MONTH_DAYS } from '../time/calendar.ts';

/** Mean of hourly values over each month. Shape [12]. */
export function monthlyMeans(values: Float64Array): Float64Array {
  return Float64Array.from({ length: 12 }, (_, month) => {
    const from = MONTH_DAYS[month]! * 24;
    const to = MONTH_DAYS[month + 1]! * 24;
    let sum = 0;
    for (let hour = from; hour < to; hour++) sum += values[hour]!;
    return sum / (to - from);
  });
}

/**
 * Root of a rising function by halving: the least `x` between the ends with f(x) ≥ 0, to 2⁻⁶⁰ of the interval; an end where
 * there is none.
 */
export function rise(f: (x: number) => number, from: number, to: number): number {
  let low = from;
  let high = to;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return high;
}
