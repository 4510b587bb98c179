/** What a study may set in a design, checked before anything runs. */

import { defineSystem } from '../define/define.ts';
import type { SystemInput } from '../define/system-input.ts';
import { DesignError, type DesignIssue } from '../input/errors.ts';
import { isDefined } from './evaluate.ts';
import { fieldAt, isPath, setFields } from './paths.ts';
import { issue, refuse } from './request.ts';
import type { StudyValue } from './types.ts';

/** Fields of a design with their new values, by place. */
export type FieldSet = Readonly<Record<string, StudyValue>>;

/**
 * Faults of a base design and of places that no design has. Values out of their range are left to the rows: one bad design in a
 * thousand must not stop the rest.
 *
 * @param base - What the study starts from.
 * @param first - The fields of the first design of the study.
 * @param others - Further fields, each set alone over the first.
 */
export function fieldFaults(base: SystemInput, first: FieldSet, others: readonly FieldSet[]): DesignIssue[] {
  if (typeof base !== 'object' || base === null || isDefined(base)) {
    const remedy = 'Give what defineSystem takes: its defaults then follow the fields that the study sets.';
    return [issue('base', base, 'a design as written, not one from defineSystem', remedy)];
  }
  const places = [...new Set([first, ...others].flatMap((set) => Object.keys(set)))];
  const found = new Map<string, DesignIssue>();
  for (const place of places.filter((name) => !isPath(name)))
    found.set(place, issue(place, place, 'a place such as "array.tilt"', 'Name one field of a design.'));
  const readable = (set: FieldSet): FieldSet =>
    Object.fromEntries(Object.entries(set).filter(([place]) => isPath(place)));
  const within = (path: string) => places.some((place) => path === place || path.startsWith(`${place}.`));
  for (const set of [first, ...others]) {
    for (const fault of faultsOf(setFields(base, readable({ ...first, ...set })))) {
      const isUnknown = fault.expected === 'one of the documented fields';
      if (isUnknown || !within(fault.path)) found.set(fault.path, fault);
    }
  }
  return [...found.values()];
}

function faultsOf(design: SystemInput): readonly DesignIssue[] {
  try {
    defineSystem(design);
    return [];
  } catch (error) {
    if (error instanceof DesignError) return error.issues;
    throw error;
  }
}

/**
 * A value as a row shows it: a quantity with a unit becomes the number of its field, so that rows can be reckoned with; what is no
 * quantity, or no field of this design takes, stays as it is.
 */
export function asShown(base: SystemInput, companions: FieldSet, path: string, value: StudyValue): StudyValue {
  if (typeof value !== 'string') return value;
  try {
    const read = fieldAt(defineSystem(setFields(base, { ...companions, [path]: value })), path);
    return typeof read === 'number' ? read : value;
  } catch (error) {
    if (error instanceof DesignError) return value; // its row will say so
    throw error;
  }
}

/** What a study gives as a number: plain, or with a unit. */
export type Bound = number | string;

/**
 * Reads bounds in SI by letting the design read them: the field itself knows its unit.
 *
 * @param base - A design that is whole with `companions`.
 * @param companions - Fields that the design needs besides.
 * @param bounds - Place and value, each read alone.
 * @returns Numbers in the order of `bounds`, in the unit of their field.
 * @throws {@link DesignError} listing every bound that the design refuses, and every place that holds no number.
 */
export function readBounds(
  base: SystemInput,
  companions: FieldSet,
  bounds: readonly (readonly [path: string, value: Bound])[],
): number[] {
  const issues: DesignIssue[] = [];
  const values = bounds.map(([path, value]): number => {
    try {
      const read = fieldAt(defineSystem(setFields(base, { ...companions, [path]: value })), path);
      if (typeof read === 'number') return read;
      issues.push(issue(path, value, 'a field that holds a number', 'Give this field a list of values in a sweep.'));
    } catch (error) {
      if (!(error instanceof DesignError)) throw error;
      issues.push(...error.issues);
    }
    return 0;
  });
  refuse([...new Map(issues.map((fault) => [`${fault.path} ${fault.found}`, fault])).values()]);
  return values;
}
