// Numbers of any SI unit in the units of a report, with as many digits as a person reads.
import { formatNumber, type Units } from './units.ts';

interface Shown {
  readonly symbol: string;
  readonly scale: number;
  readonly offset?: number;
}

// NIST SP 811 (2008), appendix B: foot, pound, US gallon, Btu (IT), psi.
const FOOT = 0.3048;
const GALLON = 3.785411784e-3;
const BTU = 1055.05585262;
const PSI = 6894.757293168;
const POUND = 0.45359237;
const BTU_H = 3600 / BTU;

const shown = (symbol: string, scale = 1, offset = 0): Shown => ({ symbol, scale, offset });

/** SI unit, to what it is in metric and in US units; a unit that stands here alone is the same in both. */
const UNITS: Readonly<Record<string, readonly [Shown, Shown?]>> = {
  'm³': [shown('L', 1000), shown('gal', 1 / GALLON)],
  m: [shown('m'), shown('ft', 1 / FOOT)],
  mm: [shown('mm', 1000), shown('in', 12 / FOOT)],
  'm²': [shown('m²'), shown('ft²', 1 / FOOT ** 2)],
  kg: [shown('kg'), shown('lb', 1 / POUND)],
  'kg/m²': [shown('kg/m²'), shown('lb/ft²', FOOT ** 2 / POUND)],
  '°C': [shown('°C'), shown('°F', 1.8, 32)],
  K: [shown('K'), shown('°F', 1.8)],
  Pa: [shown('bar', 1e-5), shown('psi', 1 / PSI)],
  J: [shown('kWh', 1 / 3.6e6), shown('kBtu', 1e-3 / BTU)],
  'J/m²': [shown('kWh/m²', 1 / 3.6e6), shown('kBtu/ft²', (1e-3 * FOOT ** 2) / BTU)],
  'm³/s': [shown('L/min', 6e4), shown('gal/min', 60 / GALLON)],
  'm³/m²': [shown('L/m²', 1000), shown('gal/ft²', FOOT ** 2 / GALLON)],
  'm³/(s·m²)': [shown('L/(min·m²)', 6e4), shown('gal/(min·ft²)', (60 * FOOT ** 2) / GALLON)],
  'm/s': [shown('m/s'), shown('ft/s', 1 / FOOT)],
  L: [shown('L'), shown('gal', 1e-3 / GALLON)],
  hPa: [shown('hPa'), shown('inHg', 100 / 3386.389)],
  'm/s wind': [shown('m/s'), shown('mph', 3600 / (5280 * FOOT))],
  'W of heat': [shown('W'), shown('Btu/h', BTU_H)],
  'W heat': [shown('kW', 1e-3), shown('kBtu/h', 1e-3 * BTU_H)],
  'W/m²': [shown('W/m²'), shown('Btu/(h·ft²)', BTU_H * FOOT ** 2)],
  'W/K': [shown('W/K'), shown('Btu/(h·°F)', BTU_H / 1.8)],
  'W/(m·K)': [shown('W/(m·K)'), shown('Btu/(h·ft·°F)', (BTU_H * FOOT) / 1.8)],
  'W/(m²·K)': [shown('W/(m²·K)'), shown('Btu/(h·ft²·°F)', (BTU_H * FOOT ** 2) / 1.8)],
  'W/(m²·K²)': [shown('W/(m²·K²)'), shown('Btu/(h·ft²·°F²)', (BTU_H * FOOT ** 2) / 1.8 ** 2)],
  'J/(m²·K)': [shown('kJ/(m²·K)', 1e-3), shown('Btu/(ft²·°F)', FOOT ** 2 / BTU / 1.8)],
  'm²·K/W': [shown('m²·K/W'), shown('h·ft²·°F/Btu', 1.8 / (BTU_H * FOOT ** 2))],
  '%': [shown('%', 100)],
  '1/J': [shown('1/kWh', 3.6e6)],
  'm³/d': [shown('L/d', 1000), shown('gal/d', 1 / GALLON)],
  'kg/m³': [shown('kg/m³'), shown('lb/ft³', FOOT ** 3 / POUND)],
  'Wh/(L·K)': [shown('Wh/(L·K)'), shown('Btu/(gal·°F)', (3600 * GALLON * 1000) / BTU / 1.8)],
  'J/(m³·K)': [shown('J/(m³·K)'), shown('Btu/(ft³·°F)', FOOT ** 3 / BTU / 1.8)],
  's/m': [shown('s/m'), shown('s/ft', FOOT)],
  'm·K/W': [shown('m·K/W'), shown('h·ft·°F/Btu', 1.8 / (BTU_H * FOOT))],
  '1/m': [shown('1/m'), shown('1/ft', FOOT)],
  'K/h': [shown('K/h'), shown('°F/h', 1.8)],
  'A/K': [shown('A/K'), shown('A/°F', 1 / 1.8)],
  'V/K': [shown('V/K'), shown('V/°F', 1 / 1.8)],
  '1': [shown('')],
  '-': [shown('')],
};

/** How numbers of an SI unit are shown; a unit not known is shown as it is. */
export function unitIn(unit: string, units: Units): Shown {
  const [metric, us] = UNITS[unit] ?? [shown(unit)];
  return units === 'us' ? (us ?? metric) : metric;
}

/** A number in the unit shown, not rounded. */
export const converted = (value: number, unit: string, units: Units): number => {
  const { scale, offset = 0 } = unitIn(unit, units);
  return value * scale + offset;
};

/** Four digits, as many as a person reads. */
export function digits(value: number, count = 4): string {
  if (value === 0) return '0';
  const size = Math.floor(Math.log10(Math.abs(value)));
  if (size >= 7 || size < -5) return value.toExponential(count - 1).replaceAll('-', '−');
  const decimals = Math.max(0, count - 1 - size);
  const text = formatNumber(value, Math.min(decimals, 8));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A number with its unit in the units asked for. */
export function withUnit(value: number, unit: string, units: Units, count = 4): string {
  const { symbol } = unitIn(unit, units);
  const number = digits(converted(value, unit, units), count);
  return symbol === '' || symbol === '°' ? `${number}${symbol}` : `${number} ${symbol}`;
}

/** Numbers of one unit, the unit once at their end. */
export function listWithUnit(values: readonly number[], unit: string, units: Units): string {
  const { symbol } = unitIn(unit, units);
  const numbers = values.map((value) => digits(converted(value, unit, units))).join(', ');
  return symbol === '' ? numbers : `${numbers} ${symbol}`;
}
