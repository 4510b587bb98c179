/** Ranges over which inputs of a design move. */

import type { DesignField } from '../define/field-path.ts';
import type { SystemInput } from '../define/system-input.ts';
import type { DesignIssue } from '../input/errors.ts';
import { type Bound, type FieldSet, fieldFaults, readBounds } from './fields.ts';
import { issue, refuse } from './request.ts';

/** Bounds of one input. */
export interface StudyRange {
  /** Lower bound; a number in the field's unit, or a string with a unit. */
  readonly from: Bound;
  /** Upper bound, above the lower one. */
  readonly to: Bound;
  /** Whether the input takes whole numbers only, such as a number of panels; each then has an equal share. Default false. */
  readonly whole?: boolean;
}

/** Ranges by the place of their field, such as `'tank.volume'`. */
export type StudyRanges = { readonly [Field in DesignField]?: StudyRange } & { readonly [place: string]: StudyRange };

/** A range in the unit of its field. */
export interface ReadRange {
  readonly path: string;
  readonly from: number;
  readonly to: number;
  readonly whole: boolean;
}

/**
 * Reads ranges into SI.
 *
 * @param baseIsWhole - Whether the base must be a design of its own, without the ranges.
 * @throws DesignError listing all faults at once.
 */
export function readRanges(base: SystemInput, ranges: StudyRanges, baseIsWhole: boolean): readonly ReadRange[] {
  const entries = Object.entries(ranges ?? {});
  const issues: DesignIssue[] =
    entries.length > 0 ? [] : [issue('ranges', ranges, 'at least one range', "Give { 'tank.volume': { from, to } }.")];
  for (const [path, range] of entries) {
    if (typeof range !== 'object' || range === null || range.from === undefined || range.to === undefined) {
      issues.push(issue(path, range, '{ from, to }', 'Give both bounds.'));
    }
  }
  refuse(issues);
  const first = Object.fromEntries(entries.map(([path, { from }]) => [path, from]));
  const companions: FieldSet = baseIsWhole ? {} : first;
  refuse(
    fieldFaults(
      base,
      companions,
      entries.flatMap(([path, { from, to }]) => [{ [path]: from }, { [path]: to }]),
    ),
  );
  const bounds = readBounds(
    base,
    companions,
    entries.flatMap(([path, { from, to }]): [string, Bound][] => [
      [path, from],
      [path, to],
    ]),
  );
  const read = entries.map(([path, { whole = false }], at): ReadRange => {
    const [from, to] = [bounds[2 * at]!, bounds[2 * at + 1]!];
    if (!(from < to)) issues.push(issue(path, `${from} to ${to}`, 'from below to', 'Give the lower bound first.'));
    if (whole && !(Number.isInteger(from) && Number.isInteger(to))) {
      issues.push(issue(path, `${from} to ${to}`, 'whole bounds', 'Give whole numbers, or leave whole out.'));
    }
    return { path, from, to, whole };
  });
  refuse(issues);
  return read;
}

/** The value at a share of a range, 0 to 1. */
function valueAt({ from, to, whole }: ReadRange, share: number): number {
  if (whole) return Math.min(from + Math.floor(share * (to - from + 1)), to);
  return from + share * (to - from);
}

/** Values of all ranges at a point of the unit cube, by place. */
export const valuesAt = (ranges: readonly ReadRange[], point: ArrayLike<number>): Record<string, number> =>
  Object.fromEntries(ranges.map((range, at) => [range.path, valueAt(range, point[at]!)]));
