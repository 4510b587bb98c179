import type { GaugeKey } from './log.ts';

/** Units that the columns of a notebook may have. */
export type LogUnit =
  | 'degC'
  | 'degF'
  | 'bar'
  | 'kPa'
  | 'Pa'
  | 'psi'
  | 'm'
  | 'ft'
  | 'yes/no'
  | 'kWh'
  | 'MJ'
  | 'therm'
  | 'm3'
  | 'ft3'
  | 'CCF';

/** One column of a notebook. */
export interface LogColumn {
  /** Header of the column, as the file spells it. */
  readonly column: string;
  /** Unit of its numbers; `m` and `ft` of pressure are of a water column, `m3`, `ft3` and `CCF` of a meter are gas. */
  readonly unit: LogUnit;
}

/** Where date and time of a reading stand: together in one column, or in two. */
export type LogTime =
  | {
      /** Header of a column such as `2024-07-03 14:30`. */
      readonly timestamp: string;
    }
  | {
      /** Header of the date column, such as `2024-07-03`. */
      readonly date: string;
      /** Header of the time column, such as `14:30` or `2:30 pm`. */
      readonly clock: string;
    };

/** How a notebook is laid out, and what its clock shows. */
export interface LogLayout {
  /** Where the time is. */
  readonly time: LogTime;
  /** Order of the parts of a date, whatever separates them; default `year-month-day`. */
  readonly dateOrder?: 'year-month-day' | 'day-month-year' | 'month-day-year';
  /**
   * Days on which the clock of the notebook is put forward and back at 02:00 standard time, `'03-31..10-27'`; default none: the
   * notebook keeps standard time all year.
   */
  readonly summerTime?: string;
  /** Where each quantity is; any of them, at least one. */
  readonly columns: Readonly<Partial<Record<GaugeKey, LogColumn>>>;
  /**
   * Heat of a cubic metre of gas by the bill (gross calorific value); needed where the meter counts volume, 5 to 40, such as 10.8
   * for natural gas. [kWh/m³]
   */
  readonly gasHeat_kWh_per_m3?: number;
  /** Words for a pump that turns; default yes, y, on, running, true, 1, x. Case does not matter. */
  readonly runningWords?: readonly string[];
  /** Words for a pump that stands; default no, n, off, standing, false, 0. */
  readonly standingWords?: readonly string[];
  /** Marks for "not read" beside an empty cell; default `-`, `?`, `n/a`. */
  readonly missing?: readonly string[];
  /** What separates cells; default a comma, or a semicolon where the decimal mark is a comma. */
  readonly delimiter?: ',' | ';' | '\t';
  /** Decimal mark; default a point. A comma needs another delimiter. */
  readonly decimal?: '.' | ',';
  /** Name for errors and reports; default the file's name. */
  readonly source?: string;
}

/** What a quantity can be, in the unit of {@link GaugeReading}, and the way there: value = cell × scale + offset. */
export interface LogQuantity {
  readonly words: string;
  readonly minimum: number;
  readonly maximum: number;
  readonly units: Readonly<Partial<Record<LogUnit, readonly [scale: number, offset: number]>>>;
}

const TEMPERATURES = { degC: [1, 0], degF: [5 / 9, -160 / 9] } as const;
/** Water column: 1000 kg/m³ × 9.80665 m/s². [Pa/m] */
const HEAD = 9806.65;
const PRESSURES = {
  bar: [1e5, 0],
  kPa: [1000, 0],
  Pa: [1, 0],
  psi: [6894.757, 0],
  m: [HEAD, 0],
  ft: [HEAD * 0.3048, 0],
} as const;
const KWH = 3.6e6;
const CUBIC_FOOT = 0.3048 ** 3;
/** Energy units in joules; volumes in m³, turned into joules by the gas' heat. */
const METERS = {
  kWh: [KWH, 0],
  MJ: [1e6, 0],
  therm: [1.0550559e8, 0],
  m3: [1, 0],
  ft3: [CUBIC_FOOT, 0],
  CCF: [100 * CUBIC_FOOT, 0],
} as const;

/** Units of a meter that counts volume. */
export const GAS_VOLUMES: readonly LogUnit[] = ['m3', 'ft3', 'CCF'];

/** Every quantity of a reading; limits are judgement: beyond them it is a slip of the pen. */
export const LOG_QUANTITIES: Readonly<Record<GaugeKey, LogQuantity>> = {
  tankTopTemperature: { words: 'temperature of the tank’s top', minimum: -5, maximum: 130, units: TEMPERATURES },
  flowTemperature: { words: 'temperature of the hot pipe', minimum: -50, maximum: 250, units: TEMPERATURES },
  returnTemperature: { words: 'temperature of the cold pipe', minimum: -50, maximum: 250, units: TEMPERATURES },
  loopPressure: { words: 'gauge pressure of the loop', minimum: -1e5, maximum: 2e6, units: PRESSURES },
  pumpRuns: { words: 'whether the pump turns', minimum: 0, maximum: 1, units: { 'yes/no': [1, 0] } },
  heaterMeter: { words: 'meter of the backup heater', minimum: 0, maximum: 1e15, units: METERS },
};

/** Quantities in the order of a reading. */
export const GAUGE_KEYS = Object.keys(LOG_QUANTITIES) as GaugeKey[];
