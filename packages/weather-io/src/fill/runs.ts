// Stretches of hours in which something is missing.
import { hourName } from '../quality/collector.ts';

/** Hours from `from` up to, but without, `to`. */
interface Run {
  readonly from: number;
  readonly to: number;
}

/** Stretches of hours for which `missing` holds. */
export function runsOf(missing: (hour: number) => boolean, hours: number): Run[] {
  const runs: Run[] = [];
  for (let hour = 0; hour < hours; hour++) {
    if (!missing(hour)) continue;
    const from = hour;
    while (hour + 1 < hours && missing(hour + 1)) hour++;
    runs.push({ from, to: hour + 1 });
  }
  return runs;
}

/** How many hours, in words: `1 hour`, `7 hours`. */
export const countHours = (hours: readonly number[]): string => `${hours.length} hour${hours.length === 1 ? '' : 's'}`;

/** Hours as people write them, stretch by stretch: `3 Jul 14:00 to 17:00`. */
export function nameHours(hours: readonly number[]): string {
  const sorted = hours.toSorted((a, b) => a - b);
  const set = new Set(sorted);
  const parts: string[] = [];
  for (const hour of sorted) {
    if (set.has(hour - 1)) continue;
    let end = hour;
    while (set.has(end)) end++;
    const last =
      Math.floor((end - 1) / 24) === Math.floor(hour / 24)
        ? `${String(end - Math.floor(hour / 24) * 24).padStart(2, '0')}:00`
        : hourName(end % 8760);
    parts.push(`${hourName(hour)} to ${last}`);
  }
  return parts.join(', ');
}
