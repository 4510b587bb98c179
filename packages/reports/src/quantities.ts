/** Values of a design, which carry their unit as text, in the units of a report. */
import type { UnitKind, Units } from './units.ts';
import { displayUnit, formatNumber, toDisplay } from './units.ts';

/** SI units as designs write them, to what they are in reports. */
const KINDS: Record<string, UnitKind> = {
  'm³': 'volume',
  m3: 'volume',
  'm²': 'area',
  m2: 'area',
  m: 'length',
  '°C': 'temperature',
  degC: 'temperature',
  K: 'temperatureDifference',
  Pa: 'pressure',
  'm³/s': 'flow',
  'm3/s': 'flow',
  J: 'energy',
  'W/m²': 'irradiance',
};

// Factors from the kelvin, the foot and the Btu (IT): NIST SP 811 (2008), appendix B.
const BTU_PER_HOUR = 3600 / 1055.05585262;
const FOOT = 0.3048;

/** Compound units: US symbol and US units in one SI unit. Electrical units are the same in both systems. */
const US_COMPOUND: Record<string, [symbol: string, scale: number]> = {
  'W/K': ['Btu/(h·°F)', BTU_PER_HOUR / 1.8],
  'W/(m·K)': ['Btu/(h·ft·°F)', (BTU_PER_HOUR * FOOT) / 1.8],
  'W/(m²·K)': ['Btu/(h·ft²·°F)', (BTU_PER_HOUR * FOOT * FOOT) / 1.8],
  'W/(m²·K²)': ['Btu/(h·ft²·°F²)', (BTU_PER_HOUR * FOOT * FOOT) / 1.8 ** 2],
  'J/(m²·K)': ['Btu/(ft²·°F)', (BTU_PER_HOUR * FOOT * FOOT) / 3600 / 1.8],
  'J/(m³·K)': ['Btu/(ft³·°F)', (BTU_PER_HOUR * FOOT ** 3) / 3600 / 1.8],
  's/m': ['s/ft', FOOT],
  'm/s': ['mph', 3600 / (5280 * FOOT)],
  'm²·K/W': ['h·ft²·°F/Btu', 1.8 / (BTU_PER_HOUR * FOOT * FOOT)],
  'A/K': ['A/°F', 1 / 1.8],
  'V/K': ['V/°F', 1 / 1.8],
};

/** Up to four significant digits, no exponent for sizes that people read. */
function significant(value: number): string {
  const size = Math.abs(value);
  if (value === 0 || (size >= 1e-4 && size < 1e7)) {
    const digits = value === 0 ? 0 : Math.max(0, 3 - Math.floor(Math.log10(size)));
    return formatNumber(value, Math.min(digits, 7))
      .replace(/(\.\d*?)0+$/, '$1')
      .replace(/\.$/, '');
  }
  return value.toExponential(3).replace('-', '−');
}

/** Small lengths read better in mm or inches. */
const lengthUnit = (value: number, units: Units): [string, number] =>
  units === 'metric' ? (value < 0.5 ? ['mm', 1000] : ['m', 1]) : value < FOOT ? ['in', 12 / FOOT] : ['ft', 1 / FOOT];

function formatOne(value: number, unit: string, path: string, units: Units): [number: string, unit: string] {
  const kind = KINDS[unit];
  if (kind === 'length') {
    const [symbol, scale] = lengthUnit(value, units);
    return [significant(value * scale), symbol];
  }
  if (kind !== undefined) return [significant(toDisplay(value, kind, units)), displayUnit(kind, units).symbol];
  // Only what heaters give is heat; the other powers of a design are electrical and in watts everywhere.
  if (unit === 'W' && /^(?:heater|baseline)\.(?:burner|minimum)Power$/.test(path))
    return units === 'metric'
      ? [significant(value / 1e3), 'kW']
      : [significant((value * BTU_PER_HOUR) / 1e3), 'kBtu/h'];
  const compound = units === 'us' ? US_COMPOUND[unit] : undefined;
  if (compound !== undefined) return [significant(value * compound[1]), compound[0]];
  return [significant(value), unit === '-' ? '' : unit];
}

/**
 * A value of a design with its unit in a report's units, `300 L` for 0.3 m³. What is not a number is shown as it is.
 *
 * @param value - as in the design
 * @param unit - as in the design, SI; one that is not known is shown unchanged
 * @param path - place in the design
 */
export function formatDesignValue(value: unknown, unit: string, path: string, units: Units): string {
  if (typeof value === 'number') {
    const [text, symbol] = formatOne(value, unit, path, units);
    return symbol === '' ? text : `${text}${symbol === '°' ? '' : ' '}${symbol}`;
  }
  if (Array.isArray(value)) {
    const parts = value.map((one) => (typeof one === 'number' ? formatOne(one, unit, path, units) : [String(one), '']));
    const symbol = parts[0]?.[1] ?? '';
    return `${parts.map((part) => part[0]).join(', ')}${symbol === '' ? '' : ` ${symbol}`}`;
  }
  if (value === null || value === undefined) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'object' ? 'see the design' : String(value);
}

const QUOTED =
  /(−|-)?(\d[\d,]*(?:\.\d+)?)(?:( to |–| and )(\d[\d,]*(?:\.\d+)?))? (°C|K|L\/min|L|m\/s|m²|m|kWh|mm|bar|kPa|W\/m²)(?![\w/²·(])/gu;

const QUOTED_UNITS: Record<string, [unit: string, scale: number]> = {
  '°C': ['°C', 1],
  K: ['K', 1],
  'L/min': ['m³/s', 1 / 6e4],
  L: ['m³', 1e-3],
  'm²': ['m²', 1],
  kWh: ['J', 3.6e6],
  m: ['m', 1],
  'm/s': ['m/s', 1],
  mm: ['m', 1e-3],
  bar: ['Pa', 1e5],
  kPa: ['Pa', 1e3],
  'W/m²': ['W/m²', 1],
};

/** Metric numbers in a sentence of the library's or a reader's own, in the units of a report. */
export function convertSentence(text: string, units: Units): string {
  if (units === 'metric') return text;
  return text.replace(QUOTED, (_, ...found: (string | undefined)[]) => {
    const [minus, first, link, second, symbol] = found as [
      string | undefined,
      string,
      string | undefined,
      string,
      string,
    ];
    const [unit, scale] = QUOTED_UNITS[symbol]!;
    const sign = minus === undefined ? 1 : -1;
    const convert = (number: string, factor: number): [string, string] => {
      const [shown, shownUnit] = formatOne(factor * Number(number.replaceAll(',', '')) * scale, unit, '', units);
      if (symbol === 'm' || symbol === 'm/s') {
        const [foot, mile] = [1 / FOOT, 3600 / (5280 * FOOT)];
        const us = Number(number.replaceAll(',', '')) * factor * (symbol === 'm' ? foot : mile);
        return [formatNumber(us, Math.abs(us) < 9.95 ? 1 : 0), symbol === 'm' ? 'ft' : 'mph'];
      }
      return [
        unit === '°C'
          ? String(Math.round(Number(shown.replace('−', '-').replaceAll(',', '')))).replace('-', '−')
          : shown,
        shownUnit,
      ];
    };
    const [a, name] = convert(first, sign);
    return link === undefined ? `${a} ${name}` : `${a}${link}${convert(second, 1)[0]} ${name}`;
  });
}
