// What a reader of a format takes and gives; build.ts makes the year from it.
import { type Faults, quote } from '../errors.ts';
import { type ColumnKey, LIMITS, REQUIRED } from '../limits.ts';
import type { AnyOptions } from '../options.ts';
import type { ColumnSource } from '../table/column.ts';
import { numberOf } from '../table/column.ts';
import { type Csv, type DataRows, headerIndex } from '../table/csv.ts';
import type { Sequence, StampReader } from '../table/sequence.ts';
import type { PlainUnit } from '../table/units.ts';
import type { Site, WeatherAssumption, WeatherFormat } from '../year.ts';

/** A text to be parsed. */
export interface FormatInput {
  /** Without byte order mark, line ends `\n`. */
  readonly text: string;
  readonly options: AnyOptions;
  readonly faults: Faults;
  /** Receives what is assumed. */
  readonly notes: WeatherAssumption[];
}

/** A table as it stands in the file, with what its columns and stamps mean. */
export interface SourceTable {
  /** Place; `utcOffset` is the local standard time that the file states or suggests. */
  readonly site: Site;
  readonly rows: DataRows;
  readonly columns: readonly ColumnSource[];
  readonly time: TimeSource;
}

/** What the stamps mean. */
export interface TimeSource {
  /** Stamp of a row, as the hour that the row belongs to; `null` for rows in order. */
  readonly read: StampReader | null;
  /** Indexes of the cells that hold the time. */
  readonly cells: readonly number[];
  /** What the file calls them. */
  readonly name: string;
  /** Calendar year of rows in order. */
  readonly calendarYear?: number;
  /** Zone of the stamps minus UTC. [h] */
  readonly zone: number;
  /** From the start of the stamped hour to the middle of what its irradiance stands for. [h] */
  readonly midpoint: number | 'at the stamped minutes';
  /** From the start of the stamped hour to where air, wind, pressure and clouds hold: at an instant, or as a mean. [h] */
  readonly air: number | 'at the stamped minutes' | 'start of the row' | 'end of the row';
  /** The same for the middle of what long-wave irradiance stands for; left out, as air. [h] */
  readonly longwave?: number;
  /** Other readings that the file may mean, the format's own first: where given, the closure decides. */
  readonly candidates?: (sequence: Sequence) => readonly Reading[];
  /** From the start of the stamped hour to the stamp itself, for words. [h] */
  readonly stampAt?: number;
}

/** Instants of a file's columns, measured in UTC from the start of the stamped hour. */
export interface Reading {
  /** Middle of what the irradiance stands for. [h] */
  readonly light: number;
  /** Where air, wind, pressure and clouds hold. [h] */
  readonly air: number;
  /** Middle of what long-wave irradiance stands for. [h] */
  readonly longwave: number;
}

/** A format: how to recognize it and how to read it. */
export interface Format {
  readonly name: WeatherFormat;
  /** Whether these first lines of a file begin one of this format. */
  sniff(head: readonly string[]): boolean;
  /** Reads the table. @throws WeatherError when it is no whole table of the format. */
  parse(input: FormatInput): SourceTable;
}

/** A column as a format names it. */
export interface ColumnName {
  readonly key: ColumnKey;
  readonly name: string;
  readonly unit: PlainUnit;
  readonly zeroIsUnmeasured?: boolean;
}

/** The row of a table that names its columns. */
interface Headers {
  readonly header: readonly string[];
  /** Its line in the file. */
  readonly line: number;
  /** Numbers that stand for a missing value. */
  readonly missing: readonly number[];
}

/**
 * Finds columns by their headers. Required ones that are not there, and headers that stand twice, are faults.
 *
 * @param input - Its notes, where given, are told of other columns that are not there.
 * @param required - Columns without which a file is refused.
 */
export function locateColumns(
  { header, line, missing }: Headers,
  names: readonly ColumnName[],
  { faults, notes }: Pick<FormatInput, 'faults'> & Partial<Pick<FormatInput, 'notes'>>,
  required = REQUIRED,
): ColumnSource[] {
  const index = headerIndex(header);
  const sources: ColumnSource[] = [];
  for (const column of names) {
    const at = index.get(column.name);
    if (at !== undefined) {
      sources.push({ ...column, index: at, missing });
      if (header.some((cell, other) => other > at && cell.trim() === column.name)) {
        const remedy = 'Remove or rename one of them.';
        faults.add({ code: 'bad-header', line, column: column.name, expected: 'this header once, not twice', remedy });
      }
    } else if (required.has(column.key)) {
      faults.add({ code: 'missing-column', line, column: column.name, ...absent(column) });
    } else if (!REQUIRED.has(column.key)) {
      // A header that was spoilt would otherwise go unseen.
      const text = `The file has no column ${quote(column.name)}; there is no ${LIMITS[column.key].words}.`;
      notes?.push({ code: 'column-absent', text });
    }
  }
  return sources;
}

const absent = (column: ColumnName) => ({
  expected: `a column for ${LIMITS[column.key].words} [${column.unit}]`,
  remedy: 'Download the file with this column, or choose another file.',
});

/** Index of a time column; a fault where it is not there. */
export function locateTime(header: readonly string[], line: number, name: string, faults: Faults): number {
  const at = headerIndex(header).get(name);
  if (at !== undefined) return at;
  const remedy = 'Download the file with this column, or choose another file.';
  faults.add({ code: 'missing-column', line, column: name, expected: 'a column for the time of the rows', remedy });
  return -1;
}

/** Numbers of a place, from cells of a header. */
export class SiteReader {
  readonly #faults: Faults;

  constructor(faults: Faults) {
    this.#faults = faults;
  }

  /** Latitude, −90 to 90. [°] */
  latitude = (cell: string | undefined, line: number | null): number =>
    this.number(cell, line, 'latitude', [-90, 90], '° north');

  /** Longitude, −180 to 180. [°] */
  longitude = (cell: string | undefined, line: number | null): number =>
    this.number(cell, line, 'longitude', [-180, 180], '° east');

  /** Elevation, from the Dead Sea to above the highest station. [m] */
  elevation = (cell: string | undefined, line: number | null): number =>
    this.number(cell, line, 'elevation', [-450, 9000], 'm');

  /** Local minus UTC; the inhabited Earth has −12 to 14. [h] */
  utcOffset = (cell: string | undefined, line: number | null): number =>
    this.number(cell, line, 'UTC offset', [-12, 14], 'h');

  /** Height of the wind, from the grass to a tall mast. [m] */
  windHeight = (cell: string | undefined, line: number | null): number =>
    this.number(cell, line, 'windHeight', [0.5, 200], 'm');

  /** A number within bounds; otherwise a fault and 0. */
  number(
    cell: string | undefined,
    line: number | null,
    name: string,
    [from, to]: readonly [number, number],
    unit: string,
  ): number {
    const value = numberOf(cell ?? '');
    if (value >= from && value <= to) return value;
    this.#faults.add({
      code: 'bad-header',
      line,
      column: name,
      value: cell === undefined ? null : quote(cell),
      expected: `${name} from ${from} to ${to} ${unit}`,
      remedy: 'Correct the header, or download the file again.',
    });
    return 0;
  }
}

/** The header row at an index, or a fault because the file ends before it. */
export function rowAt(csv: Csv, index: number, faults: Faults): readonly string[] {
  const row = csv.rows[index];
  if (row !== undefined && row.length > 1) return row;
  return faults.fail({
    code: 'truncated',
    line: csv.firstLine + index,
    value: row === undefined ? null : quote(row[0] ?? ''),
    expected: 'another line of the header',
    remedy: 'Download or export the file again.',
  });
}
