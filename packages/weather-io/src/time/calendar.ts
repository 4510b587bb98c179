// The calendar without a leap day that a weather year follows, and the one with it that some sources have. What the other packages
// need of it they take by `@noonloop/weather-io/calendar`.

/** Days of the months. Shape [12]. [d] */
export const DAYS_OF_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Weekdays from Monday. */
export const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const;

/** First day of each month, and 365 at the end, in a year without a leap day. Shape [13]. [d] */
export const MONTH_DAYS: readonly number[] = Array.from({ length: 13 }, (_, month) =>
  DAYS_OF_MONTH.slice(0, month).reduce((days, length) => days + length, 0),
);

/** Month, 1 to 12, of each day of a non-leap year. */
const MONTH_OF_DAY = Uint8Array.from(DAYS_OF_MONTH.flatMap((days, month) => new Array<number>(days).fill(month + 1)));

/** First hour of 29 February in a year that has one. */
export const LEAP_DAY_START = (31 + 28) * 24;

/** Month (1 to 12) and day (1 to 31) of a day counted from 0 in a year without a leap day. */
export function monthAndDay(dayIndex: number): { month: number; day: number } {
  const month = MONTH_OF_DAY[dayIndex]!;
  return { month, day: dayIndex - MONTH_DAYS[month - 1]! + 1 };
}

/** Whether a year has 29 February (Gregorian). */
export const isLeapYear = (year: number): boolean => year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);

/** Whether a date exists in the Gregorian calendar; all three must be whole numbers. */
export function isDate(year: number, month: number, day: number): boolean {
  if (!(year >= 1 && year <= 9999 && month >= 1 && month <= 12 && day >= 1)) return false;
  return day <= DAYS_OF_MONTH[month - 1]! + (month === 2 && isLeapYear(year) ? 1 : 0);
}

/** Day of the year from 0; with `leap`, 29 February is counted and moves what follows. */
export function dayIndex(month: number, day: number, leap: boolean): number {
  return MONTH_DAYS[month - 1]! + day - 1 + (leap && month > 2 ? 1 : 0);
}
