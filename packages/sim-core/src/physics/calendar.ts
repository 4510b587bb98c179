/** The calendar without a leap day that every year of a run follows. */
import { DAYS_OF_MONTH, MONTH_DAYS } from '@noonloop/weather-io/calendar';

export { DAYS_OF_MONTH };

/** First hour of each month, and the end of the year. Shape [13]. [h] */
export const MONTH_STARTS: readonly number[] = MONTH_DAYS.map((day) => 24 * day);

/** Day of the year, 0 on 1 January, of a month from 1 and a day from 1; `null` where there is no such day. */
export function dayOfYear(month: number, day: number): number | null {
  const length = DAYS_OF_MONTH[month - 1];
  return length !== undefined && day >= 1 && day <= length ? MONTH_STARTS[month - 1]! / 24 + day - 1 : null;
}

/** Mean of an hourly column in each month. Shape [12]. */
export const monthlyMeans = (column: Float64Array): number[] =>
  DAYS_OF_MONTH.map((days, month) => {
    const start = MONTH_STARTS[month]!;
    let sum = 0;
    for (let hour = start; hour < MONTH_STARTS[month + 1]!; hour++) sum += column[hour]!;
    return sum / (24 * days);
  });
