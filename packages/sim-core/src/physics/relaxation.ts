/**
 * Exact steps of a stirred volume, dT/dt = r − T/τ with constant r over the step, written so that nothing cancels when the
 * step is short against τ. With x = Δt/τ and R = r Δt at the start of the step:
 *
 *     end = T0 + R (1 − x φ),   mean = T0 + R φ,   φ = (1 − (1 − e^−x)/x)/x
 */

/** Below this, the closed form of φ loses digits that its series keeps; there the series is the faster one too. */
const SMALL = 0.1;

/**
 * φ(x): mean rise over the step, as a share of what the starting rate alone would bring; ½ at x = 0.
 *
 *     φ(x) = Σ (−x)^n/(n + 2)!, to the last bit by nine terms up to x = 0.1
 *
 * @param x - Step over time constant, ≥ 0. [-]
 */
export function meanOfRise(x: number): number {
  if (x > SMALL) return (1 + Math.expm1(-x) / x) / x;
  // Terms by pairs: no long chain in which each product waits for the one before.
  const square = x * x;
  const fourth = square * square;
  const late = 1 / 720 - x * (1 / 5040) + square * (1 / 40320 - x * (1 / 362880)) + fourth * (1 / 3628800);
  return 1 / 2 - x * (1 / 6) + square * (1 / 24 - x * (1 / 120)) + fourth * late;
}

/** Rows of the table of {@link decayOf} for each unit of x: so fine that the series between them leaves out 5e-17. */
const ROWS = 64;
/** Where the table ends: 1 − e^(−x) is 1 from there on, to the last bit. */
const REACH = 40;
const decays = Float64Array.from({ length: ROWS * REACH }, (_, row) => Math.exp(-row / ROWS));

/**
 * e^(−x), by a table and the series between its rows: to 5e-16 of itself, and 0 from 40 on. The year asks for it some ten times a step, and `Math.exp` takes
 * more than twice as long.
 *
 * @param x - Step over time constant, ≥ 0. [-]
 */
export function decayOf(x: number): number {
  if (x >= REACH) return 0;
  const row = (x * ROWS) | 0;
  const y = row / ROWS - x;
  const square = y * y;
  const series = 1 / 2 + y * (1 / 6) + square * (1 / 24 + y * (1 / 120) + square * (1 / 720));
  return decays[row]! * (1 + y + square * series);
}

/** Below this, 1 − e^(−x) by difference loses digits that its series keeps. */
const LITTLE = 1e-2;

/** 1 − e^(−x): the share of an excess that is gone after x time constants. @param x - ≥ 0. [-] */
export const goneOf = (x: number): number => (x > LITTLE ? 1 - decayOf(x) : x * (1 - x * meanOfRise(x)));

/**
 * Mean of e^(−x t) over t from 0 to 1: the share of a starting excess that the step's mean still holds.
 *
 * @param x - Step over time constant, ≥ 0. [-]
 * @param decay - e^(−x), which the caller has at hand. [-]
 */
export const meanDecay = (x: number, decay: number): number => (x > 1e-8 ? (1 - decay) / x : 1 - 0.5 * x);
