// What is drawn by lot, from the random numbers of studies: the same for the same seed, everywhere.
import { normalQuantile } from '../../study/distributions.ts';
import { diceFor } from '../../study/random.ts';

/** Source of standard normal deviates. */
type Gauss = () => number;

/** Uniform numbers between 0 and 1 from a seed. */
export const uniformFrom = (seed: number): (() => number) => diceFor(seed, 0).uniform;

/** A uniform number of 0 would be a deviate without end. */
const LEAST = 2 ** -54;

/** Normal deviates from uniform numbers, by the inverse of the normal distribution. */
export const gaussFrom =
  (uniform: () => number): Gauss =>
  () =>
    normalQuantile(Math.max(uniform(), LEAST));

/** Factors of mean 1, one a day, log-normal. @param spread - Standard deviation of the logarithm. [-] */
export function dayFactors(gauss: Gauss, spread: number): Float64Array {
  return Float64Array.from({ length: 365 }, () => Math.exp(spread * gauss() - 0.5 * spread * spread));
}
