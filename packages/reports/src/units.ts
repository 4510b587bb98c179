/** Units of what leaves the program. A report is in one system throughout. */
import { ReportError } from './errors.ts';

/** System of units of a report: SI-based metric, or US customary. */
export type Units = 'metric' | 'us';

/** What a number is, which decides its unit and its digits. */
export type UnitKind =
  | 'energy'
  | 'fuel'
  | 'electricity'
  | 'volume'
  | 'discharge'
  | 'flow'
  | 'temperature'
  | 'temperatureDifference'
  | 'hours'
  | 'wholeHours'
  | 'fraction'
  | 'irradiance'
  | 'area'
  | 'length'
  | 'pressure'
  | 'mass'
  | 'power'
  | 'electricPower'
  | 'residual';

/** A unit as reports print it: shown = value in SI × scale + offset. */
interface DisplayUnit {
  /** As printed after a number. */
  readonly symbol: string;
  /** As the end of a column name, after an underscore. */
  readonly key: string;
  /** Shown units in one SI unit. */
  readonly scale: number;
  /** Added after scaling. */
  readonly offset: number;
  /** Decimals for a reader: what the model can stand for. */
  readonly digits: number;
  /** Decimals in CSV, for further computing. */
  readonly columnDigits: number;
}

// NIST SP 811 (2008), appendix B: Btu (IT), therm (US), gallon (US), foot, psi, pound.
const BTU = 1055.05585262; // [J]
const US_THERM = 105_480_400; // [J]
const GALLON = 3.785411784e-3; // [m³]
const FOOT = 0.3048; // [m]
const PSI = 6894.757293168; // [Pa]
const POUND = 0.45359237; // [kg]

const unit = (
  symbol: string,
  key: string,
  scale: number,
  [digits, columnDigits]: readonly [number, number],
  offset = 0,
): DisplayUnit => ({ symbol, key, scale, offset, digits, columnDigits });

const both = (same: DisplayUnit): Record<Units, DisplayUnit> => ({ metric: same, us: same });

const KWH = 1 / 3.6e6;

const DISPLAY: Record<UnitKind, Record<Units, DisplayUnit>> = {
  energy: { metric: unit('kWh', 'kWh', KWH, [0, 4]), us: unit('kBtu', 'kBtu', 1e-3 / BTU, [0, 4]) },
  fuel: { metric: unit('kWh', 'kWh', KWH, [0, 4]), us: unit('therm', 'therm', 1 / US_THERM, [1, 6]) },
  // Meters and bills are in kWh in both systems.
  electricity: both(unit('kWh', 'kWh', KWH, [1, 4])),
  volume: { metric: unit('L', 'L', 1e3, [0, 3]), us: unit('gal', 'gal', 1 / GALLON, [0, 3]) },
  discharge: { metric: unit('L', 'L', 1e3, [1, 3]), us: unit('gal', 'gal', 1 / GALLON, [1, 3]) },
  flow: { metric: unit('L/min', 'L_per_min', 6e4, [1, 3]), us: unit('gal/min', 'gal_per_min', 60 / GALLON, [2, 4]) },
  temperature: { metric: unit('°C', 'degC', 1, [0, 2]), us: unit('°F', 'degF', 1.8, [0, 2], 32) },
  temperatureDifference: { metric: unit('K', 'K', 1, [0, 2]), us: unit('°F', 'degF', 1.8, [0, 2]) },
  hours: both(unit('h', 'h', 1, [0, 4])),
  wholeHours: both(unit('h', 'h', 1, [0, 0])),
  fraction: both(unit('%', 'percent', 100, [1, 2])),
  irradiance: {
    metric: unit('W/m²', 'W_per_m2', 1, [0, 1]),
    us: unit('Btu/(h·ft²)', 'Btu_per_h_ft2', (3600 * FOOT * FOOT) / BTU, [0, 2]),
  },
  area: { metric: unit('m²', 'm2', 1, [1, 3]), us: unit('ft²', 'ft2', 1 / (FOOT * FOOT), [0, 2]) },
  length: { metric: unit('m', 'm', 1, [0, 2]), us: unit('ft', 'ft', 1 / FOOT, [0, 1]) },
  pressure: { metric: unit('bar', 'bar', 1e-5, [1, 3]), us: unit('psi', 'psi', 1 / PSI, [0, 2]) },
  mass: { metric: unit('kg', 'kg', 1, [0, 2]), us: unit('lb', 'lb', 1 / POUND, [0, 2]) },
  power: { metric: unit('kW', 'kW', 1e-3, [1, 3]), us: unit('kBtu/h', 'kBtu_per_h', 3.6 / BTU, [1, 3]) },
  electricPower: both(unit('kW', 'kW', 1e-3, [1, 3])),
  residual: both(unit('', 'relative', 1, [0, 0])),
};

/** Unit in which a kind of number is shown. */
export function displayUnit(kind: UnitKind, units: Units): DisplayUnit {
  const found = DISPLAY[kind][units];
  if (found === undefined)
    throw new ReportError('units', JSON.stringify(units), "'metric' or 'us'", 'Choose one of the two.');
  return found;
}

/** A number in the unit in which it is shown, not rounded. @param value - in SI, °C, hours or 0 to 1, as the kind says */
export function toDisplay(value: number, kind: UnitKind, units: Units): number {
  const { scale, offset } = displayUnit(kind, units);
  return value * scale + offset;
}

/** Rounds half away from zero to a number of decimals; never −0. */
export function roundTo(value: number, digits: number): number {
  const factor = 10 ** digits;
  const rounded = Math.sign(value) * Math.round(Math.abs(value) * factor);
  return rounded === 0 ? 0 : rounded / factor;
}

/** Decimal text with a comma between thousands and a true minus sign. */
export function formatNumber(value: number, digits: number): string {
  const [whole, decimals] = Math.abs(roundTo(value, digits)).toFixed(digits).split('.');
  const grouped = whole!.replace(/\B(?=(\d{3})+$)/g, ',');
  const sign = roundTo(value, digits) < 0 ? '−' : '';
  return sign + grouped + (decimals === undefined ? '' : `.${decimals}`);
}

/** The number alone as a report shows it; `–` where there is none. @param value - in SI [by kind] */
export function formatValue(value: number | null, kind: UnitKind, units: Units): string {
  if (value === null) return '–';
  if (kind === 'residual') return value === 0 ? '0' : value.toExponential(1).replace('-', '−');
  return formatNumber(toDisplay(value, kind, units), displayUnit(kind, units).digits);
}

/** The number with its unit, `1,912 kWh`. @param value - in SI [by kind] */
export function formatQuantity(value: number | null, kind: UnitKind, units: Units): string {
  const { symbol } = displayUnit(kind, units);
  return value === null || symbol === ''
    ? formatValue(value, kind, units)
    : `${formatValue(value, kind, units)} ${symbol}`;
}

/**
 * Difference of two numbers as they are shown, so that a reader who subtracts gets the same.
 *
 * @returns In the shown unit, rounded. [by kind]
 */
export function shownDifference(value: number, reference: number, kind: UnitKind, units: Units): number {
  const { digits } = displayUnit(kind, units);
  const shown = (number: number): number => roundTo(toDisplay(number, kind, units), digits);
  return roundTo(shown(value) - shown(reference), digits);
}

/**
 * Rounds parts so that they add up to their rounded sum: the largest remainders go up. No part moves by a whole last digit.
 *
 * @param values - in any one unit
 * @param digits - decimals to keep
 */
export function roundToSum(values: readonly number[], digits: number): number[] {
  const factor = 10 ** digits;
  const scaled = values.map((value) => value * factor);
  const floors = scaled.map(Math.floor);
  const total = roundTo(
    scaled.reduce((sum, value) => sum + value, 0),
    0,
  );
  let missing = total - floors.reduce((sum, value) => sum + value, 0);
  const order = scaled.map((value, index) => ({ index, rest: value - floors[index]! }));
  order.sort((a, b) => b.rest - a.rest || a.index - b.index);
  for (const { index } of order) {
    if (missing <= 0) break;
    floors[index]! += 1;
    missing--;
  }
  return floors.map((value) => (value === 0 ? 0 : value / factor));
}
