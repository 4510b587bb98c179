// Slips of the pen: numbers that stand alone against all the others.
import { inverse } from 'ml-matrix';
import { covariance, type Expectation, timeCorrelation } from './expectation.ts';
import { dot } from './normal.ts';
import type { Observation } from './observe.ts';

/** A number this many deviations from what the others tell is a slip. Judgement. */
const SLIP = 4;
/** No more than this share of the numbers is set aside so. Judgement. */
const MOST_SLIPS = 0.05;
/** Noise of a slip, in deviations of its reading. */
export const SLIP_NOISE = 30;
/** A number is a slip with this chance. Judgement. */
export const SLIP_CHANCE = 0.01;
/** Numbers that an expectation does not explain by the others; `null` where there are none, or too many to be slips. */
export function findSlips(expectation: Expectation, numbers: readonly Observation[], model: number): Uint8Array | null {
  const n = numbers.length;
  const told = inverse(covariance(expectation, numbers, timeCorrelation(numbers), model));
  const slips = Uint8Array.from(numbers, (_, i) => {
    let sum = 0;
    for (let j = 0; j < n; j++) sum += told.get(i, j) * (numbers[j]!.value - expectation.mean[j]!);
    // Residual of leaving this one out, over its deviation.
    return Math.abs(sum) > SLIP * Math.sqrt(told.get(i, i)) ? 1 : 0;
  });
  const count = dot(slips, slips);
  return count > 0 && count <= Math.max(2, MOST_SLIPS * n) ? slips : null;
}
