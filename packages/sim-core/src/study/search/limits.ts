/** Bounds that the best design must keep, and what it costs the search to be outside them. */
import type { DesignIssue } from '../../input/errors.ts';
import { MEASURE_UNITS, type Measure } from '../measures.ts';
import { issue } from '../request.ts';
import type { StudyRow } from '../types.ts';

/** Bounds of one key figure. [unit of the key figure] */
export interface Limit {
  /** Least value that is still good. */
  readonly atLeast?: number;
  /** Greatest value that is still good. */
  readonly atMost?: number;
}

/** Bounds by key figure. */
export type Limits = Readonly<Partial<Record<Measure, Limit>>>;

/** Cost of being outside by the size of a limit, where the first number found costs 1: enough to outweigh a gain. */
const WEIGHT = 10;
/** Cost of a design that failed. */
const FAILED = 1000;

/** Faults of limits. */
export function limitFaults(limits: Limits): DesignIssue[] {
  return Object.entries(limits).flatMap(([measure, { atLeast = 0, atMost = 0 }]) => [
    ...(Object.hasOwn(MEASURE_UNITS, measure)
      ? []
      : [issue(`options.limits.${measure}`, measure, 'the name of a key figure', 'Check the spelling.')]),
    ...(Number.isFinite(atLeast) && Number.isFinite(atMost)
      ? []
      : [issue(`options.limits.${measure}`, 'no number', 'finite numbers', 'Give atLeast, atMost or both.')]),
  ]);
}

/** How far outside a row lies, summed over limits, each over its own size; 0 inside, 1 for a key figure without a number. */
export function violation({ measures }: StudyRow, limits: Limits): number {
  let sum = 0;
  for (const [measure, { atLeast, atMost }] of Object.entries(limits)) {
    const value = measures[measure as Measure] ?? null;
    if (value === null) sum += 1;
    else {
      if (atLeast !== undefined && value < atLeast) sum += (atLeast - value) / Math.max(Math.abs(atLeast), 1);
      if (atMost !== undefined && value > atMost) sum += (value - atMost) / Math.max(Math.abs(atMost), 1);
    }
  }
  return sum;
}

/**
 * What the search minimises: the number over its scale, and a penalty that grows with the distance outside, so that the way back
 * shows. Near 1 in size, because the search compares with an absolute tolerance.
 */
export const penalised = (number: number | null, outside: number, scale: number): number =>
  number === null || !Number.isFinite(number) ? FAILED : number / scale + WEIGHT * outside;
