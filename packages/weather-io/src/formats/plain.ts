// Plain tables: our own self-describing layout, and any other with a column map from the caller.
import { quote } from '../errors.ts';
import { COLUMN_KEYS, INDISPENSABLE } from '../limits.ts';
import type { PlainLayout } from '../options.ts';
import type { ColumnSource } from '../table/column.ts';
import { type Csv, dataRows, headerIndex, readCsv } from '../table/csv.ts';
import { type ColumnName, type Format, type FormatInput, locateColumns, locateTime, rowAt } from './format.ts';
import { checkLayout } from './plain-check.ts';
import { ownLayout } from './plain-header.ts';
import { LAYOUT_COLUMNS, LAYOUT_MARK, LAYOUT_TIME } from './plain-layout.ts';
import { clockOf } from './plain-time.ts';

/** Local standard time, hour by hour or finer; the layout says the rest. */
export const plain: Format = {
  name: 'plain',

  sniff: (head) => head[0]?.startsWith(LAYOUT_MARK) ?? false,

  parse(input) {
    const { text, faults, options } = input;
    const comments = leadingComments(text);
    const own = comments[0]?.startsWith(LAYOUT_MARK) ?? false;
    if (!own && options.plain === undefined) {
      faults.fail({
        code: 'bad-option',
        column: 'plain',
        expected: 'a layout (option plain) that says where the place, the time and the columns of this table are',
        remedy: 'Give the layout, or a file in a known format.',
      });
    }
    const layout = options.plain ?? ownLayout(comments, input);
    checkLayout(layout, faults);
    faults.throwIfAny();
    const start = comments.reduce((length, line) => length + line.length + 1, 0);
    const table = layout.decimal === ',' ? pointsForCommas(text.slice(start)) : text.slice(start);
    const delimiter = layout.delimiter ?? (layout.decimal === ',' ? ';' : ',');
    const csv = readCsv(table, faults, delimiter, comments.length + 1);
    const header = rowAt(csv, 0, faults);
    const columns = findColumns(header, csv, layout, input, options.plain === undefined);
    const time = clockOf(layout, (name) => locateTime(header, csv.firstLine, name, faults));
    faults.throwIfAny();
    if (!own && layout.air === undefined && layout.stamps !== 'instant') input.notes.push(AIR_AS_LIGHT);
    return {
      site: layout.site,
      columns,
      rows: dataRows(csv, 'plain', { start: 1, width: header.length }, faults),
      time,
    };
  },
};

const AIR_AS_LIGHT = {
  code: 'air-as-light',
  text: 'Air, wind and the like are taken as means of the same hours as the light; the layout does not say (its field `air`).',
};

/** Names what stands in a file of our own layout and is not read: it may be a header that was spoilt. */
function noteUnread(header: readonly string[], notes: FormatInput['notes']): void {
  const known = new Set<string>([
    ...Object.values(LAYOUT_COLUMNS).map(({ column }) => column),
    ...Object.values(LAYOUT_TIME),
  ]);
  const unread = header.filter((name) => !known.has(name.trim())).map(quote);
  if (unread.length > 0)
    notes.push({
      code: 'column-not-read',
      text: `Columns that are not of the layout were not read: ${unread.join(', ')}.`,
    });
}

/** Rows after the header with points for their decimal commas. */
function pointsForCommas(table: string): string {
  const rows = table.indexOf('\n') + 1;
  return table.slice(0, rows) + table.slice(rows).replaceAll(',', '.');
}

/** Lines at the head that begin with `#`. */
function leadingComments(text: string): string[] {
  const lines: string[] = [];
  let at = 0;
  while (text[at] === '#') {
    const end = text.indexOf('\n', at);
    lines.push(text.slice(at, end < 0 ? text.length : end));
    at = end < 0 ? text.length : end + 1;
  }
  return lines;
}

/** Columns of the map; those that the caller names must be there, those of our own layout only if required. */
function findColumns(
  header: readonly string[],
  csv: Csv,
  layout: PlainLayout,
  { faults, notes }: FormatInput,
  own: boolean,
): ColumnSource[] {
  const names: ColumnName[] = [];
  const present = headerIndex(header);
  for (const key of COLUMN_KEYS) {
    const column = layout.columns[key];
    if (column === undefined) continue;
    names.push({ key, name: column.column, unit: column.unit });
    if (!own && !present.has(column.column)) {
      faults.add({
        code: 'missing-column',
        line: csv.firstLine,
        column: column.column,
        value: quote(header.join(',')),
        expected: `this header, which the column map names for ${key}`,
        remedy: 'Correct the map, or choose another file.',
      });
    }
  }
  faults.throwIfAny();
  if (own) noteUnread(header, notes);
  return locateColumns(
    { header, line: csv.firstLine, missing: layout.missing ?? [] },
    names,
    { faults },
    INDISPENSABLE,
  );
}
