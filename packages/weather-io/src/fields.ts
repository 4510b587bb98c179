// Fields of a layout that a caller writes: a misspelt one would otherwise be ignored.
import { type Faults, quote } from './errors.ts';

/** Most fields that are named one by one. */
const MOST_NAMED = 5;

/**
 * Faults what is no object, and fields of it that are not known.
 *
 * @param path - Of the object, empty for the layout itself.
 * @returns Whether it is an object.
 */
export function requireFields(value: unknown, known: readonly string[], path: string, faults: Faults): boolean {
  const fault = (column: string | null, found: string, expected: string) =>
    faults.add({ code: 'bad-option', column, value: found, expected, remedy: 'Correct the layout.' });
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    fault(path === '' ? null : path, value === undefined ? 'nothing' : quote(value), `fields: ${known.join(', ')}`);
    return false;
  }
  const strange = Object.keys(value).filter((name) => !known.includes(name));
  for (const name of strange.slice(0, MOST_NAMED)) {
    fault(`${path === '' ? '' : `${path}.`}${name.slice(0, 40)}`, 'a field of this name', `one of ${known.join(', ')}`);
  }
  if (strange.length > MOST_NAMED) {
    fault(path === '' ? null : path, `${strange.length} fields of other names`, `only ${known.join(', ')}`);
  }
  return true;
}
