// Random numbers that come out the same for the same seed, everywhere.

/** Source of standard normal deviates. */
export type Gauss = () => number;

/** Normal deviates from a seed: a counter mixed by multiplications (32-bit whole numbers only), then Box and Muller. */
export function gaussFrom(seed: number): Gauss {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 16), 0x21f0aaad);
    mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
    return (((mixed ^ (mixed >>> 15)) >>> 0) + 0.5) / 4294967296;
  };
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Series of unit variance in which each value remembers `memory` of the one before: y' = φ y + √(1 − φ²) g. */
export function persistent(length: number, memory: number, gauss: Gauss): Float64Array {
  const series = new Float64Array(length);
  const fresh = Math.sqrt(1 - memory * memory);
  let last = gauss();
  for (let at = 0; at < length; at++) {
    last = memory * last + fresh * gauss();
    series[at] = last;
  }
  return series;
}
