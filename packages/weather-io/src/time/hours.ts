// The instants at which the rows of a weather year begin.
import { DateTime, FixedOffsetZone } from 'luxon';
import { HOURS_OF_YEAR, type WeatherYear } from '../year.ts';
import { monthAndDay } from './calendar.ts';

const HOUR_MS = 3_600_000;

/**
 * Instant at which each row of a weather year begins, in the calendar year in which the row was measured.
 *
 * The sun for the irradiance of row `i` stands where it stands at `hourStarts(weather)[i] + irradianceMidpoint` hours.
 *
 * @param weather - Of it, the fixed offset of the site and the calendar years are used.
 * @returns Milliseconds since 1970-01-01 00:00 UTC. Shape [8760]. [ms]
 */
export function hourStarts(weather: Pick<WeatherYear, 'site' | 'calendarYears'>): Float64Array {
  const zone = fixedZone(weather.site.utcOffset);
  const starts = new Float64Array(HOURS_OF_YEAR);
  let midnight = 0;
  let midnightOf = -1;
  for (let row = 0; row < HOURS_OF_YEAR; row++) {
    const year = weather.calendarYears[row]!;
    const key = year * 1000 + Math.floor(row / 24);
    if (key !== midnightOf) {
      const { month, day } = monthAndDay(Math.floor(row / 24));
      midnight = DateTime.fromObject({ year, month, day }, { zone }).toMillis();
      midnightOf = key;
    }
    starts[row] = midnight + (row % 24) * HOUR_MS;
  }
  return starts;
}

/** Zone at a fixed distance from UTC, without daylight saving. @param utcOffset - Local minus UTC. [h] */
const fixedZone = (utcOffset: number): FixedOffsetZone => FixedOffsetZone.instance(Math.round(utcOffset * 60));

/** Name of a fixed offset as people write it: `UTC+5:30`. @param utcOffset - Local minus UTC. [h] */
export const zoneName = (utcOffset: number): string => fixedZone(utcOffset).name;
