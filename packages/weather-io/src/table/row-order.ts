// Rows without stamps: their number must make whole hours of a year.
import type { Faults } from '../errors.ts';
import { isLeapYear } from '../time/calendar.ts';
import type { DataRows } from './csv.ts';
import type { Sequence } from './sequence.ts';

/** Rows in an hour that are read. */
const STEPS = [1, 2, 3, 4, 6, 12, 60];

/** Sequence of rows that stand in order from 1 January 00:00; 29 February is there when the count says so. */
export function sequenceOfRows(rows: DataRows, calendarYear: number, faults: Faults): Sequence {
  const count = rows.cells.length;
  const hours = isLeapYear(calendarYear) ? [8760, 8784] : [8760];
  for (const hoursOfYear of hours) {
    const stepsPerHour = count / hoursOfYear;
    if (!STEPS.includes(stepsPerHour)) continue;
    return {
      stepsPerHour,
      leap: hoursOfYear === 8784,
      years: new Int16Array(hoursOfYear).fill(calendarYear),
      firstMinute: 0,
      slots: null,
    };
  }
  return faults.fail({
    code: 'row-count',
    line: rows.lines.at(-1)!,
    value: String(count),
    expected: `${hours.join(' or ')} rows in the year ${calendarYear}, or ${STEPS.slice(1).join(', ')} times as many`,
    remedy: 'Rows without times must be one whole year: complete the file, or name its time columns.',
  });
}
