// A table with several years in a row, cut where a new year begins.
import type { SourceTable } from './formats/format.ts';
import type { Stamp } from './table/sequence.ts';

/** One year of a table. */
interface YearOfTable {
  readonly table: SourceTable;
  /** Calendar year of its last row; months of a typical year may have others. */
  readonly year: number;
}

/**
 * Cuts a table where its stamps go from a later month to 1 January. Tables without stamps, or whose stamps cannot be read, come
 * back whole: the check of their order says what is wrong.
 */
export function yearsOfTable(table: SourceTable): YearOfTable[] {
  const { rows, time } = table;
  const count = rows.cells.length;
  if (time.read === null) return [{ table, year: time.calendarYear ?? 0 }];
  const stamp: Stamp = { year: 0, month: 0, day: 0, hour: 0, minute: 0 };
  const starts = [0];
  const years: number[] = [];
  let month = 0;
  let year = 0;
  for (let row = 0; row < count; row++) {
    if (!time.read(rows.cells[row]!, stamp)) continue;
    if (stamp.month < month && stamp.month === 1) {
      starts.push(row);
      years.push(year);
    }
    month = stamp.month;
    year = stamp.year;
  }
  years.push(year);
  if (starts.length === 1) return [{ table, year }];
  return starts.map((start, part) => {
    const end = starts[part + 1] ?? count;
    const cut = { cells: rows.cells.slice(start, end), lines: rows.lines.slice(start, end) };
    return { table: { ...table, rows: cut }, year: years[part]! };
  });
}
