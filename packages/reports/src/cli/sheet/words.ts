// What all formats share: cells, labels and lines of a working as text.
import type { WorkingStep } from '@noonloop/sim-core';
import type { Units } from '../../units.ts';
import type { Cell, Column } from './model.ts';
import { converted, digits, unitIn, withUnit } from './units.ts';

/** A column's head, with the unit of its numbers. */
export function headOf({ label, unit }: Column, units: Units): string {
  const symbol = unit === undefined ? '' : unitIn(unit, units).symbol;
  return symbol === '' ? label : `${label} [${symbol}]`;
}

/** A cell as text. */
export function cellText(cell: Cell, { unit }: Column, units: Units): string {
  if (cell === null) return '–';
  if (typeof cell === 'string') return cell;
  return digits(unit === undefined ? cell : converted(cell, unit, units));
}

/** Result of a line of a working: metric as its numbers are, and in US units beside it where these were asked for. */
export function resultOf({ value, unit }: WorkingStep, units: Units): string {
  const metric = withUnit(value, unit, 'metric');
  const us = withUnit(value, unit, 'us');
  return units === 'metric' || us === metric ? metric : `${metric} = ${us}`;
}
