/** Random numbers of a study: each design has its own, told by seed and index alone, whichever thread or machine asks. */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Random numbers of one design. */
interface Dice {
  /** Uniform, 0 up to but not 1. */
  readonly uniform: () => number;
  /** A whole number from 0 to `count` − 1. */
  readonly below: (count: number) => number;
}

/** Mixes two 32-bit numbers so that neighbours share nothing (finaliser of MurmurHash3, by its author in the public domain). */
function mix(seed: number, index: number): number {
  let h = (seed ^ Math.imul(index + 1, 0x9e3779b1)) | 0;
  h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
  return h ^ (h >>> 16);
}

/** Random numbers for a seed and an index. */
export function diceFor(seed: number, index: number): Dice {
  const generator = xoroshiro128plus(mix(seed, index));
  return {
    uniform: () => uniformFloat64(generator),
    below: (count) => uniformInt(generator, 0, count - 1),
  };
}
