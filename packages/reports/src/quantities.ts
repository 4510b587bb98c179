/** Values of a design, which carry their unit as text, in the units of a report. */
import { listWithUnit, withUnit } from './shown-units.ts';
import type { Units } from './units.ts';

/** Below these, lengths read better in mm or inches. [m] */
const SHORT: Readonly<Record<Units, number>> = { metric: 0.5, us: 0.3048 };

/** Unit in which a field of a design is shown. */
function unitOf(value: number, unit: string, path: string, units: Units): string {
  if (unit === 'm') return value < SHORT[units] ? 'mm' : 'm';
  // Only what heaters give is heat; the other powers of a design are electrical and in watts everywhere.
  return /^(?:heater|baseline)\.(?:burner|minimum)Power$/.test(path) ? 'W heat' : (WRITTEN[unit] ?? unit);
}

/** Units as designs write them, and as reports know them. */
const WRITTEN: Readonly<Record<string, string>> = { m3: 'm³', m2: 'm²', degC: '°C', 'm3/s': 'm³/s' };

/**
 * A value of a design with its unit in a report's units, `300 L` for 0.3 m³. What is not a number is shown as it is.
 *
 * @param value - as in the design
 * @param unit - as in the design, SI; one that is not known is shown unchanged
 * @param path - place in the design
 */
export function formatDesignValue(value: unknown, unit: string, path: string, units: Units): string {
  if (typeof value === 'number') {
    return withUnit(value, unitOf(value, unit, path, units), units);
  }
  if (Array.isArray(value)) {
    const numbers = value.filter((one) => typeof one === 'number');
    if (numbers.length < value.length) return value.map(String).join(', ');
    return listWithUnit(numbers, unitOf(numbers[0] ?? 0, unit, path, units), units);
  }
  if (value === null || value === undefined) return 'none';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'object' ? 'see the design' : String(value);
}
