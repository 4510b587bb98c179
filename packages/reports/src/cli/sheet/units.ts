// Numbers of a sheet in the units asked for.
import { formatNumber, type Units } from '../../units.ts';

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
  'W/m²': [shown('W/m²'), shown('Btu/(h·ft²)', BTU_H * FOOT ** 2)],
  'W/K': [shown('W/K'), shown('Btu/(h·°F)', BTU_H / 1.8)],
  'W/(m·K)': [shown('W/(m·K)'), shown('Btu/(h·ft·°F)', (BTU_H * FOOT) / 1.8)],
  'W/(m²·K)': [shown('W/(m²·K)'), shown('Btu/(h·ft²·°F)', (BTU_H * FOOT ** 2) / 1.8)],
  'W/(m²·K²)': [shown('W/(m²·K²)'), shown('Btu/(h·ft²·°F²)', (BTU_H * FOOT ** 2) / 1.8 ** 2)],
  'J/(m²·K)': [shown('kJ/(m²·K)', 1e-3), shown('Btu/(ft²·°F)', FOOT ** 2 / BTU / 1.8)],
  'm²·K/W': [shown('m²·K/W'), shown('h·ft²·°F/Btu', 1.8 / (BTU_H * FOOT ** 2))],
  '%': [shown('%', 100)],
  '1/J': [shown('1/kWh', 3.6e6)],
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
export function digits(value: number): string {
  if (value === 0) return '0';
  const size = Math.floor(Math.log10(Math.abs(value)));
  if (size >= 7 || size < -5) return value.toExponential(3).replace('-', '−');
  const decimals = Math.max(0, 3 - size);
  const text = formatNumber(value, Math.min(decimals, 8));
  return text.includes('.') ? text.replace(/\.?0+$/, '') : text;
}

/** A number with its unit in the units asked for. */
export function withUnit(value: number, unit: string, units: Units): string {
  const { symbol } = unitIn(unit, units);
  const number = digits(converted(value, unit, units));
  return symbol === '' ? number : `${number} ${symbol}`;
}
