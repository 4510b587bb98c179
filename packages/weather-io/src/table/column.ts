// Cells of one column to numbers, each within what the quantity can be.
import { type Faults, quote } from '../errors.ts';
import { type ColumnKey, INDISPENSABLE, LIMITS, REQUIRED } from '../limits.ts';
import type { WeatherAssumption } from '../year.ts';
import type { DataRows } from './csv.ts';
import { conversion, type PlainUnit } from './units.ts';

/** Where a quantity stands in a table. */
export interface ColumnSource {
  readonly key: ColumnKey;
  /** Header as the file spells it, or the standard's name of the field. */
  readonly name: string;
  /** Index of the cell in a row. */
  readonly index: number;
  readonly unit: PlainUnit;
  /** Numbers that mean "missing" in this column. */
  readonly missing: readonly number[];
  /** From this number on, in the unit of the file, all mean "missing". */
  readonly missingFrom?: number;
  /** Whether 0 in all rows means "not measured". */
  readonly zeroIsUnmeasured?: boolean;
}

/** Decimal numbers only: no hexadecimal, no Infinity, no thousands separators. */
const NUMBER = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;

/** Most digits with which a decimal number is a whole one over a power of ten, both exact: their quotient is then rounded as `Number` rounds. */
const EXACT_DIGITS = 15;
const POWERS_OF_TEN = Float64Array.from({ length: EXACT_DIGITS + 1 }, (_, power) => Number(`1e${power}`));

/** A cell as a number; `NaN` for anything else than a finite decimal number. */
export function numberOf(cell: string): number {
  // A file has a hundred thousand of them, nearly all a few digits about a point: those are read digit by digit.
  const sign = cell.charCodeAt(0);
  let whole = 0;
  let digits = 0;
  let beforePoint = -1;
  for (let at = sign === MINUS || sign === PLUS ? 1 : 0; at < cell.length; at++) {
    const code = cell.charCodeAt(at);
    if (code >= ZERO && code <= NINE) {
      whole = 10 * whole + (code - ZERO);
      digits++;
    } else if (code === POINT && beforePoint < 0) beforePoint = digits;
    else return anyNumberOf(cell);
  }
  if (digits === 0 || digits > EXACT_DIGITS) return anyNumberOf(cell);
  const value = beforePoint < 0 ? whole : whole / POWERS_OF_TEN[digits - beforePoint]!;
  return sign === MINUS ? -value : value;
}

/** Character codes. */
const [PLUS, MINUS, POINT, ZERO, NINE] = [43, 45, 46, 48, 57];

function anyNumberOf(cell: string): number {
  const text = cell.trim();
  return NUMBER.test(text) ? Number(text) : Number.NaN;
}

/**
 * Reads one column, in the unit of the weather year. Missing cells become `NaN`; in a required column they are faults,
 * as letters and impossible values are in any. A column that is missing all through holds nothing; only global irradiance
 * and dry bulb may not. With `keepGaps` missing cells are no faults.
 * Irradiance from −4 to 0 W/m² becomes 0 and relative humidity from 1 to 1.1 becomes 1; `notes` says how often.
 *
 * @returns The values, or `null` where the column holds nothing.
 */
export function readColumn(
  source: ColumnSource,
  rows: DataRows,
  faults: Faults,
  notes: WeatherAssumption[],
  keepGaps = false,
): Float64Array | null {
  const { index, missing, missingFrom = Number.POSITIVE_INFINITY, key } = source;
  const { scale, offset } = conversion(source.unit);
  const { minimum, maximum } = LIMITS[key];
  const lowest = key === 'ghi' || key === 'dni' || key === 'dhi' ? 0 : minimum;
  const highest = key === 'relativeHumidity' ? 1 : maximum;
  const values = new Float64Array(rows.cells.length);
  const gaps: number[] = [];
  let found = 0;
  let nonZero = 0;
  let cut = 0;
  for (let row = 0; row < values.length; row++) {
    const cell = rows.cells[row]![index]!;
    const raw = numberOf(cell);
    if ((raw >= missingFrom && raw < Number.POSITIVE_INFINITY) || missing.includes(raw) || isBlank(raw, cell)) {
      values[row] = Number.NaN;
      gaps.push(row);
      continue;
    }
    let value = raw * scale + offset;
    if (!(value >= minimum && value <= maximum)) {
      faultValue(source, rows.lines[row]!, cell, raw, faults);
      continue;
    }
    if (value < lowest || value > highest) {
      value = value < lowest ? lowest : highest;
      cut++;
    }
    values[row] = value + 0; // −0 + 0 is 0
    found++;
    if (value !== 0) nonZero++;
  }
  if (cut > 0) {
    const text = `${LIMITS[key].words}: ${cut} values just outside ${lowest} to ${highest} were set to that bound.`;
    notes.push({ code: 'instrument-drift-cut', text });
  }
  const empty = gaps.length === values.length;
  if (!keepGaps && REQUIRED.has(key) && !(empty && !INDISPENSABLE.has(key))) {
    for (const row of gaps) faultMissing(source, rows.lines[row]!, rows.cells[row]![index]!, faults);
  }
  if ((found === 0 && !INDISPENSABLE.has(key)) || (source.zeroIsUnmeasured === true && nonZero === 0)) return null;
  return values;
}

const isBlank = (raw: number, cell: string): boolean => Number.isNaN(raw) && cell.trim() === '';

function faultMissing(source: ColumnSource, line: number, cell: string, faults: Faults): void {
  faults.add({
    code: 'missing-value',
    line,
    column: source.name,
    value: quote(cell),
    expected: `${LIMITS[source.key].words}, which every hour needs; this is the mark for a missing value`,
    remedy: "Choose another file, or read it with gaps: 'keep' and call fillGaps, which lists what it fills.",
  });
}

function faultValue(source: ColumnSource, line: number, cell: string, raw: number, faults: Faults): void {
  const { minimum, maximum, reason, words } = LIMITS[source.key];
  const { scale, offset } = conversion(source.unit);
  const from = Number(((minimum - offset) / scale).toPrecision(6));
  const to = Number(((maximum - offset) / scale).toPrecision(6));
  const range = `${words} from ${from} to ${to} ${source.unit} (${reason})`;
  faults.add({
    code: Number.isNaN(raw) ? 'not-a-number' : 'out-of-range',
    line,
    column: source.name,
    value: quote(cell),
    expected: Number.isNaN(raw) ? `a number: ${range}` : range,
    remedy: 'Correct the cell, or choose another file.',
  });
}
