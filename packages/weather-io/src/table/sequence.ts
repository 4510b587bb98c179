// Whether the rows are one whole year, hour after hour.
import { type Faults, quote } from '../errors.ts';
import { dayIndex, isDate } from '../time/calendar.ts';
import type { DataRows } from './csv.ts';

/** Stamp of a row; the hour is the one that the row belongs to, 0 to 23. */
export interface Stamp {
  year: number;
  month: number;
  day: number;
  hour: number;
  minute: number;
}

/** Stamps of a whole year of rows. */
export interface Sequence {
  /** Rows in an hour. */
  readonly stepsPerHour: number;
  /** Whether the rows hold 29 February. */
  readonly leap: boolean;
  /** Calendar year of each hour. */
  readonly years: Int16Array;
  /** Minute of the first stamp in each hour, as hours after its start; the others follow at equal steps. [h] */
  readonly firstMinute: number;
  /** Place of each row in the year, in steps; `null` where the rows are whole and in order. */
  readonly slots: Int32Array | null;
}

/** Reads the stamp of a row into `out`; `false` when the cells are no time. */
export type StampReader = (cells: readonly string[], out: Stamp) => boolean;

/** Whether all of a stamp could be read. */
export const hasNumbers = ({ year, month, day, hour, minute }: Stamp): boolean =>
  !Number.isNaN(year + month + day + hour + minute);

/** How the time of a row is read. */
interface Stamps {
  /** Stamp of a row. */
  readonly read: StampReader;
  /** Indexes of the cells that hold the time. */
  readonly cells: readonly number[];
  /** What the file calls them. */
  readonly name: string;
}

/** A whole number without sign, of at most four digits; `NaN` for any other text. */
export function wholeNumber(text: string | undefined): number {
  const digits = text?.trim() ?? '';
  return digitsAt(digits, 0, digits.length);
}

/** The whole number that one to four digits make, from a place in a text to before another; `NaN` where anything else stands there. */
export function digitsAt(text: string, from: number, to: number): number {
  if (!(to > from && to - from <= 4 && to <= text.length)) return Number.NaN;
  let value = 0;
  for (let at = from; at < to; at++) {
    const digit = text.charCodeAt(at) - 48;
    if (!(digit >= 0 && digit <= 9)) return Number.NaN;
    value = 10 * value + digit;
  }
  return value;
}

/** Reads a year of four digits, and month, day, hour and minute of two, into `out`, each by where it begins in a text. @returns whether all are numbers */
export function readDigits(text: string, begins: readonly number[], out: Stamp): boolean {
  const [year, month, day, hour, minute] = begins as [number, number, number, number, number];
  out.year = digitsAt(text, year, year + 4);
  out.month = digitsAt(text, month, month + 2);
  out.day = digitsAt(text, day, day + 2);
  out.hour = digitsAt(text, hour, hour + 2);
  out.minute = digitsAt(text, minute, minute + 2);
  return hasNumbers(out);
}

/** Hour without stamp, for a row whose stamp could not be read. */
const UNREAD = -1;

/**
 * Checks that the stamps run through one year without gap, repetition or step back, and gives their order. With `keepGaps` rows
 * may be missing, and the twelve months may begin in any of them.
 *
 * @param stamps - How the time of a row is read.
 */
export function checkSequence(
  rows: DataRows,
  { read, cells, name }: Stamps,
  faults: Faults,
  keepGaps = false,
): Sequence {
  const count = rows.cells.length;
  const hours = new Int32Array(count).fill(UNREAD);
  const minutes = new Int16Array(count);
  const years = new Int16Array(count);
  const stamp: Stamp = { year: 0, month: 0, day: 0, hour: 0, minute: 0 };
  const value = (row: number): string => quote(cells.map((at) => rows.cells[row]![at]).join(' '));
  let leap = false;
  const months = new Uint8Array(count);
  const days = new Uint8Array(count);
  for (let row = 0; row < count; row++) {
    if (!read(rows.cells[row]!, stamp) || !isStamp(stamp)) {
      const remedy = 'Correct the time of this row, or choose another file.';
      faults.add({
        code: 'bad-time',
        line: rows.lines[row]!,
        column: name,
        value: value(row),
        expected: `a date and an hour in the years ${YEARS[0]} to ${YEARS[1]}`,
        remedy,
      });
      continue;
    }
    months[row] = stamp.month;
    days[row] = stamp.day;
    hours[row] = stamp.hour;
    minutes[row] = stamp.minute;
    years[row] = stamp.year;
    leap ||= stamp.month === 2 && stamp.day === 29;
  }
  for (let row = 0; row < count; row++) {
    if (hours[row] !== UNREAD) hours[row] = dayIndex(months[row]!, days[row]!, leap) * 24 + hours[row]!;
  }
  const pattern = minutePattern(hours, minutes, keepGaps);
  const slots = checkOrder({ rows, hours, minutes, years, pattern, leap, name, value, faults, keepGaps });
  const steps = pattern.length;
  return {
    stepsPerHour: steps,
    leap,
    years: keepGaps ? yearsOfHours(years, slots, steps, leap) : years.filter((_, row) => row % steps === 0),
    firstMinute: (pattern[0] ?? 0) / 60,
    slots: keepGaps ? slots : null,
  };
}

/** Calendar year of each hour; hours without rows have that of the row before, at the beginning that of the first. */
function yearsOfHours(years: Int16Array, slots: Int32Array, steps: number, leap: boolean): Int16Array {
  const hours = new Int16Array(leap ? 8784 : 8760);
  slots.forEach((slot, row) => {
    if (slot >= 0) hours[Math.floor(slot / steps)] = years[row]!;
  });
  let last = hours.find((year) => year !== 0) ?? 0;
  for (let hour = 0; hour < hours.length; hour++) {
    if (hours[hour] === 0) hours[hour] = last;
    last = hours[hour]!;
  }
  return hours;
}

/** Years of which there is hourly weather, past or foretold. Judgement. */
const YEARS = [1900, 2100] as const;

function isStamp({ year, month, day, hour, minute }: Stamp): boolean {
  if (!(year >= YEARS[0] && year <= YEARS[1])) return false;
  return isDate(year, month, day) && hour >= 0 && hour <= 23 && minute >= 0 && minute <= 59;
}

/** Minutes at which rows of the first hour stand, or where rows may be missing, those of any hour; all must have the same. */
function minutePattern(hours: Int32Array, minutes: Int16Array, all: boolean): number[] {
  const pattern = new Set<number>();
  for (let row = 0; row < hours.length && (all || hours[row] === hours[0]); row++) {
    if (hours[row] !== UNREAD) pattern.add(minutes[row]!);
  }
  return all ? [...pattern].sort((a, b) => a - b) : [...pattern];
}

interface Order {
  readonly rows: DataRows;
  readonly hours: Int32Array;
  readonly minutes: Int16Array;
  readonly years: Int16Array;
  readonly pattern: readonly number[];
  readonly leap: boolean;
  readonly name: string;
  readonly value: (row: number) => string;
  readonly faults: Faults;
  readonly keepGaps: boolean;
}

/** Faults what is not in order; gives the place of each row, −1 where it has none. */
function checkOrder(order: Order): Int32Array {
  const { rows, hours, minutes, years, pattern, leap, name, value, faults, keepGaps } = order;
  const steps = pattern.length;
  const total = (leap ? 8784 : 8760) * steps;
  const seen = new Uint8Array(total);
  const slots = new Int32Array(hours.length).fill(-1);
  const fault = (row: number, code: 'bad-time' | 'missing-hour' | 'repeated-hour' | 'out-of-order', expected: string) =>
    faults.add({
      code,
      line: rows.lines[row]!,
      column: name,
      value: value(row),
      expected,
      remedy:
        code === 'missing-hour'
          ? "A year needs each hour once, from 1 January 00:00 on: complete the rows, or read with gaps: 'keep' and call fillGaps."
          : 'A year needs each hour once, from 1 January 00:00 on: correct the rows, or choose another file.',
    });
  if (pattern.some((minute, at) => minute !== pattern[0]! + (at * 60) / steps)) {
    fault(0, 'bad-time', `rows at equal steps within the hour, not at the minutes ${quote(pattern.join(', '))}`);
    return slots;
  }
  let next = 0;
  let lastYear = years[0]!;
  for (let row = 0; row < hours.length; row++) {
    const step = pattern.indexOf(minutes[row]!);
    if (hours[row] === UNREAD) {
      next++;
      continue;
    }
    if (step < 0) {
      fault(row, 'bad-time', `a stamp at minute ${pattern.join(' or ')} as in the first hour`);
      next++;
      continue;
    }
    const slot = hours[row]! * steps + step;
    slots[row] = slot;
    // A log may begin in any month: with the next year it goes on at the other end of the ring.
    if (keepGaps && slot < next && seen[slot] === 0 && years[row] === lastYear + 1) next = 0;
    lastYear = years[row]!;
    if (slot > next && !keepGaps)
      fault(
        row,
        'missing-hour',
        `the row after that of the line before; ${slot - next} ${slot - next === 1 ? 'is' : 'are'} missing`,
      );
    else if (slot < next && seen[slot] === 1) fault(row, 'repeated-hour', 'each hour once; this one was there before');
    else if (slot < next) fault(row, 'out-of-order', 'a later time than in the line before');
    seen[slot] = 1;
    next = slot + 1;
  }
  if (next < total && !keepGaps) {
    faults.add({
      code: 'truncated',
      line: rows.lines.at(-1)!,
      value: value(hours.length - 1),
      expected: `${total} rows to the end of 31 December, not ${hours.length}`,
      remedy: 'The file is not a whole year: download or export it again, or choose another.',
    });
  }
  return slots;
}
