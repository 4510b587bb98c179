/** Results as a table of columns: typed arrays, plain rows, CSV or Arrow, for notebooks, spreadsheets and other languages. */
import type { Measure, RunResult, StudyRow } from '@noonloop/sim-core';
import { COLUMN_KINDS, COLUMN_NAMES, columnHeader, SECOND_TANK_COLUMNS, siKey } from '../columns.ts';
import { DEFINITIONS, type NumberKey } from '../definitions.ts';
import { ReportError } from '../errors.ts';
import { escapeCell } from '../escape.ts';
import { toDisplay, type UnitKind, type Units } from '../units.ts';
import { csvText } from './csv.ts';

/** A cell of a {@link DataTable}. */
export type DataValue = number | string | boolean | null;

/** One column of a {@link DataTable}. */
export interface DataColumn {
  /** Name; of quantities with the unit behind the underscore, such as `solarHeat_J`. */
  readonly name: string;
  /** What its values are; an instant is a number as `Date` counts it. */
  readonly kind: 'instant' | 'number' | 'text';
  /** A value for each row, typed where all are numbers. Shape [rows]. [as the name says; instants: ms since 1970-01-01 00:00 UTC] */
  readonly values: Float64Array | readonly DataValue[];
}

/** A table by columns of equal length. */
export interface DataTable {
  /** The columns, in order. */
  readonly columns: readonly DataColumn[];
  /** How many rows. [-] */
  readonly rows: number;
  /** Standard time in which instants are written, minus UTC. [h] */
  readonly utcOffset: number;
}

/** Options of {@link hourData} and {@link studyData}. */
export interface DataOptions {
  /** Units of every number; each name ends with its own. Default `si`: the very numbers of the run, with °C. */
  readonly units?: Units | 'si';
  /** Year in which the hours are dated, 1970 to 9999; a leap day is passed over. Default 2023, which has none: a typical year has no date of its own. */
  readonly year?: number;
}

const HOUR_MS = 3_600_000;

/**
 * Every hour of a run as a table: `time`, the start of the hour, then all columns of the run. In SI the columns are the run's own arrays and not copies.
 *
 * @throws {@link ReportError} for a year or units that there are not.
 * @example
 * const { columns } = hourData(simulate(design, weather));
 * columns.find(({ name }) => name === 'solarHeat_J')!.values; // Float64Array of 8760
 */
export function hourData(run: RunResult, options: DataOptions = {}): DataTable {
  const { year = 2023 } = options;
  const units = unitsOf(options);
  if (!Number.isInteger(year) || year < 1970 || year > 9999)
    throw new ReportError('year', String(year), 'a whole number from 1970 to 9999', 'Give a year.');
  const { utcOffset } = run.site;
  const leapsAt = new Date(Date.UTC(year, 1, 29)).getUTCDate() === 29 ? 59 * 24 : 8760;
  const first = Date.UTC(year, 0, 1) - utcOffset * HOUR_MS;
  const time = Float64Array.from({ length: 8760 }, (_, hour) => first + (hour < leapsAt ? hour : hour + 24) * HOUR_MS);
  const columns = COLUMN_NAMES.map((name) => quantity(name, COLUMN_KINDS[name], run.columns[name], units));
  const second = SECOND_TANK_COLUMNS.flatMap(({ name, kind, of }) => {
    const values = of(run);
    return values === undefined ? [] : [quantity(name, kind, values, units)];
  });
  return { columns: [{ name: 'time', kind: 'instant', values: time }, ...columns, ...second], rows: 8760, utcOffset };
}

/**
 * Rows of a study as a table: place in the study, weather year, what was chosen on each axis, key figures, and the error of a design that failed,
 * whose key figures are `NaN`.
 *
 * @param rows - As `outcome()` of a sweep gives them, or read back from a file.
 * @throws {@link ReportError} for units that there are not.
 */
export function studyData(rows: readonly StudyRow[], options: DataOptions = {}): DataTable {
  const units = unitsOf(options);
  const keys = <T extends string>(of: (row: StudyRow) => object) =>
    [...new Set(rows.flatMap((row) => Object.keys(of(row))))] as T[];
  const inputs = keys(({ inputs: of }) => of).map((name): DataColumn => {
    const values = rows.map(({ inputs: of }) => plain(of[name]));
    const numeric = values.every((value) => typeof value === 'number');
    return numeric
      ? { name, kind: 'number', values: Float64Array.from(values as number[]) }
      : { name, kind: 'text', values };
  });
  const measures = keys<Measure>(({ measures: of }) => of).map((name) =>
    quantity(
      name,
      Object.hasOwn(DEFINITIONS, name) ? DEFINITIONS[name as NumberKey].kind : 'hours',
      Float64Array.from(rows, ({ measures: of }) => of[name] ?? Number.NaN),
      units,
    ),
  );
  const whole = (name: 'index' | 'weather'): DataColumn => ({
    name,
    kind: 'number',
    values: Float64Array.from(rows, (row) => row[name]),
  });
  const failed = rows.some(({ error }) => error !== undefined);
  const errors: DataColumn = { name: 'error', kind: 'text', values: rows.map(({ error }) => error?.message ?? null) };
  return {
    columns: [whole('index'), whole('weather'), ...inputs, ...measures, ...(failed ? [errors] : [])],
    rows: rows.length,
    utcOffset: 0,
  };
}

/** The table as objects, a row each; instants as ISO 8601 with their offset, `NaN` as `null`. */
export function dataRows({ columns, rows, utcOffset }: DataTable): Record<string, DataValue>[] {
  return Array.from({ length: rows }, (_, row) =>
    Object.fromEntries(columns.map((column) => [column.name, cell(column, row, utcOffset)])),
  );
}

/**
 * The table as CSV after RFC 4180: points for decimals, every digit of a number, instants as ISO 8601 with their offset, an empty cell where there is
 * no number. Text that a spreadsheet would take for a formula gets an apostrophe in front.
 */
export function dataCsv({ columns, rows, utcOffset }: DataTable): string {
  const shown = (value: DataValue): DataValue => (typeof value === 'string' ? escapeCell(value) : value);
  const data = Array.from({ length: rows }, (_, row) => columns.map((column) => shown(cell(column, row, utcOffset))));
  return csvText([columns.map(({ name }) => escapeCell(name)), ...data]);
}

/** What {@link dataArrow} takes of the library `apache-arrow`. */
export interface ArrowLibrary<Table> {
  /** Makes a table of vectors by name. */
  readonly Table: new (
    columns: never,
  ) => Table;
  /** Makes a vector of values. */
  readonly vectorFromArray: (values: never, type: never) => unknown;
  /** A vector of a typed array, without a copy. */
  readonly makeVector: (values: never) => unknown;
  /** Type of instants. */
  readonly TimestampMillisecond: new (
    zone: string,
  ) => unknown;
  /** Type of text. */
  readonly Utf8: new () => unknown;
}

/**
 * The table for Arrow, in the library that you give: `apache-arrow`, which these packages do not bring.
 *
 * @param arrow - `import * as arrow from 'apache-arrow'`
 * @returns Its `Table`: instants as timestamps in UTC, numbers as doubles without a copy, the rest as text. `arrow.tableToIPC` writes it.
 */
export function dataArrow<Table>({ columns }: DataTable, arrow: ArrowLibrary<Table>): Table {
  const vectors = columns.map(({ name, kind, values }) => {
    if (kind === 'instant')
      return [name, arrow.vectorFromArray(values as never, new arrow.TimestampMillisecond('UTC') as never)];
    if (values instanceof Float64Array) return [name, arrow.makeVector(values as never)];
    const texts = values.map((value) => (value === null ? null : String(value)));
    return [name, arrow.vectorFromArray(texts as never, new arrow.Utf8() as never)];
  });
  return new arrow.Table(Object.fromEntries(vectors) as never);
}

function unitsOf({ units = 'si' }: DataOptions): Units | 'si' {
  if (['si', 'metric', 'us'].includes(units)) return units;
  throw new ReportError('units', JSON.stringify(units), "'si', 'metric' or 'us'", 'Choose one.');
}

/** A column in the units asked for; in SI as it stands. */
function quantity(name: string, kind: UnitKind, values: Float64Array, units: Units | 'si'): DataColumn {
  if (units === 'si') return { name: siKey(name, kind), kind: 'number', values };
  const shown = values.map((value) => toDisplay(value, kind, units));
  return { name: columnHeader(name, kind, units), kind: 'number', values: shown };
}

/** A chosen value as a cell: lists and fields as JSON. */
const plain = (value: unknown): DataValue =>
  value === undefined
    ? null
    : typeof value === 'object' && value !== null
      ? JSON.stringify(value)
      : (value as DataValue);

function cell({ kind, values }: DataColumn, row: number, utcOffset: number): DataValue {
  const value = values[row]!;
  if (kind === 'instant') return isoTime(value as number, utcOffset);
  return typeof value === 'number' && Number.isNaN(value) ? null : value;
}

/** `2023-01-01T00:00:00-05:00`. */
function isoTime(instant: number, utcOffset: number): string {
  const minutes = Math.abs(Math.round(utcOffset * 60));
  const two = (number: number): string => String(number).padStart(2, '0');
  const zone = `${utcOffset < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
  return `${new Date(instant + utcOffset * HOUR_MS).toISOString().slice(0, 19)}${zone}`;
}
