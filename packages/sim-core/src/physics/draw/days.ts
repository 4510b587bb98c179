import { dayOfYear } from '../calendar.ts';

/** Days of the year without leap days. */
const DAYS = 365;

const RANGE = /^(\d\d)-(\d\d)\.\.(\d\d)-(\d\d)$/;

/** First and last day of a range, 0 on 1 January; the last may lie before the first: past the turn of the year. */
interface DayRange {
  readonly first: number;
  readonly last: number;
}

/**
 * Reads a range of days such as `'07-10..07-24'`, month before day, both ends included.
 *
 * @returns `null` where it is no such range, or names a day that the 365-day year has not.
 */
export function readDayRange(text: unknown): DayRange | null {
  const parts = typeof text === 'string' ? RANGE.exec(text) : null;
  if (parts === null) return null;
  const first = dayOfYear(Number(parts[1]), Number(parts[2]));
  const last = dayOfYear(Number(parts[3]), Number(parts[4]));
  return first === null || last === null ? null : { first, last };
}

/** Whether a day lies in a range. */
export const inRange = ({ first, last }: DayRange, day: number): boolean =>
  first <= last ? day >= first && day <= last : day >= first || day <= last;

/**
 * Factor on each day's water: by weekday, 0 on holidays.
 *
 * @param weekdayFactors - From Monday. Shape [7]. [-]
 * @param firstWeekday - Weekday of 1 January, 0 for Monday.
 * @param holidays - Days with no draw.
 * @returns Shape [365]. [-]
 */
export const dayFactors = (
  weekdayFactors: readonly number[],
  firstWeekday: number,
  holidays: readonly DayRange[],
): Float64Array =>
  Float64Array.from({ length: DAYS }, (_, day) =>
    holidays.some((range) => inRange(range, day)) ? 0 : weekdayFactors[(firstWeekday + day) % 7]!,
  );

/**
 * Hours that the house's clock is ahead of standard time: 1 from 02:00 standard time on the first day of the range to 02:00
 * standard time on its last.
 *
 * @param range - `null`: never.
 * @returns Shape [8760]. [h]
 */
export function clockShift(range: DayRange | null): Uint8Array {
  const shift = new Uint8Array(DAYS * 24);
  if (range === null) return shift;
  const start = range.first * 24 + 2;
  const end = range.last * 24 + 2;
  for (let hour = 0; hour < shift.length; hour++) {
    const ahead = start <= end ? hour >= start && hour < end : hour >= start || hour < end;
    shift[hour] = ahead ? 1 : 0;
  }
  return shift;
}
