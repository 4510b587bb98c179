/** Days of the months of the non-leap calendar. */
export const DAYS_OF_MONTH = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** First hour of each month, and the end of the year. Shape [13]. */
export const MONTH_STARTS: readonly number[] = [
  0, 744, 1416, 2160, 2880, 3624, 4344, 5088, 5832, 6552, 7296, 8016, 8760,
];

/** Mean of an hourly column in each month. Shape [12]. */
export const monthlyMeans = (column: Float64Array): number[] =>
  DAYS_OF_MONTH.map((days, month) => {
    const start = MONTH_STARTS[month]!;
    let sum = 0;
    for (let hour = start; hour < MONTH_STARTS[month + 1]!; hour++) sum += column[hour]!;
    return sum / (24 * days);
  });
