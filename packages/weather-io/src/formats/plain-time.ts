// What the time columns of a plain table mean.
import type { PlainLayout } from '../options.ts';
import { readDigits, type Stamp, type StampReader } from '../table/sequence.ts';
import { dayIndex, isDate, isLeapYear, monthAndDay } from '../time/calendar.ts';
import type { TimeSource } from './format.ts';
import { numberStamps } from './stamps.ts';

/** Year of rows that have none: one without a leap day. */
const DEFAULT_YEAR = 2023;

/** Time of a plain table. @param locate - Index of a header; faults one that is not there. */
export function clockOf(layout: PlainLayout, locate: (name: string) => number): TimeSource {
  const { time, stamps, site } = layout;
  const calendarYear = layout.calendarYear ?? DEFAULT_YEAR;
  const midpoint: TimeSource['midpoint'] =
    layout.irradianceMidpoint ?? (stamps === 'instant' ? 'at the stamped minutes' : 0.5);
  const rest = { zone: site.utcOffset, midpoint, air: airOf(layout), calendarYear };
  if (time === 'row-order') return { read: null, cells: [], name: 'row', ...rest };
  if ('timestamp' in time) {
    const cell = locate(time.timestamp);
    return { read: before(timestamps(cell), stamps), cells: [cell], name: time.timestamp, ...rest };
  }
  const names = [time.year, time.month, time.day, time.hour, time.minute];
  const cells = names.map((name) => (name === undefined ? -1 : locate(name)));
  return {
    read: before(numberStamps(cells, calendarYear), stamps),
    cells: cells.filter((cell) => cell >= 0),
    name: names.filter((name) => name !== undefined).join(', '),
    ...rest,
  };
}

/** Where the air holds: as means of the rows, unless the stamps or the layout say instants. */
function airOf({ stamps, air }: PlainLayout): TimeSource['air'] {
  if (stamps === 'instant') return 'at the stamped minutes';
  if (air === 'instant') return stamps === 'start' ? 'start of the row' : 'end of the row';
  return 0.5;
}

/** Where the numbers of such a stamp begin. */
const TIMESTAMP = [0, 5, 8, 11, 14];

/** Date and time as ISO 8601 writes them, without zone. */
const timestamps =
  (cell: number): StampReader =>
  (cells, out) => {
    const text = cells[cell]!.trim(); // 2017-01-31 09:30, 2017-01-31T09:30:00
    if (text[4] !== '-' || text[7] !== '-' || !(text[10] === ' ' || text[10] === 'T') || text[13] !== ':') return false;
    if (text.length !== 16 && !(text.length === 19 && text.endsWith(':00'))) return false;
    return readDigits(text, TIMESTAMP, out);
  };

/** A row stamped at its end belongs to the minute before. */
function before(read: StampReader, stamps: PlainLayout['stamps']): StampReader {
  if (stamps !== 'end') return read;
  return (cells, out) => {
    if (!read(cells, out) || !isDate(out.year, out.month, out.day)) return false;
    if (!(out.hour >= 0 && out.hour <= 24 && out.minute >= 0 && out.minute <= 59)) return false;
    if (out.hour === 24 && out.minute > 0) return false;
    minuteBefore(out);
    return true;
  };
}

function minuteBefore(out: Stamp): void {
  out.minute--;
  if (out.minute >= 0) return;
  out.minute = 59;
  out.hour--;
  if (out.hour >= 0) return;
  out.hour = 23;
  const leap = isLeapYear(out.year);
  if (leap && out.month === 3 && out.day === 1) {
    out.month = 2;
    out.day = 29;
    return;
  }
  const day = dayIndex(out.month, out.day, false) - 1;
  if (day < 0) out.year--;
  Object.assign(out, monthAndDay(day < 0 ? 364 : day));
}
