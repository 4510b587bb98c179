// Random numbers that come out the same for the same seed, everywhere.

/** Source of standard normal deviates. */
export type Gauss = () => number;

/** Uniform numbers from 0 to 1 from a seed: a counter mixed by multiplications (32-bit whole numbers only). */
export function uniformFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return (((mixed ^ (mixed >>> 15)) >>> 0) + 0.5) / 4294967296;
  };
}

/** Normal deviates from uniform numbers (Box and Muller 1958). */
export const gaussFrom =
  (uniform: () => number): Gauss =>
  () =>
    Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());

/** Factors of mean 1, one a day, log-normal. @param spread - Standard deviation of the logarithm. [-] */
export function dayFactors(gauss: Gauss, spread: number): Float64Array {
  return Float64Array.from({ length: 365 }, () => Math.exp(spread * gauss() - 0.5 * spread * spread));
}
