// What a caller says about a file of water used.
import type { WEEKDAYS } from '../time/calendar.ts';

/** Units in which water or its flow may stand; `gal` is the US gallon. */
export type WaterUnit = VolumeUnit | FlowUnit;

/** Units of volumes and meter readings. */
export type VolumeUnit = 'm3' | 'L' | 'mL' | 'gal' | 'ft3';

/** Units of flow rates. */
export type FlowUnit = 'm3/s' | 'm3/h' | 'L/s' | 'L/min' | 'L/h' | 'gal/min' | 'gal/h';

/** Name of a day of the week. */
export type DrawWeekday = (typeof WEEKDAYS)[number];

/** Time in a file of water used. */
export type DrawTime =
  | {
      /** Header of a column with date and time, such as `2023-07-03 14:05:30`, `7/3/2023 2:05 PM` or `2023-07-03T14:05Z`. */
      readonly timestamp: string;
      /** Order of the date's parts; default `year-month-day`. */
      readonly order?: DateOrder;
    }
  | {
      /** Header of the column with the date. */
      readonly date: string;
      /** Header of the column with the time of day. */
      readonly time: string;
      /** Order of the date's parts; default `year-month-day`. */
      readonly order?: DateOrder;
    }
  | {
      /** Header of a column of time gone by since the midnight at which the record begins. */
      readonly elapsed: string;
      /** Its unit. */
      readonly unit: 's' | 'min' | 'h';
    }
  /** No time in the file: rows follow each other by `step`, the first at midnight. */
  | 'row-order';

/** Order in which a date is written. */
export type DateOrder = 'year-month-day' | 'day-month-year' | 'month-day-year';

/** How a file of water used is laid out. */
export interface DrawLayout {
  /** Header of the column with the water, as the file spells it. */
  readonly column: string;
  /** What its numbers are: the water of each interval, the flow through it, or the standing of a meter at the stamp. */
  readonly quantity: 'volume' | 'flow' | 'meter';
  /** Unit of its numbers; one of volume for volumes and meters, one of flow for flows. */
  readonly unit: WaterUnit;
  /** Units that a count of 1 stands for, above 0: 0.5 with unit `L` for a meter that gives a pulse each half litre. Default 1. */
  readonly perCount?: number;
  /** Where the time is. */
  readonly time: DrawTime;
  /** Length of an interval; needed without time in the file or with `span`, else the commonest distance of two stamps. [s] */
  readonly step?: number;
  /** Whether a stamp is the start or the end of its interval; default `start`. A meter is read at its stamp. */
  readonly stamps?: 'start' | 'end';
  /**
   * The clock of the stamps: standard time all year; the clock of a place that changes it in summer (`zone` says which); or
   * UTC, or any zone that each stamp names (`utcOffset` says where the house is). Files without date count as `standard`
   * unless said otherwise.
   */
  readonly clock: 'standard' | 'daylight-saving' | 'utc';
  /** Place whose clock it is, by its IANA name such as `America/Denver`; needed with `daylight-saving`. */
  readonly zone?: string;
  /** Standard time of the house minus UTC, −12 to 14; needed with `utc`. [h] */
  readonly utcOffset?: number;
  /** What a fall of a meter means: an error of the file, or a new count from 0. Default `refuse`. */
  readonly resets?: 'refuse' | 'from-zero';
  /** Reading at which the meter starts again from 0, in `unit`; given, a fall is one such turn. */
  readonly turnover?: number;
  /** Missing rows and empty cells: an error, or no water drawn; default `refuse`. Between meter readings nothing is missing. */
  readonly gaps?: 'refuse' | 'zero';
  /** What the file covers; default by its length. Needed where rows stand for draws alone, with `gaps: 'zero'`. */
  readonly span?: 'day' | 'week' | 'year';
  /** Weekday of the first row of a week without dates; default `monday`. */
  readonly weekBegins?: DrawWeekday;
  /** Weekday of 1 January in the year that a week is laid over; default `monday`, as in a design. */
  readonly firstWeekday?: DrawWeekday;
  /** Values for each hour of the result, a divisor of 60; default the coarsest that keeps the file's intervals. */
  readonly partsPerHour?: number;
  /** Line of the header, from 1; default the first that does not begin with `#`. */
  readonly headerLine?: number;
  /** What separates cells; default a comma, or a semicolon where the decimal mark is a comma. */
  readonly delimiter?: ',' | ';' | '\t';
  /** Decimal mark; default a point. */
  readonly decimal?: '.' | ',';
  /** Name for errors and reports; default the file's name. */
  readonly source?: string;
  /** Largest file or text read; default 64 MiB. [B] */
  readonly maxBytes?: number;
}

/** Size of each unit of volume. The US gallon is 231 cubic inches, a foot 0.3048 m, both by definition. [m³] */
export const VOLUME_UNITS: Readonly<Record<VolumeUnit, number>> = {
  m3: 1,
  L: 1e-3,
  mL: 1e-6,
  gal: 3.785411784e-3,
  ft3: 0.028316846592,
};

/** Size of each unit of flow. [m³/s] */
export const FLOW_UNITS: Readonly<Record<FlowUnit, number>> = {
  'm3/s': 1,
  'm3/h': 1 / 3600,
  'L/s': 1e-3,
  'L/min': 1e-3 / 60,
  'L/h': 1e-3 / 3600,
  'gal/min': 3.785411784e-3 / 60,
  'gal/h': 3.785411784e-3 / 3600,
};
