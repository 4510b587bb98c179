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
  /** Mean of the stamps' minutes within the hour, as hours after its start. [h] */
  readonly meanMinute: number;
}

/** Reads the stamp of a row into `out`; `false` when the cells are no time. */
export type StampReader = (cells: readonly string[], out: Stamp) => boolean;

/** A whole number without sign; `NaN` for any other text. */
export const wholeNumber = (text: string | undefined): number =>
  text !== undefined && /^\s*\d{1,4}\s*$/.test(text) ? Number(text) : Number.NaN;

/** Hour without stamp, for a row whose stamp could not be read. */
const UNREAD = -1;

/**
 * Checks that the stamps run through one year without gap, repetition or step back, and gives their order.
 *
 * @param read - Stamp of a row.
 * @param columns - Indexes of the cells that hold the time.
 * @param name - What the file calls them.
 */
export function checkSequence(
  rows: DataRows,
  read: StampReader,
  columns: readonly number[],
  name: string,
  faults: Faults,
): Sequence {
  const count = rows.cells.length;
  const hours = new Int32Array(count).fill(UNREAD);
  const minutes = new Int16Array(count);
  const years = new Int16Array(count);
  const stamp: Stamp = { year: 0, month: 0, day: 0, hour: 0, minute: 0 };
  const value = (row: number): string => quote(columns.map((at) => rows.cells[row]![at]).join(' '));
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
        expected: 'a date and an hour',
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
  const pattern = minutePattern(hours, minutes);
  checkOrder({ rows, hours, minutes, pattern, leap, name, value, faults });
  const steps = pattern.length;
  return {
    stepsPerHour: steps,
    leap,
    years: years.filter((_, row) => row % steps === 0),
    meanMinute: pattern.reduce((sum, minute) => sum + minute, 0) / steps / 60,
  };
}

function isStamp({ year, month, day, hour, minute }: Stamp): boolean {
  return isDate(year, month, day) && hour >= 0 && hour <= 23 && minute >= 0 && minute <= 59;
}

/** Minutes at which rows of the first hour stand; all hours must have the same. */
function minutePattern(hours: Int32Array, minutes: Int16Array): number[] {
  const pattern = new Set<number>();
  for (let row = 0; row < hours.length && hours[row] === hours[0]; row++) pattern.add(minutes[row]!);
  return [...pattern];
}

interface Order {
  readonly rows: DataRows;
  readonly hours: Int32Array;
  readonly minutes: Int16Array;
  readonly pattern: readonly number[];
  readonly leap: boolean;
  readonly name: string;
  readonly value: (row: number) => string;
  readonly faults: Faults;
}

function checkOrder({ rows, hours, minutes, pattern, leap, name, value, faults }: Order): void {
  const steps = pattern.length;
  const total = (leap ? 8784 : 8760) * steps;
  const seen = new Uint8Array(total);
  const fault = (row: number, code: 'bad-time' | 'missing-hour' | 'repeated-hour' | 'out-of-order', expected: string) =>
    faults.add({
      code,
      line: rows.lines[row]!,
      column: name,
      value: value(row),
      expected,
      remedy: 'A year needs each hour once, from 1 January 00:00 on: correct the rows, or choose another file.',
    });
  if (pattern.some((minute, at) => minute !== pattern[0]! + (at * 60) / steps)) {
    fault(0, 'bad-time', `rows at equal steps within the hour, not at the minutes ${pattern.join(', ')}`);
    return;
  }
  let next = 0;
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
    if (slot > next) fault(row, 'missing-hour', `the row after that of the line before; ${slot - next} are missing`);
    else if (slot < next && seen[slot] === 1) fault(row, 'repeated-hour', 'each hour once; this one was there before');
    else if (slot < next) fault(row, 'out-of-order', 'a later time than in the line before');
    seen[slot] = 1;
    next = slot + 1;
  }
  if (next < total) {
    faults.add({
      code: 'truncated',
      line: rows.lines.at(-1)!,
      value: value(hours.length - 1),
      expected: `${total} rows to the end of 31 December, not ${hours.length}`,
      remedy: 'The file is not a whole year: download or export it again, or choose another.',
    });
  }
}
