// What all formats share: cells and labels as text.

import { converted, digits, unitIn } from '../../shown-units.ts';
import type { Units } from '../../units.ts';
import type { Cell, Column } from './model.ts';

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
