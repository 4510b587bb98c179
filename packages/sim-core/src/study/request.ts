import { checkInput } from '../input/check.ts';
import { DesignError, type DesignIssue, quote } from '../input/errors.ts';
import { choice, count } from '../input/field.ts';
import * as z from '../input/zod.ts';
import { DEFAULT_MEASURES, MEASURE_UNITS, type Measure } from './measures.ts';
import type { RowRequest, StudyOptions } from './types.ts';

const measure = choice(Object.keys(MEASURE_UNITS) as Measure[]);
const optionsSchema = z.strictObject({
  measures: z.array(measure).default([]),
  monthly: z.array(measure).default([]),
  steps: z
    .strictObject({
      stepsPerHour: count(1, 240).optional(),
      collectorNodes: count(1, 100).optional(),
      pipeNodes: count(1, 50).optional(),
    })
    .default({}),
});

/** Checks what is to be kept of each design; a key figure named twice is kept once. */
export function rowRequest({ measures, monthly, steps }: StudyOptions): RowRequest {
  const checked = checkInput(
    optionsSchema,
    Object.fromEntries(Object.entries({ measures, monthly, steps }).filter(([, value]) => value !== undefined)),
  );
  const given = Object.entries(checked.steps).filter(([, value]) => value !== undefined);
  return {
    measures: [...new Set<Measure>([...DEFAULT_MEASURES, ...checked.measures])],
    monthly: [...new Set(checked.monthly)],
    steps: Object.fromEntries(given),
  };
}

/** A fault in what a study was given. */
export const issue = (path: string, value: unknown, expected: string, remedy: string): DesignIssue => ({
  path,
  found: quote(value),
  expected,
  remedy,
});

/** @throws {@link DesignError} when there is any. */
export function refuse(issues: readonly DesignIssue[]): void {
  if (issues.length > 0) throw new DesignError(issues);
}

/** Faults of options that a study does not know; `known` are those it does. */
export function unknownOptions(options: object, known: readonly string[]): DesignIssue[] {
  return Object.keys(options)
    .filter((key) => !known.includes(key))
    .map((key) => issue(`options.${key}`, options[key as never], `one of ${known.join(', ')}`, 'Check the spelling.'));
}

/** Options of {@link StudyOptions}. */
export const ROW_OPTIONS = ['measures', 'monthly', 'steps'] as const;

/** A whole number among options, or its default. */
export function wholeOption(
  issues: DesignIssue[],
  path: string,
  value: unknown,
  fallback: number,
  [minimum, maximum]: readonly [number, number],
): number {
  if (value === undefined) return fallback;
  if (Number.isInteger(value) && (value as number) >= minimum && (value as number) <= maximum) return value as number;
  issues.push(issue(path, value, `a whole number from ${minimum} to ${maximum}`, 'Give a count.'));
  return fallback;
}
