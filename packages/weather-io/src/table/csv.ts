// Text to rows of cells, each with its line in the file.
import Papa from 'papaparse';
import { type Faults, quote } from '../errors.ts';
import { signatureOf } from '../formats/signatures.ts';
import type { WeatherFormat } from '../year.ts';
import { checkShape } from './shape.ts';

/** Rows of a text; row `i` is line `firstLine + i` of the file, since no cell may hold a line break. */
export interface Csv {
  readonly rows: readonly (readonly string[])[];
  readonly firstLine: number;
}

/** Splits text, whose line ends are `\n`, into rows. Lines before `firstLine` have been taken off already. */
export function readCsv(text: string, faults: Faults, delimiter = ',', firstLine = 1): Csv {
  checkShape(text, delimiter, firstLine, faults);
  const data = splitRows(text, delimiter);
  let lines = 1;
  for (let at = text.indexOf('\n'); at >= 0; at = text.indexOf('\n', at + 1)) lines++;
  if (data.length !== lines) {
    const row = data.findIndex((cells) => cells.some((cell) => cell.includes('\n')));
    faults.fail({
      code: 'unclosed-quote',
      line: row < 0 ? null : firstLine + row,
      value: row < 0 ? null : quote(data[row]!.join(delimiter)),
      expected: 'each quotation mark closed in its line',
      remedy: 'Close or remove the quotation mark.',
    });
  }
  return { rows: data, firstLine };
}

/** Rows of a text. Where quotation marks stand in its first lines only, as in most files, the lines after those are split in a fraction of the time. */
function splitRows(text: string, delimiter: string): string[][] {
  const split = (part: string) => Papa.parse<string[]>(part, { delimiter, newline: '\n' });
  const lastQuote = text.lastIndexOf('"');
  const rest = lastQuote < 0 ? 0 : text.indexOf('\n', lastQuote) + 1;
  if (rest === 0) return split(text).data;
  const head = split(text.slice(0, rest));
  if (head.errors.length > 0) return split(text).data; // a quotation mark that is not closed there
  head.data.pop(); // the empty row after the last line end
  return head.data.concat(split(text.slice(rest)).data);
}

/** The rows of hours, with their lines. */
export interface DataRows {
  readonly cells: readonly (readonly string[])[];
  /** Line of each row, from 1. */
  readonly lines: readonly number[];
}

/** Where the rows of hours stand. */
interface Span {
  /** Index of the first of them in {@link Csv.rows}. */
  readonly start: number;
  /** Cells that a row has. */
  readonly width: number;
  /** Index after the last; default: to the end. */
  readonly end?: number;
}

/**
 * Picks the rows of hours after a header: skips empty lines and faults rows with another number of cells than the header. */
export function dataRows(
  csv: Csv,
  format: WeatherFormat,
  { start, width, end = csv.rows.length }: Span,
  faults: Faults,
): DataRows {
  const cells: (readonly string[])[] = [];
  const lines: number[] = [];
  let last = end - 1;
  while (last >= start && isEmpty(csv.rows[last]!)) last--;
  for (let index = start; index <= last; index++) {
    const row = csv.rows[index]!;
    if (row.length === width || (row.length > width && row.slice(width).every((cell) => cell.trim() === ''))) {
      cells.push(row);
      lines.push(csv.firstLine + index);
    } else if (!isEmpty(row)) {
      if (signatureOf(row) !== null) failMixed(row, csv.firstLine + index, format, faults);
      faultRow(row, csv.firstLine + index, index === last, width, faults);
    }
  }
  for (let index = end; index < csv.rows.length; index++) {
    if (signatureOf(csv.rows[index]!) !== null) failMixed(csv.rows[index]!, csv.firstLine + index, format, faults);
  }
  if (cells.length === 0) {
    faults.fail({
      code: 'truncated',
      line: csv.firstLine + Math.max(last, 0),
      expected: 'rows of numbers after the header',
      remedy: 'Download or export the file again.',
    });
  }
  return { cells, lines };
}

const isEmpty = (row: readonly string[]): boolean => row.every((cell) => cell.trim() === '');

function faultRow(row: readonly string[], line: number, isLast: boolean, width: number, faults: Faults): void {
  const cut = isLast && row.length < width;
  faults.add({
    code: cut ? 'truncated' : 'row-length',
    line,
    value: quote(row.join(',')),
    expected: `${width} cells as in the header, not ${row.length}`,
    remedy: cut ? 'The file ends inside a row: download or export it again.' : 'Look for a missing or an extra comma.',
  });
}

function failMixed(row: readonly string[], line: number, format: WeatherFormat, faults: Faults): never {
  const foreign = signatureOf(row);
  return faults.fail({
    code: 'mixed-formats',
    line,
    value: quote(row.join(',')),
    expected: `the ${format} file that began above, not the header of ${foreign === format ? 'another' : `a ${foreign} file`}`,
    remedy: 'Give each file by itself.',
  });
}

/** Index of each header by its name; the first of two alike. A Map, so that no header can reach an object's prototype. */
export function headerIndex(header: readonly string[]): Map<string, number> {
  const index = new Map<string, number>();
  header.forEach((cell, at) => {
    const name = cell.trim();
    if (name !== '' && !index.has(name)) index.set(name, at);
  });
  return index;
}
