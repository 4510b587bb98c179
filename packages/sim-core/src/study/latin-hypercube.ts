import { diceFor } from './random.ts';

/** Stratum of each sample in each dimension, in an order drawn by `seed`: every one of them once. */
export function latinStrata(seed: number, samples: number, dimensions: number): readonly Uint32Array[] {
  return Array.from({ length: dimensions }, (_, dimension) => {
    const dice = diceFor(seed, dimension);
    const order = Uint32Array.from({ length: samples }, (_, at) => at);
    for (let at = samples - 1; at > 0; at--) {
      const other = dice.below(at + 1);
      [order[at], order[other]] = [order[other]!, order[at]!];
    }
    return order;
  });
}

/**
 * Latin hypercube: in each dimension every one of `samples` equal strata of 0 to 1 is met once, at a random place of it.
 *
 * @param seed - Whole number.
 * @param arrange - Puts the strata of the samples into another order, column by column.
 * @returns Coordinate of a sample in a dimension, 0 up to but not 1; the same whoever asks and in whatever order.
 * @see McKay, Beckman & Conover, Technometrics 21 (1979) 239–245.
 */
export function latinHypercube(
  seed: number,
  samples: number,
  dimensions: number,
  arrange: (strata: readonly Uint32Array[]) => void = () => {},
) {
  const strata = latinStrata(seed, samples, dimensions);
  arrange(strata);
  return (sample: number, dimension: number): number => {
    const place = diceFor(seed, dimensions + sample * dimensions + dimension).uniform();
    return (strata[dimension]![sample]! + place) / samples;
  };
}
