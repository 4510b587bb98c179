// The instants at which the rows of a weather year begin.
import { HOURS_OF_YEAR, type WeatherYear } from '../year.ts';
import { monthAndDay } from './calendar.ts';

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

/**
 * Instant at which each row of a weather year begins, in the calendar year in which the row was measured.
 *
 * The sun for the irradiance of row `i` stands where it stands at `hourStarts(weather)[i] + irradianceMidpoint` hours.
 *
 * @param weather - Of it, the fixed offset of the site and the calendar years are used.
 * @returns Milliseconds since 1970-01-01 00:00 UTC. Shape [8760]. [ms]
 */
export function hourStarts(weather: Pick<WeatherYear, 'site' | 'calendarYears'>): Float64Array {
  // A fixed offset has no rules to look up, so a library of time zones would only weigh on every page that simulates.
  const offset = Math.round(weather.site.utcOffset * 60) * MINUTE_MS;
  const starts = new Float64Array(HOURS_OF_YEAR);
  let midnight = 0;
  let midnightOf = -1;
  for (let row = 0; row < HOURS_OF_YEAR; row++) {
    const year = weather.calendarYears[row]!;
    const key = year * 1000 + Math.floor(row / 24);
    if (key !== midnightOf) {
      const { month, day } = monthAndDay(Math.floor(row / 24));
      midnight = utcMidnight(year, month, day) - offset;
      midnightOf = key;
    }
    starts[row] = midnight + (row % 24) * HOUR_MS;
  }
  return starts;
}

/** Start of a day by UTC. [ms] */
function utcMidnight(year: number, month: number, day: number): number {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day); // Date.UTC takes the years 0 to 99 for those of the last century
  return date.getTime();
}

/** Name of a fixed offset as people write it: `UTC+5:30`. @param utcOffset - Local minus UTC. [h] */
export function zoneName(utcOffset: number): string {
  const minutes = Math.round(utcOffset * 60);
  if (minutes === 0) return 'UTC';
  const [whole, rest] = [Math.trunc(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  return `UTC${minutes < 0 ? '-' : '+'}${whole}${rest === 0 ? '' : `:${String(rest).padStart(2, '0')}`}`;
}
