// Fills gaps in what is no light.
import { type ColumnKey, LIMITS } from '../limits.ts';
import type { LikeDays } from './like-day.ts';
import { runsOf } from './runs.ts';

/** Hours that a straight line bridges: weather seldom turns within them. Common practice, no source. [h] */
const SHORT_GAP = 3;

/**
 * Fills a column in place: up to 3 h on a line between the neighbours; more with the course of the like day about its mean, on a
 * line that meets the neighbours at both ends.
 *
 * @returns Hours that were filled; `null` where a like day or any neighbour was missing.
 */
export function fillColumn(key: ColumnKey, values: Float64Array, like: LikeDays): number[] | null {
  const known = values.slice();
  const filled: number[] = [];
  const { minimum, maximum } = LIMITS[key];
  const highest = key === 'relativeHumidity' ? 1 : maximum;
  for (const { from, to } of runsOf((hour) => Number.isNaN(known[hour]!), values.length)) {
    const before = known[from - 1] ?? known[to];
    const after = known[to] ?? before;
    if (before === undefined || after === undefined) return null;
    const course = to - from <= SHORT_GAP ? null : courseOf(known, from - 1, to, like);
    if (course === undefined) return null;
    const startsAt = course === null ? 0 : course[0]!;
    const endsAt = course === null ? 0 : course[to - from + 1]!;
    for (let hour = from; hour < to; hour++) {
      const step = hour - from + 1;
      const along = step / (to - from + 1);
      const line = before - startsAt + along * (after - endsAt - (before - startsAt));
      const value = line + (course === null ? 0 : course[step]!);
      values[hour] = Math.min(Math.max(value, minimum), highest);
      filled.push(hour);
    }
  }
  return filled;
}

/** Departures of the like days from their means, hour by hour from `first` to `last`; `undefined` where there is none. */
function courseOf(known: Float64Array, first: number, last: number, like: LikeDays): Float64Array | undefined {
  const course = new Float64Array(last - first + 1);
  for (let hour = first; hour <= last; hour++) {
    const at = (hour + 8760) % 8760;
    const day = like.of(Math.floor(at / 24));
    if (day === null) return undefined;
    const lent = known.subarray(day * 24, day * 24 + 24);
    let sum = 0;
    for (const value of lent) sum += value;
    // A day whole in light and dry bulb may lack this quantity: then it lends its absence of any course.
    course[hour - first] = Number.isNaN(sum) ? 0 : lent[at % 24]! - sum / 24;
  }
  return course;
}
