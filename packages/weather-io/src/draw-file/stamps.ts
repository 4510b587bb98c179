// Time of each row, as its clock shows it and in standard time.
import { type Faults, quote } from '../errors.ts';
import { numberOf } from '../table/column.ts';
import type { DataRows } from '../table/csv.ts';
import { isDate } from '../time/calendar.ts';
import type { DateOrder, DrawLayout } from './layout.ts';
import { ZoneClock } from './zone.ts';

const UNITS = { s: 1, min: 60, h: 3600 } as const;

/** Date, time of day, half of the day, zone. */
const STAMP =
  /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})(?:[T ]+(\d{1,2}):(\d\d)(?::(\d\d(?:\.\d+)?))?\s*([AaPp]\.?[Mm]\.?)?)?\s*(Z|[+-]\d\d:?\d\d)?$/;

/** Times of the rows. */
interface RowTimes {
  /** Whether the file names dates; without, times count from the midnight at which the record begins. */
  readonly dated: boolean;
  /** What the clock showed, counted as if it were UTC. Shape [rows]. [s] */
  readonly wall: Float64Array;
  /** Local standard time, counted so. Shape [rows]. [s] */
  readonly standard: Float64Array;
}

/** Reads the times; one that cannot be read is a fault. @param cells - Index of the columns that hold them. */
export function rowTimes(layout: DrawLayout, rows: DataRows, cells: readonly number[], faults: Faults): RowTimes {
  const { time, decimal } = layout;
  const count = rows.cells.length;
  if (time === 'row-order') {
    // A stamp at the end of its interval is a step later, as anywhere.
    const first = layout.stamps === 'end' && layout.quantity !== 'meter' ? 1 : 0;
    const wall = Float64Array.from({ length: count }, (_, row) => (row + first) * layout.step!);
    return { dated: false, wall, standard: wall };
  }
  const column = 'elapsed' in time ? time.elapsed : 'timestamp' in time ? time.timestamp : `${time.date}, ${time.time}`;
  const wall = new Float64Array(count);
  if ('elapsed' in time) {
    for (let row = 0; row < count; row++) {
      const cell = rows.cells[row]![cells[0]!]!;
      wall[row] = numberOf(decimal === ',' ? cell.replace(',', '.') : cell) * UNITS[time.unit];
      if (!(wall[row]! >= 0)) badTime(faults, rows.lines[row]!, column, cell, `${time.unit} since midnight, 0 or more`);
    }
    return { dated: false, wall, standard: wall };
  }
  const standard = new Float64Array(count);
  const clock = layout.clock === 'daylight-saving' ? new ZoneClock(layout.zone!) : null;
  const order = time.order ?? 'year-month-day';
  let before = Number.NEGATIVE_INFINITY;
  for (let row = 0; row < count; row++) {
    const text = cells.map((cell) => rows.cells[row]![cell]!.trim()).join(' ');
    const stamp = readStamp(text, order);
    const moment = stamp === null ? Number.NaN : toStandard(stamp, layout, clock, before);
    if (Number.isNaN(moment)) {
      badTime(faults, rows.lines[row]!, column, text, expectedStamp(stamp, layout, order));
      continue;
    }
    standard[row] = moment;
    wall[row] = clock === null ? moment : stamp!.wall;
    before = moment;
  }
  return { dated: true, wall, standard };
}

function badTime(faults: Faults, line: number, column: string, found: string, expected: string): void {
  faults.add({
    code: 'bad-time',
    line,
    column,
    value: quote(found),
    expected,
    remedy: 'Correct the cell, or what the layout says about time and clock.',
  });
}

function expectedStamp(stamp: Stamp | null, layout: DrawLayout, order: DateOrder): string {
  if (stamp === null) return `date and time, the date as ${order}`;
  if (stamp.offset !== null) return 'no zone beside clock standard; clock utc takes stamps that name one';
  return `a time that the clocks of ${layout.zone} show: they were put forward over this one`;
}

interface Stamp {
  /** [s] */
  readonly wall: number;
  /** Minus UTC, where the stamp says it. [s] */
  readonly offset: number | null;
}

function readStamp(text: string, order: DateOrder): Stamp | null {
  const parts = STAMP.exec(text);
  if (parts === null) return null;
  const [first, second, third] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  const [year, month, day] =
    order === 'year-month-day'
      ? [first, second, third]
      : order === 'day-month-year'
        ? [third, second, first]
        : [third, first, second];
  let hour = Number(parts[4] ?? 0);
  const minute = Number(parts[5] ?? 0);
  const second_ = Number(parts[6] ?? 0);
  if (parts[7] !== undefined) {
    if (hour < 1 || hour > 12) return null;
    hour = (hour % 12) + (parts[7].toLowerCase().startsWith('p') ? 12 : 0);
  }
  const inDay = hour * 3600 + minute * 60 + second_;
  if (!(year >= 1900 && isDate(year, month, day)) || minute > 59 || second_ >= 60 || inDay > 86_400) return null;
  return { wall: Date.UTC(year, month - 1, day) / 1000 + inDay, offset: zoneOffset(parts[8]) };
}

function zoneOffset(text: string | undefined): number | null {
  if (text === undefined) return null;
  if (text === 'Z') return 0;
  const [hours, minutes] = [Number(text.slice(1, 3)), Number(text.slice(-2))];
  return (text.startsWith('-') ? -1 : 1) * (hours * 3600 + minutes * 60);
}

function toStandard({ wall, offset }: Stamp, layout: DrawLayout, clock: ZoneClock | null, before: number): number {
  if (layout.clock === 'utc') return wall - (offset ?? 0) + layout.utcOffset! * 3600;
  if (clock === null) return offset === null ? wall : Number.NaN;
  if (offset === null) return clock.toStandard(wall, before);
  return wall - offset + clock.standardOffset(new Date(wall * 1000).getUTCFullYear());
}
