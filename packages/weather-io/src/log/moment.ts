// Dates and times as people write them.
import { dayIndex, isDate, isLeapYear } from '../time/calendar.ts';
import { summerSpan } from './check-layout.ts';
import type { LogLayout } from './layout.ts';

/** When a reading was taken. */
export interface Moment {
  readonly year: number;
  /** Hours from 00:00 on 1 January, standard time, 29 February not counted; `null` on that day. [h] */
  readonly hour: number | null;
}

const CLOCK = /^(\d{1,2})[:.h](\d\d)(?::\d\d)?\s*([ap])?\.?(?:m\.?)?$/i;

/** Reads date and clock; `null` when they are none. */
export function momentOf(date: string, clock: string, layout: LogLayout): Moment | null {
  const day = dateOf(date, layout.dateOrder ?? 'year-month-day');
  const hours = clockOf(clock);
  if (day === null || hours === null) return null;
  const { year, month, dayOfMonth } = day;
  const standard = hours - (inSummerTime(month, dayOfMonth, hours, layout.summerTime) ? 1 : 0);
  const leap = isLeapYear(year);
  const calendarHour = 24 * dayIndex(month, dayOfMonth, leap) + standard;
  // Half an hour after midnight on 1 January in summer time belongs to the year before; seen south of the equator.
  if (calendarHour < 0) return { year: year - 1, hour: 8760 + calendarHour };
  if (!leap) return { year, hour: calendarHour };
  const leapDay = 24 * 59;
  if (calendarHour >= leapDay && calendarHour < leapDay + 24) return { year, hour: null };
  return { year, hour: calendarHour >= leapDay ? calendarHour - 24 : calendarHour };
}

function dateOf(text: string, order: NonNullable<LogLayout['dateOrder']>) {
  const parts = /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})\.?$/.exec(text.trim());
  if (parts === null) return null;
  const places = order.split('-');
  const part = (name: string): string => parts[1 + places.indexOf(name)]!;
  if (part('year').length !== 4 || part('month').length > 2 || part('day').length > 2) return null;
  const [year, month, dayOfMonth] = ['year', 'month', 'day'].map((name) => Number(part(name))) as [
    number,
    number,
    number,
  ];
  return year >= 1900 && year <= 2100 && isDate(year, month, dayOfMonth) ? { year, month, dayOfMonth } : null;
}

/** Hours after midnight of `14:30`, `2:30 pm` or `14h30`. */
function clockOf(text: string): number | null {
  const parts = CLOCK.exec(text.trim());
  if (parts === null) return null;
  const hour = Number(parts[1]);
  const minute = Number(parts[2]);
  const half = parts[3]?.toLowerCase();
  if (minute > 59) return null;
  if (half === undefined) return hour <= 23 ? hour + minute / 60 : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half === 'p' ? 12 : 0) + minute / 60;
}

/** Whether clocks stand an hour ahead; put forward and back at 02:00 standard time. */
function inSummerTime(month: number, day: number, clock: number, summerTime: string | undefined): boolean {
  const span = summerSpan(summerTime);
  if (span === null) return false;
  const date = month * 100 + day;
  const [from, to] = span;
  // On the last day the clock runs ahead until 03:00 of its own.
  if (date === from) return clock >= 3;
  if (date === to) return clock < 3;
  return from < to ? date > from && date < to : date > from || date < to;
}
