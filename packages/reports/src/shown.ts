/** Numbers of a summary as tables and charts show them, so that both show the same. */
import { DEFINITIONS, type NumberKey } from './definitions.ts';
import type { Summary } from './summary.ts';
import { displayUnit, formatNumber, formatValue, roundToSum, toDisplay, type Units } from './units.ts';

/** A label with its unit, `Energy delivered [kWh]`. */
export const labelWithUnit = (key: NumberKey, units: Units): string => {
  const { label, kind } = DEFINITIONS[key];
  return `${label} [${displayUnit(kind, units).symbol}]`;
};

/** The twelve months and the year of one number as shown; additive ones are rounded so that they add up. */
export function shownMonths(summary: Summary, key: NumberKey, units: Units): string[] {
  const { kind, additive } = DEFINITIONS[key];
  const values = [...summary.months.map((month) => month[key]), summary.year[key]];
  if (!additive) return values.map((value) => formatValue(value, kind, units));
  const { digits } = displayUnit(kind, units);
  const months = roundToSum(
    summary.months.map((month) => toDisplay(month[key] ?? 0, kind, units)),
    digits,
  );
  return [...months.map((value) => formatNumber(value, digits)), formatValue(summary.year[key], kind, units)];
}
