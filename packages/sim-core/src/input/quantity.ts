import { convertUnit } from './units.ts';

/** A number in the documented unit of its field, or a string with a unit, such as `"80 gal"` or `"120 degF"`. */
export type Quantity = number | string;

/** Kinds of quantity that a design takes, each with the unit of a bare number and one example with a unit. */
export const DIMENSIONS = {
  length: { unit: 'm', target: 'm', example: '6.5 ft' },
  perLength: { unit: '1/m', target: 'm^-1', example: '0.04 cm^-1' },
  area: { unit: 'm²', target: 'm^2', example: '24 ft2' },
  mass: { unit: 'kg', target: 'kg', example: '90 lb' },
  volume: { unit: 'm³', target: 'm^3', example: '80 gal' },
  flow: { unit: 'm³/s', target: 'm^3/s', example: '3 L/min' },
  temperature: { unit: '°C', target: 'degC', example: '120 degF' },
  temperatureDifference: { unit: 'K', target: 'K', example: '9 degF' },
  angle: { unit: '°', target: 'deg', example: '40 deg' },
  power: { unit: 'W', target: 'W', example: '40000 BTU/h' },
  irradiance: { unit: 'W/m²', target: 'W/m^2', example: '800 W/m2' },
  pressure: { unit: 'Pa', target: 'Pa', example: '20 psi' },
  voltage: { unit: 'V', target: 'V', example: '17500 mV' },
  current: { unit: 'A', target: 'A', example: '600 mA' },
  resistance: { unit: 'Ω', target: 'ohm', example: '1800 mohm' },
  speed: { unit: 'm/s', target: 'm/s', example: '2 ft/s' },
  duration: { unit: 's', target: 's', example: '5 min' },
  currentPerKelvin: { unit: 'A/K', target: 'A/K', example: '0.7 mA/K' },
  voltagePerKelvin: { unit: 'V/K', target: 'V/K', example: '-73 mV/K' },
  fraction: { unit: '-', target: '', example: '35 %' },
  conductivity: { unit: 'W/(m·K)', target: 'W/(m K)', example: '0.023 BTU/(h ft degF)' },
  heatLoss: { unit: 'W/K', target: 'W/K', example: '4 BTU/(h degF)' },
  heatTransfer: { unit: 'W/(m²·K)', target: 'W/(m^2 K)', example: '0.65 BTU/(h ft2 degF)' },
  heatTransferPerSpeed: { unit: 'J/(m³·K)', target: 'J/(m^3 K)', example: '0.5 J/(m3 K)' },
  slowness: { unit: 's/m', target: 's/m', example: '0.02 s/m' },
  heatTransferPerKelvin: { unit: 'W/(m²·K²)', target: 'W/(m^2 K^2)', example: '0.014 W/(m2 K2)' },
  energy: { unit: 'J', target: 'J', example: '5 kWh' },
  energyPerArea: { unit: 'J/m²', target: 'J/m^2', example: '4 kWh/m2' },
  heatCapacityPerArea: { unit: 'J/(m²·K)', target: 'J/(m^2 K)', example: '8 kJ/(m2 K)' },
  thermalResistance: { unit: 'm²·K/W', target: 'm^2 K/W', example: '0.0002 m2 K/W' },
} as const;

/** Name of a kind of quantity. */
export type Dimension = keyof typeof DIMENSIONS;

/** Longer strings than any quantity needs are refused before they are parsed. */
const LONGEST = 60;
const NUMBER_THEN_UNIT = /^\s*([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d{1,3})?)\s*(.*?)\s*$/;
const UNIT_CHARACTERS = /^[A-Za-z^/()*\s\d-]*$/;

/** Trade spellings that the unit parser does not know. */
const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/°\s*/g, 'deg'],
  [/²/g, '^2'],
  [/³/g, '^3'],
  [/·/g, ' '],
  [/\b(ft|in|m|cm|mm|K)([23])\b/g, '$1^$2'],
  [/\bgpm\b/g, 'gal/min'],
  [/\b(?:Btu|btu)\b/g, 'BTU'],
];

/**
 * Reads a quantity into SI (temperatures in °C, angles in degrees).
 *
 * @param value - A number in the unit of the dimension, or a string with a unit.
 * @param dimension - What kind of quantity is wanted.
 * @returns The number in the dimension's unit, or `null` when the value is no such quantity or not finite.
 */
export function toSi(value: unknown, dimension: Dimension): number | null {
  if (typeof value === 'number') return Number.isFinite(value) ? value : null;
  const written = partsOf(value);
  if (written === null) return null;
  const { amount, unit } = written;
  if (dimension === 'fraction') return unit === '%' ? amount / 100 : null;
  return convert(amount, unit, DIMENSIONS[dimension].target, dimension);
}

/**
 * Bounds in the unit that somebody wrote, for errors: `from 0 to 290 psi` to whoever wrote `400 psi`.
 *
 * @returns The bounds and the unit as written; `null` where the value carries no unit of this dimension.
 */
export function boundsAsWritten(
  value: unknown,
  dimension: Dimension,
  bounds: readonly number[],
): { readonly bounds: readonly number[]; readonly unit: string } | null {
  const written = partsOf(value);
  if (written === null || toSi(value, dimension) === null) return null;
  const shown = bounds.map((bound) =>
    dimension === 'fraction' ? 100 * bound : convert(bound, DIMENSIONS[dimension].target, written.unit, dimension),
  );
  if (shown.some((bound) => bound === null)) return null;
  return { bounds: shown.map((bound) => Number(bound!.toPrecision(4))), unit: written.unit };
}

function partsOf(value: unknown): { readonly amount: number; readonly unit: string } | null {
  if (typeof value !== 'string' || value.length > LONGEST) return null;
  const parts = NUMBER_THEN_UNIT.exec(value);
  if (parts === null || parts[2] === '') return null;
  const amount = Number(parts[1]);
  return Number.isFinite(amount) ? { amount, unit: parts[2]! } : null;
}

/** Names of the scales, to the steps of each: a difference of 9 degF is 5 K, the scales' zero points stay out of it. */
const STEPS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:degC|celsius)\b/g, 'K'],
  [/\b(?:degF|fahrenheit)\b/g, 'degR'],
];

const spelt = (text: string, spellings: typeof SPELLINGS): string =>
  spellings.reduce((unit, [pattern, spelling]) => unit.replace(pattern, spelling), text);

/** Converts by the unit parser, which reads units only and evaluates nothing. */
function convert(amount: number, from: string, to: string, dimension: Dimension): number | null {
  const units = [from, to].map((unit) => spelt(unit, SPELLINGS));
  if (!units.every((unit) => UNIT_CHARACTERS.test(unit))) return null;
  const [source, target] = dimension === 'temperatureDifference' ? units.map((unit) => spelt(unit, STEPS)) : units;
  try {
    const result = convertUnit(amount, source!, target!);
    return Number.isFinite(result) ? result : null;
  } catch {
    return null; // unknown unit, or a unit of another dimension
  }
}
