/** How an uncertain input may lie, and its value at a share of probability. */
import type { DesignIssue } from '../input/errors.ts';
import type { Bound } from './fields.ts';
import { issue } from './request.ts';
import type { StudyValue } from './types.ts';

/** All values between two bounds are as likely. */
export interface UniformInput {
  /** Lower bound; a number in the field's unit, or a string with a unit. */
  readonly from: Bound;
  /** Upper bound. */
  readonly to: Bound;
}

/** A likeliest value between two bounds, chances falling in straight lines to both. */
export interface TriangularInput extends UniformInput {
  /** The likeliest value. */
  readonly likely: Bound;
}

/** A normal distribution, told by the values below which one and nine of ten lie; it has no bounds. */
export interface NormalInput {
  /** One of ten lies below. */
  readonly p10: Bound;
  /** Nine of ten lie below. */
  readonly p90: Bound;
}

/** One of a few values. */
export interface ChoiceInput {
  /** The values. */
  readonly values: readonly StudyValue[];
  /** Chance of each, in any scale. Default: all alike. */
  readonly weights?: readonly number[];
}

/** How an uncertain input may lie. */
export type UncertainInput = UniformInput | TriangularInput | NormalInput | ChoiceInput;

/** A distribution in the unit of its field: the value at a share of probability, 0 to 1. */
type Quantile = (share: number) => StudyValue;

const has = (input: UncertainInput, ...keys: readonly string[]): boolean =>
  keys.every((key) => Object.hasOwn(input, key));

const isChoice = (input: UncertainInput): input is ChoiceInput => has(input, 'values');
const isNormal = (input: UncertainInput): input is NormalInput => has(input, 'p10', 'p90');
const isTriangular = (input: UncertainInput): input is TriangularInput => has(input, 'from', 'likely', 'to');

/** Faults of the form, without a look at the values. */
export function distributionFaults(path: string, input: UncertainInput): DesignIssue[] {
  const forms = '{ from, to }, { from, likely, to }, { p10, p90 } or { values }';
  if (
    typeof input !== 'object' ||
    input === null ||
    !(isChoice(input) || isNormal(input) || has(input, 'from', 'to'))
  ) {
    return [issue(path, input, forms, 'Give one of the forms.')];
  }
  if (!isChoice(input)) return [];
  const { values, weights } = input;
  if (!Array.isArray(values) || values.length === 0) return [issue(path, values, 'at least one value', 'List them.')];
  if (weights === undefined) return [];
  const fits =
    weights.length === values.length &&
    weights.every((weight) => Number.isFinite(weight) && weight >= 0) &&
    weights.some((weight) => weight > 0);
  return fits ? [] : [issue(`${path}.weights`, weights, 'a chance of 0 or more for each value', 'Give as many.')];
}

/** What is to be read in the field's unit, lowest first; for a choice nothing. */
export function boundsOf(input: UncertainInput): readonly Bound[] {
  if (isChoice(input)) return [];
  if (isNormal(input)) return [input.p10, input.p90];
  return isTriangular(input) ? [input.from, input.likely, input.to] : [input.from, input.to];
}

/** Every value that the form names, to try whether the design takes it. */
export const valuesOf = (input: UncertainInput): readonly StudyValue[] =>
  isChoice(input) ? input.values : boundsOf(input);

/** The distribution, given {@link boundsOf} as numbers. */
export function quantileOf(input: UncertainInput, bounds: readonly number[]): Quantile {
  if (isChoice(input)) return choiceQuantile(input);
  const [low, middle, high] = bounds as [number, number, number];
  if (isNormal(input)) {
    const deviation = (middle - low) / (2 * normalQuantile(0.9));
    return (share) => (low + middle) / 2 + deviation * normalQuantile(share);
  }
  if (!isTriangular(input)) return (share) => low + share * (middle - low);
  const rising = (middle - low) / (high - low);
  return (share) =>
    share < rising
      ? low + Math.sqrt(share * (high - low) * (middle - low))
      : high - Math.sqrt((1 - share) * (high - low) * (high - middle));
}

function choiceQuantile({ values, weights = values.map(() => 1) }: ChoiceInput): Quantile {
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const lastPossible = weights.findLastIndex((weight) => weight > 0);
  return (share) => {
    let below = 0;
    const place = weights.findIndex((weight) => {
      below += weight;
      return share * whole < below;
    });
    return values[place < 0 ? lastPossible : place]!;
  };
}

const CENTRAL = {
  above: [
    -3.969683028665376e1, 2.209460984245205e2, -2.759285104469687e2, 1.38357751867269e2, -3.066479806614716e1,
    2.506628277459239,
  ],
  below: [
    -5.447609879822406e1, 1.615858368580409e2, -1.556989798598866e2, 6.680131188771972e1, -1.328068155288572e1, 1,
  ],
} as const;
const TAIL = {
  above: [
    -7.784894002430293e-3, -3.223964580411365e-1, -2.400758277161838, -2.549732539343734, 4.374664141464968,
    2.938163982698783,
  ],
  below: [7.784695709041462e-3, 3.224671290700398e-1, 2.445134137142996, 3.754408661907416, 1],
} as const;
/** Share below which the tail's fraction holds. */
const TAIL_SHARE = 0.02425;

const polynomial = (coefficients: readonly number[], x: number): number =>
  coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);

/**
 * Standard normal deviate below which a share lies. Relative error below 1.2e-9.
 *
 * @param share - Above 0 and below 1; the ends are held at the nearest that can be told.
 * @see Acklam's rational approximation (2003), coefficients from memory, checked against tables in the tests.
 */
export function normalQuantile(share: number): number {
  const held = Math.min(Math.max(share, Number.EPSILON), 1 - Number.EPSILON);
  if (held > 1 - TAIL_SHARE) return -tail(1 - held);
  if (held < TAIL_SHARE) return tail(held);
  const q = held - 0.5;
  return (q * polynomial(CENTRAL.above, q * q)) / polynomial(CENTRAL.below, q * q);
}

function tail(share: number): number {
  const q = Math.sqrt(-2 * Math.log(share));
  return polynomial(TAIL.above, q) / polynomial(TAIL.below, q);
}
