// A table of a sheet for a spreadsheet.
import Papa from 'papaparse';
import { escapeCell } from '../../escape.ts';
import { converted, unitIn } from '../../shown-units.ts';
import type { Units } from '../../units.ts';
import { EXIT, Refusal } from '../exit-codes.ts';
import type { Cell, Column, Sheet, Table } from './model.ts';

/** Rows with CRLF; heads carry the unit, numbers are not rounded. @param name - Which table; the first where none is named. */
export function sheetCsv({ blocks }: Sheet, units: Units, name?: string): string {
  const tables = blocks.filter((block): block is Table => block.kind === 'table');
  const found = name === undefined ? tables[0] : tables.find((one) => one.name === name);
  if (found === undefined) {
    const names = tables.map((one) => one.name).join(', ');
    throw new Refusal(EXIT.usage, [
      names === '' ? 'this answer has no table. Take another format.' : `--table: expected one of ${names}.`,
    ]);
  }
  const { columns, rows } = found;
  const cell = (value: Cell, { unit }: Column): Cell =>
    typeof value === 'string'
      ? escapeCell(value)
      : value === null || unit === undefined
        ? value
        : converted(value, unit, units);
  const head = columns.map(({ label, unit }) => {
    const symbol = unit === undefined ? '' : unitIn(unit, units).symbol;
    return escapeCell(symbol === '' ? label : `${label} [${symbol}]`);
  });
  const body = rows.map((row) => row.map((value, at) => cell(value, columns[at]!)));
  return `${Papa.unparse([head, ...body], { newline: '\r\n' })}\r\n`;
}
