import type { WeatherYear } from '@noonloop/weather-io';
import type { ByField, DesignField } from '../define/field-path.ts';
import type { SystemInput } from '../define/system-input.ts';
import type { DesignIssue } from '../input/errors.ts';
import { asShown, type Bound, type FieldSet, fieldFaults, readBounds } from './fields.ts';
import type { Measure } from './measures.ts';
import { setFields } from './paths.ts';
import { issue, ROW_OPTIONS, refuse, rowRequest, unknownOptions } from './request.ts';
import { collectRows, makeStudy, type Study } from './study.ts';
import type { RowWith, StudyOptions, StudyValue } from './types.ts';
import { weatherList } from './weathers.ts';

/** Equal steps between two bounds, both included. */
export interface AxisSteps {
  /** First value; a number in the field's unit, or a string with a unit. */
  readonly from: Bound;
  /** Last value. */
  readonly to: Bound;
  /** Values, 2 to 10 000. */
  readonly count: number;
}

/** Named variants that set several fields at once. */
export interface AxisVariants {
  /** Fields by place, for each name. */
  readonly variants: Readonly<Record<string, FieldSet>>;
}

/** What one axis of a sweep runs through. */
export type SweepAxis = readonly StudyValue[] | AxisSteps | AxisVariants;

/** Axes by the place of their field, such as `'array.tilt'`; an axis of variants may have any name. */
export type SweepAxes = { readonly [Field in DesignField]?: SweepAxis } & { readonly [name: string]: SweepAxis };

/** One value of an axis: how a row shows it, and what it sets. */
interface AxisPoint {
  readonly shown: StudyValue;
  readonly fields: FieldSet;
}

/** Most designs of a sweep: up to here every index is exact. */
const MOST = 1e9;

/**
 * Simulates every combination of the axes' values, in every weather year given.
 *
 * The last axis turns fastest, weather years slowest. Light on a plane is computed once as long as runs that share it follow each
 * other: put axes of tilt and azimuth first.
 *
 * @param base - The design as written; fields of an axis may be missing from it.
 * @param axes - See {@link SweepAxes}. A combination that cannot be simulated becomes a row with its error.
 * @param weather - One year, or several.
 * @param options - What is kept of each.
 * @returns A study whose rows say in `inputs` what was chosen on each axis, quantities as numbers in the field's unit; its outcome is the rows.
 * @throws {@link DesignError} listing all faults of base and axes at once.
 * @example
 * const study = sweep(base, { 'tank.volume': ['200 L', '300 L'], 'array.panels': [2, 3, 4] }, weather);
 * for await (const row of study) console.log(row.inputs, row.measures.fuelSaved);
 */
export function sweep<const Axes extends SweepAxes, Asked extends Measure = never>(
  base: SystemInput,
  axes: Axes & ByField<Axes, AxisVariants>,
  weather: WeatherYear | readonly WeatherYear[],
  options: StudyOptions<Asked> = {},
): Study<readonly RowWith<Asked>[], RowWith<Asked>> {
  const issues: DesignIssue[] = unknownOptions(options, ROW_OPTIONS);
  const weathers = weatherList(issues, weather);
  const names = Object.keys(axes ?? {});
  if (names.length === 0) issues.push(issue('axes', axes, 'at least one axis', "Give { 'array.panels': [2, 3] }."));
  for (const name of names) issues.push(...axisFaults(name, axes[name]!));
  refuse(issues);

  const listed = new Map(names.map((name) => [name, listedPoints(name, axes[name]!)]));
  const first = Object.assign({}, ...[...listed.values()].map((points) => points[0]!.fields)) as FieldSet;
  refuse(
    fieldFaults(
      base,
      first,
      [...listed.values()].flatMap((points) => points.slice(0, 200).map((p) => p.fields)),
    ),
  );
  const points = names.map((name) => {
    const axis = axes[name]!;
    if (isSteps(axis)) return steppedPoints(name, axis, base, first);
    if (isVariants(axis)) return listed.get(name)!;
    return listed.get(name)!.map(({ shown, fields }) => ({ shown: asShown(base, first, name, shown), fields }));
  });
  const designs = points.reduce((product, list) => product * list.length, 1);
  const total = designs * weathers.length;
  refuse(total <= MOST ? [] : [issue('axes', total, `at most ${MOST} designs`, 'Take fewer or coarser axes.')]);

  return makeStudy({
    kind: 'sweep',
    description: { base, axes } as unknown as StudyValue,
    weathers,
    request: rowRequest(options),
    total,
    caseAt: (index) => {
      const chosen: AxisPoint[] = [];
      let rest = index % designs;
      for (let axis = points.length - 1; axis >= 0; axis--) {
        chosen[axis] = points[axis]![rest % points[axis]!.length]!;
        rest = Math.trunc(rest / points[axis]!.length);
      }
      return {
        index,
        inputs: Object.fromEntries(chosen.map(({ shown }, axis) => [names[axis]!, shown])),
        design: setFields(base, Object.assign({}, ...chosen.map(({ fields }) => fields))),
        weather: Math.trunc(index / designs),
      };
    },
    analyse: collectRows,
  }) as Study<readonly RowWith<Asked>[], RowWith<Asked>>;
}

const isSteps = (axis: SweepAxis): axis is AxisSteps => !Array.isArray(axis) && 'count' in axis;
const isVariants = (axis: SweepAxis): axis is AxisVariants => !Array.isArray(axis) && 'variants' in axis;

function axisFaults(name: string, axis: SweepAxis): DesignIssue[] {
  const path = `axes.${name}`;
  if (Array.isArray(axis)) {
    return axis.length > 0 ? [] : [issue(path, axis, 'at least one value', 'Give the values in a list.')];
  }
  if (typeof axis !== 'object' || axis === null || !(isSteps(axis) || isVariants(axis))) {
    return [issue(path, axis, 'a list, { from, to, count } or { variants }', 'Give one of the three forms.')];
  }
  if (isVariants(axis)) {
    const sets = Object.entries(axis.variants ?? {});
    const bad = sets.filter(([, fields]) => typeof fields !== 'object' || fields === null);
    if (sets.length === 0) return [issue(`${path}.variants`, axis.variants, 'at least one variant', 'Name them.')];
    return bad.map(([variant, fields]) =>
      issue(`${path}.variants.${variant}`, fields, 'fields by place', "Give { 'tank.volume': '300 L' }."),
    );
  }
  const whole = Number.isInteger(axis.count) && axis.count >= 2 && axis.count <= 10_000;
  return whole ? [] : [issue(`${path}.count`, axis.count, 'a whole number from 2 to 10000', 'Give a count.')];
}

/** Values as they stand; of equal steps only the ends, which are enough to check them by. */
function listedPoints(name: string, axis: SweepAxis): AxisPoint[] {
  if (isSteps(axis)) return [axis.from, axis.to].map((value) => ({ shown: value, fields: { [name]: value } }));
  if (isVariants(axis)) return Object.entries(axis.variants).map(([shown, fields]) => ({ shown, fields }));
  return axis.map((value) => ({ shown: value, fields: { [name]: value } }));
}

function steppedPoints(name: string, axis: AxisSteps, base: SystemInput, companions: FieldSet): AxisPoint[] {
  const [from, to] = readBounds(base, companions, [
    [name, axis.from],
    [name, axis.to],
  ]) as [number, number];
  return Array.from({ length: axis.count }, (_, step) => {
    const value = step === axis.count - 1 ? to : from + ((to - from) * step) / (axis.count - 1);
    return { shown: value, fields: { [name]: value } };
  });
}
