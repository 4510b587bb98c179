import { meanOfRise } from '../relaxation.ts';

/**
 * Parts on a ring through which one fluid goes round: what each is in this step, and what became of it. The numbers of a part lie side by
 * side, see {@link RING}: one array in place of eight, each of which the engine would check anew in every turn of the loops. Behind the last
 * part, its inlet's place holds what leaves it. Shape [(parts + 1) × {@link NUMBERS}].
 */
export type Ring = Float64Array;

/** Numbers of one part in a {@link Ring}. */
export const NUMBERS = 21;

const GONE = 0;
const X = GONE; // until the pace is set
const HELD = 1;
const SETTLED = 2;
const BEND = 3;
const SHARE = 4;
const OWN = 5;
const REST = 6;
const START = 7;
const INLET = 8;
const RISE = 9;
const SPARE = 10;
const MEAN_BY_MEAN = 14;
const MEAN_BY_TREND = 15;
const MEAN = 16;
const TREND_BY_MEAN = 17;
const TREND_BY_TREND = 18;
const TREND = 19;
const LATE = 20;

// Mean and trend behind some parts, as sums of those before them: see {@link sweep}.
const MM = 0;
const MK = 1;
const M0 = 2;
const KM = 3;
const KK = 4;
const K0 = 5;

/** Places of a part's numbers. */
export const RING = {
  /** Step over the time constant of the part's volume, until {@link setPace} makes its pace of it. [-] */
  x: X,
  /** g: how much of the inlet drives the volume. [-] */
  share: SHARE,
  /** Share of the outlet that comes from the volume; the rest passes it by. [-] */
  own: OWN,
  /** r: what drives the volume besides its inlet. [K] */
  rest: REST,
  /** T0: the volume at the start of the step. [°C] */
  start: START,
  /** Result: mean of what flows in. [°C] */
  inlet: INLET,
  /** Result: rise of the volume from start to end of the step. [K] */
  rise: RISE,
  /** Four places that the caller may use. */
  spare: SPARE,
} as const;

/** Below this, (1 − φ)/x loses digits that the series of {@link meanOfRise} keeps. */
const SMALL = 1e-2;

/** Makes room for a ring of parts that hold still. */
export function makeRing(parts: number): Ring {
  const ring = new Float64Array((parts + 1) * NUMBERS);
  for (let at = 0; at < ring.length; at += NUMBERS) ring[at + HELD] = 1;
  return ring;
}

/**
 * Makes of a part's {@link RING.x} how fast its volume follows what drives it: 1 − d, φ, 1 − φ and β of {@link closeRing}.
 *
 * @param at - Start of the part's numbers.
 */
export function setPace(ring: Ring, at: number): void {
  const x = ring[at + X]!;
  if (x > SMALL) {
    const gone = 1 - Math.exp(-x);
    const inverse = 1 / x;
    const held = gone * inverse;
    ring[at + GONE] = gone;
    ring[at + HELD] = held;
    ring[at + SETTLED] = 1 - held;
    ring[at + BEND] = 0.5 * held - (1 - held) * inverse;
    return;
  }
  // From the series down, so that a part that hardly exchanges keeps its digits.
  const risen = meanOfRise(x);
  const settled = x * risen;
  ring[at + GONE] = x * (1 - settled);
  ring[at + HELD] = 1 - settled;
  ring[at + SETTLED] = settled;
  ring[at + BEND] = 0.5 * (1 - settled) - risen;
}

/** Gives a part the pace of another: what equals it need not be computed. */
export function copyPace(ring: Ring, at: number, from: number): void {
  ring[at + GONE] = ring[from + GONE]!;
  ring[at + HELD] = ring[from + HELD]!;
  ring[at + SETTLED] = ring[from + SETTLED]!;
  ring[at + BEND] = ring[from + BEND]!;
}

/**
 * Carries all parts of a ring through one step. Allocates nothing.
 *
 * Temperatures within a step are told by two numbers, mean m and trend k: k is end less start of the straight line with the same
 * mean and the same end. An inlet m + k (s − ½), s from 0 to 1, into a stirred volume
 *
 *     dT/ds = x (g inlet + r − T),   outlet = (1 − own) inlet + own T
 *
 * gives, solved exactly with d = e^(−x), φ = (1 − d)/x and the responses to a trend β = φ/2 − (1 − φ)/x, λ = (1 + d)/2 − φ,
 *
 *     mean of T = (1 − φ)(g m + r) + φ T0 + β g k,     rise of T = (1 − d)(g m + r − T0) + λ g k
 *
 * so mean and trend of an outlet are linear in those of the inlet, and the ring closes in one sweep: two equations for mean and trend
 * of what enters the first part. A second sweep writes the results. What leaves a part is what the next receives, so energy is
 * kept to rounding. Steady ramps are exact. After a jump a straight line is a poor picture of the slug that goes round: steps much
 * shorter than a turn may pass the range of what drives them by up to 2 % of it.
 */
export function closeRing(ring: Ring): void {
  const end = ring.length - NUMBERS;
  const along = whole;
  passThrough(along);
  sweep(ring, 0, end, along);
  close(along);
  spread(ring, 0, end, along);
  ring[end + INLET] = along[0]!;
}

/** What came behind the parts of a ring, kept from one call to the next. */
const whole = new Float64Array(6);

/** Says that what comes out is what went in. */
export function passThrough(along: Float64Array): void {
  along[MM] = 1;
  along[MK] = 0;
  along[M0] = 0;
  along[KM] = 0;
  along[KK] = 1;
  along[K0] = 0;
}

/**
 * Works out the parts from `at` up to `end`.
 *
 * @param along - Mean mm·m + mk·k + m0 and trend km·m + kk·k + k0 of what enters `at`, by m and k of what enters the ring; changed to those behind the last.
 */
export function sweep(ring: Ring, from: number, end: number, along: Float64Array): void {
  let mm = along[MM]!;
  let mk = along[MK]!;
  let m0 = along[M0]!;
  let km = along[KM]!;
  let kk = along[KK]!;
  let k0 = along[K0]!;
  for (let at = from; at < end; at += NUMBERS) {
    const gone = ring[at + GONE]!;
    const settled = ring[at + SETTLED]!;
    const bend = ring[at + BEND]!;
    const late = settled - 0.5 * gone;
    const turning = 2 * (gone - settled);
    const fromVolume = ring[at + OWN]!;
    const driven = fromVolume * ring[at + SHARE]!;
    const rest = ring[at + REST]!;
    const start = ring[at + START]!;
    const meanByMean = 1 - fromVolume + driven * settled;
    const meanByTrend = driven * bend;
    const trendByMean = driven * turning;
    const trendByTrend = 1 - fromVolume + 2 * driven * (late - bend);
    const mean = fromVolume * (settled * rest + ring[at + HELD]! * start);
    const trend = fromVolume * turning * (rest - start);
    ring[at + MEAN_BY_MEAN] = meanByMean;
    ring[at + MEAN_BY_TREND] = meanByTrend;
    ring[at + MEAN] = mean;
    ring[at + TREND_BY_MEAN] = trendByMean;
    ring[at + TREND_BY_TREND] = trendByTrend;
    ring[at + TREND] = trend;
    ring[at + LATE] = late;
    const mmBefore = mm;
    const mkBefore = mk;
    const m0Before = m0;
    mm = meanByMean * mmBefore + meanByTrend * km;
    mk = meanByMean * mkBefore + meanByTrend * kk;
    m0 = meanByMean * m0Before + meanByTrend * k0 + mean;
    km = trendByMean * mmBefore + trendByTrend * km;
    kk = trendByMean * mkBefore + trendByTrend * kk;
    k0 = trendByMean * m0Before + trendByTrend * k0 + trend;
  }
  along[MM] = mm;
  along[MK] = mk;
  along[M0] = m0;
  along[KM] = km;
  along[KK] = kk;
  along[K0] = k0;
}

/** Closes the ring: mean and trend of what enters it, from what comes back; left in the first two places of `along`. */
export function close(along: Float64Array): void {
  const mm = along[MM]!;
  const mk = along[MK]!;
  const m0 = along[M0]!;
  const km = along[KM]!;
  const kk = along[KK]!;
  const k0 = along[K0]!;
  const determinant = (1 - mm) * (1 - kk) - mk * km;
  along[0] = (m0 * (1 - kk) + mk * k0) / determinant;
  along[1] = (k0 * (1 - mm) + km * m0) / determinant;
}

/** Writes into the parts from `at` up to `end` what became of them. @param flow - Mean and trend before them; changed to those behind them. */
export function spread(ring: Ring, from: number, end: number, flow: Float64Array): void {
  let m = flow[0]!;
  let k = flow[1]!;
  for (let at = from; at < end; at += NUMBERS) {
    ring[at + INLET] = m;
    const g = ring[at + SHARE]!;
    ring[at + RISE] = ring[at + GONE]! * (g * m + ring[at + REST]! - ring[at + START]!) + ring[at + LATE]! * g * k;
    const mean = ring[at + MEAN_BY_MEAN]! * m + ring[at + MEAN_BY_TREND]! * k + ring[at + MEAN]!;
    k = ring[at + TREND_BY_MEAN]! * m + ring[at + TREND_BY_TREND]! * k + ring[at + TREND]!;
    m = mean;
  }
  flow[0] = m;
  flow[1] = k;
}
