/** The non-leap calendar of a run: hour 0 is 00:00 to 01:00 on 1 January, local standard time. */
import { MONTH_DAYS as MONTH_STARTS } from '@noonloop/weather-io/calendar';

/** English month names, January first. */
export const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** First day of each month and, last, the end of the year. Shape [13]. [d] */
export { MONTH_STARTS };

/** Month of a day of the year. @param day - 0 to 364 [d] @returns 0 for January to 11 */
export function monthOfDay(day: number): number {
  let month = 0;
  while (month < 11 && day >= MONTH_STARTS[month + 1]!) month++;
  return month;
}

/** Day and month in words, `14 Jul`. @param day - 0 to 364 [d] */
export function formatDay(day: number): string {
  const month = monthOfDay(day);
  return `${day - MONTH_STARTS[month]! + 1} ${MONTH_NAMES[month]!.slice(0, 3)}`;
}

/** Start of an hour in words, `14 Jul 15:00`. @param hour - 0 to 8759 [h] */
export function formatHour(hour: number): string {
  return `${formatDay(Math.floor(hour / 24))} ${String(hour % 24).padStart(2, '0')}:00`;
}

/** Start of an hour in a sentence, `8 August, 3 pm`. @param hour - 0 to 8759 [h] */
export function momentWords(hour: number): string {
  const day = Math.floor(hour / 24);
  const month = monthOfDay(day);
  const clock = hour % 24;
  const time = clock === 0 ? 'midnight' : clock === 12 ? 'noon' : `${clock % 12} ${clock < 12 ? 'am' : 'pm'}`;
  return `${day - MONTH_STARTS[month]! + 1} ${MONTH_NAMES[month]}, ${time}`;
}
