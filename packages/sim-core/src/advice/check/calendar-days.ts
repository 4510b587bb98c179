// Days of a calendar as text, counted in plain numbers: no clock, no zone.

const DAY = 86_400_000;

/** `YYYY-MM-DD` as days since 1970; `null` where there is no such day. */
export function dayNumber(text: unknown): number | null {
  const parts = typeof text === 'string' ? /^(\d{4})-(\d\d)-(\d\d)$/.exec(text) : null;
  if (parts === null) return null;
  const [year, month, day] = parts.slice(1).map(Number) as [number, number, number];
  const stamp = new Date(Date.UTC(year, month - 1, day));
  const exists = stamp.getUTCMonth() === month - 1 && stamp.getUTCDate() === day;
  return exists && year >= 1900 && year <= 2200 ? stamp.getTime() / DAY : null;
}

/** Days since 1970 as `YYYY-MM-DD`. */
export const dayText = (day: number): string => new Date(day * DAY).toISOString().slice(0, 10);

/** First day on or after `from` that has this month (0 January) and day of month. */
export function nextMonthDay(from: number, month: number, dayOfMonth: number): number {
  const year = new Date(from * DAY).getUTCFullYear();
  const inYear = (of: number): number => Date.UTC(of, month, dayOfMonth) / DAY;
  return inYear(year) >= from ? inYear(year) : inYear(year + 1);
}

/** The same day some months later; the last of a month that is too short. */
export function monthsLater(day: number, months: number): number {
  const start = new Date(day * DAY);
  const target = new Date(Date.UTC(start.getUTCFullYear(), start.getUTCMonth() + months, 1));
  const last = new Date(Date.UTC(target.getUTCFullYear(), target.getUTCMonth() + 1, 0)).getUTCDate();
  return Date.UTC(target.getUTCFullYear(), target.getUTCMonth(), Math.min(start.getUTCDate(), last)) / DAY;
}
