// What a caller may tell the readers.
import type { ColumnKey } from './limits.ts';
import type { PlainUnit } from './table/units.ts';
import type { Site, WeatherFormat } from './year.ts';

/** One column of a plain table. */
export interface PlainColumn {
  /** Header of the column, as the file spells it. */
  readonly column: string;
  /** Unit of its numbers; must fit the quantity. */
  readonly unit: PlainUnit;
}

/** Time in the columns of a plain table: numbers in columns of their own, or one column with date and time. */
export type PlainTime =
  | {
      /** Header of the year column; left out, `calendarYear` holds for all rows. */
      readonly year?: string;
      /** Header of the month column, 1 to 12. */
      readonly month: string;
      /** Header of the day column, 1 to 31. */
      readonly day: string;
      /** Header of the hour column: 0 to 23, or 1 to 24 where stamps end the hour. */
      readonly hour: string;
      /** Header of the minute column, 0 to 59; left out, 0. */
      readonly minute?: string;
    }
  | {
      /** Header of a column such as `2021-07-03T14:00` or `2021-07-03 14:00`, in the zone of the site, without suffix. */
      readonly timestamp: string;
    }
  /** No time in the file: row 1 begins at 00:00 on 1 January, and the year is whole. */
  | 'row-order';

/** How a plain table is laid out: what a file without a known header does not say itself. */
export interface PlainLayout {
  /** Where the weather was taken; its `utcOffset` is the zone of the stamps. */
  readonly site: Site;
  /** Where each quantity is. `ghi` and `dryBulb` are needed; `dni` and `dhi`, left out, are split from `ghi`. */
  readonly columns: Readonly<Partial<Record<ColumnKey, PlainColumn>>>;
  /** Where the time is. */
  readonly time: PlainTime;
  /**
   * What a stamp means: `start` or `end` of the interval over which the row is a mean, or the `instant` at which it was
   * taken. Rows in order without stamps are means over their interval (`start`).
   */
  readonly stamps: 'start' | 'end' | 'instant';
  /**
   * What air, wind, pressure and clouds stand for: the `mean` of the interval as the light, the default, or the `instant` of the stamp, as
   * in tables made from TMY3 or EPW. With stamps of instants all are instants.
   */
  readonly air?: 'mean' | 'instant';
  /** Year of all rows where no column says it; default 2023, a year without a leap day. */
  readonly calendarYear?: number;
  /** From the start of the hour to the middle of what its irradiance stands for; default by `stamps`. [h] */
  readonly irradianceMidpoint?: number;
  /** Numbers that mean "missing"; an empty cell always does. Default: none. */
  readonly missing?: readonly number[];
  /** What separates cells; default a comma, or a semicolon where the decimal mark is a comma. */
  readonly delimiter?: ',' | ';' | '\t';
  /** Decimal mark; default a point. A comma needs another delimiter. */
  readonly decimal?: '.' | ',';
}

/** Options of `readWeather` and `parseWeather`; all may be left out for a file in a known format. */
export interface ReadOptions {
  /** Name for errors and reports; default the file's name. */
  readonly source?: string;
  /** Read as this format instead of recognizing it by content. */
  readonly format?: WeatherFormat;
  /**
   * Local standard time of the result minus UTC, −12 to 14; default what the file says, or the whole hours nearest to the
   * longitude where the file is in UTC. [h]
   */
  readonly utcOffset?: number;
  /** Largest file or text read; default 64 MiB. [B] */
  readonly maxBytes?: number;
  /** Layout of a plain table; given, the file is read by it. */
  readonly plain?: PlainLayout;
  /**
   * Keep the light of a file of 5 to 30 minutes at its own step (`WeatherYear.fineLight`); the simulation then takes it so. Default
   * false: hours, which are read and simulated faster. Air and all other columns are means of the hour either way.
   */
  readonly ownStep?: boolean;
  /** Missing irradiance, dry bulb and rows are refused with an error that says where, the default; see {@link GappyOptions}. */
  readonly gaps?: 'refuse';
}

/** Options of a reader that keeps gaps. */
export interface GappyOptions extends Omit<ReadOptions, 'gaps' | 'ownStep'> {
  /** Missing irradiance, dry bulb and rows are kept as `NaN` in a `GappyYear`, which `fillGaps` makes whole. */
  readonly gaps: 'keep';
}

/** Either, inside the readers. */
export type AnyOptions = ReadOptions | GappyOptions;

/** Largest file read unless told otherwise: 20 times a year in half hours. Judgement. [B] */
export const DEFAULT_MAX_BYTES = 64 * 1024 * 1024;
