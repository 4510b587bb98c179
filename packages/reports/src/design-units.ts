/** Units of a design's fields, for reports that show a value without its assumption beside it. */
import { DESIGN_UNITS } from './design-unit-table.ts';

/** Unit of a field by the last word of its path; empty for pure numbers. */
export function designUnit(path: string): string {
  const name = path.slice(path.lastIndexOf('.') + 1);
  return Object.hasOwn(DESIGN_UNITS, name) ? DESIGN_UNITS[name]! : '';
}
