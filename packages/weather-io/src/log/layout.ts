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
  | '%'
  | 'W/m2'
  | 'kWh'
  | 'MJ'
  | 'therm'
  | 'm3'
  | 'ft3'
  | 'CCF'
  | 'L'
  | 'gal'
  | 'kg'
  | 'lb';

/** One column of a notebook. */
export interface LogColumn {
  /** Header of the column, as the file spells it. */
  readonly column: string;
  /** Unit of its numbers; `m` and `ft` of pressure are of a water column; `m3`, `ft3`, `CCF`, `L`, `gal` (US), `kg` and `lb` of a
   * meter are of any fuel, whose heat the layout gives. */
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
  /**
   * Heat of one unit of the meter's column for any fuel counted by volume or mass, by the gross calorific value, 0.001 to 5000, such as
   * 26.7 for a US gallon of propane, 40.4 for one of No. 2 oil (US EPA: 0.091 and 0.138 MMBtu), 4.8 for a kilogram of wood pellets
   * (common value, no source). In place of {@link gasHeat_kWh_per_m3}. [kWh]
   */
  readonly fuelHeat_kWh_per_unit?: number;
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
interface LogQuantity {
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
/** NIST SP 811 (2008), appendix B. [m³], [kg] */
const GALLON = 3.785411784e-3;
const POUND = 0.45359237;
/** Energy units in joules; volumes in m³, turned into joules by the gas' heat. */
const METERS = {
  kWh: [KWH, 0],
  MJ: [1e6, 0],
  therm: [1.0550559e8, 0],
  m3: [1, 0],
  ft3: [CUBIC_FOOT, 0],
  CCF: [100 * CUBIC_FOOT, 0],
  L: [1e-3, 0],
  gal: [GALLON, 0],
  kg: [1, 0],
  lb: [POUND, 0],
} as const;

/** Units of a meter that may count gas by its volume. */
const GAS_VOLUMES: readonly LogUnit[] = ['m3', 'ft3', 'CCF', 'L', 'gal'];
/** Units of a meter that count fuel and no heat. */
export const FUEL_UNITS: readonly LogUnit[] = [...GAS_VOLUMES, 'kg', 'lb'];

/** Joules in what one unit of the column counts; `null` where the layout does not say. */
export function fuelHeat(
  unit: LogUnit,
  layout: Pick<LogLayout, 'fuelHeat_kWh_per_unit' | 'gasHeat_kWh_per_m3'>,
): number | null {
  const { fuelHeat_kWh_per_unit: perUnit, gasHeat_kWh_per_m3: perVolume } = layout;
  if (perUnit !== undefined) return KWH * perUnit;
  const [volume] = METERS[unit as keyof typeof METERS] ?? [1];
  return perVolume === undefined || !GAS_VOLUMES.includes(unit) ? null : KWH * perVolume * volume;
}

/** Every quantity of a reading; limits are judgement, and take in a gauge in another
 * unit, which a check of the log names: beyond them it is a slip of the pen. */
export const LOG_QUANTITIES: Readonly<Record<GaugeKey, LogQuantity>> = {
  tankTopTemperature: { words: 'temperature of the tank’s top', minimum: -30, maximum: 270, units: TEMPERATURES },
  flowTemperature: { words: 'temperature of the hot pipe', minimum: -50, maximum: 400, units: TEMPERATURES },
  returnTemperature: { words: 'temperature of the cold pipe', minimum: -50, maximum: 400, units: TEMPERATURES },
  loopPressure: { words: 'gauge pressure of the loop', minimum: -1e5, maximum: 2e7, units: PRESSURES },
  pumpRuns: { words: 'whether the pump turns', minimum: 0, maximum: 1, units: { 'yes/no': [1, 0] } },
  heaterMeter: { words: 'meter of the backup heater', minimum: 0, maximum: 1e15, units: METERS },
  collectorTemperature: { words: 'temperature of the collector', minimum: -60, maximum: 400, units: TEMPERATURES },
  tankBottomTemperature: { words: 'temperature of the tank’s bottom', minimum: -30, maximum: 270, units: TEMPERATURES },
  roomTemperature: { words: 'temperature of the tank’s room', minimum: -40, maximum: 160, units: TEMPERATURES },
  airTemperature: { words: 'temperature of the outdoor air', minimum: -70, maximum: 160, units: TEMPERATURES },
  pumpSpeed: { words: 'speed of the pump', minimum: 0, maximum: 1, units: { '%': [0.01, 0] } },
  light: { words: 'light', minimum: 0, maximum: 2000, units: { 'W/m2': [1, 0] } },
};

/** Quantities in the order of a reading. */
export const GAUGE_KEYS = Object.keys(LOG_QUANTITIES) as GaugeKey[];

/** Those that a reading always has, read or not; the others are a logger's. */
export const NOTEBOOK_KEYS = GAUGE_KEYS.slice(0, 6);
