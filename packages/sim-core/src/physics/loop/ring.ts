import { decayOf, meanOfRise } from '../relaxation.ts';

/**
 * Parts on a ring through which one fluid goes round: what each is in this step, and what became of it. The numbers of a part lie side by
 * side, see {@link RING}: one array in place of eight, each of which the engine would check anew in every turn of the loops. Behind the last
 * part, its inlet's place holds what leaves it. Shape [(parts + 1) × {@link NUMBERS}].
 */
export type Ring = Float64Array;

/** Numbers of one part in a {@link Ring}. */
export const NUMBERS = 22;

// Of every part for itself.
const LIKE = 0;
const REST = 1;
const START = 2;
const INLET = 3;
const RISE = 4;
const MEAN = 5;
const TREND = 6;
const SPARE = 7;
// What many have in common: read where LIKE points to.
const SHARE = 11;
const OWN = 12;
const GONE = 13;
const LATE = 14;
const MEAN_BY_REST = 15;
const MEAN_BY_START = 16;
const TREND_BY_REST = 17;
const MEAN_BY_MEAN = 18;
const MEAN_BY_TREND = 19;
const TREND_BY_MEAN = 20;
const TREND_BY_TREND = 21;

/** Places of a part's numbers. */
export const RING = {
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
  for (let at = 0; at < ring.length; at += NUMBERS) setPace(ring, at, 0);
  return ring;
}

/**
 * Works out how a part's volume and outlet answer to what drives them, for the {@link RING.own} and {@link RING.share} that it has: see
 * {@link closeRing}.
 *
 * @param at - Start of the part's numbers.
 * @param x - Step over the time constant of the part's volume. [-]
 */
export function setPace(ring: Ring, at: number, x: number): void {
  let gone: number; // 1 − d
  let held: number; // φ
  let settled: number; // 1 − φ
  let bend: number; // β
  if (x > SMALL) {
    gone = 1 - decayOf(x);
    const inverse = 1 / x;
    held = gone * inverse;
    settled = 1 - held;
    bend = 0.5 * held - settled * inverse;
  } else {
    // From the series down, so that a part that hardly exchanges keeps its digits.
    const risen = meanOfRise(x);
    settled = x * risen;
    held = 1 - settled;
    gone = x * held;
    bend = 0.5 * held - risen;
  }
  const late = settled - 0.5 * gone;
  const turning = 2 * (gone - settled);
  const own = ring[at + OWN]!;
  const driven = own * ring[at + SHARE]!;
  ring[at + LIKE] = at;
  ring[at + GONE] = gone;
  ring[at + LATE] = late;
  ring[at + MEAN_BY_REST] = own * settled;
  ring[at + MEAN_BY_START] = own * held;
  ring[at + TREND_BY_REST] = own * turning;
  ring[at + MEAN_BY_MEAN] = 1 - own + driven * settled;
  ring[at + MEAN_BY_TREND] = driven * bend;
  ring[at + TREND_BY_MEAN] = driven * turning;
  ring[at + TREND_BY_TREND] = 1 - own + 2 * driven * (late - bend);
}

/** Says that a part answers as another does: pace, own and share are not looked for in the part itself. */
export function answerLike(ring: Ring, at: number, other: number): void {
  ring[at + LIKE] = other;
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

/** Says that what comes out is what went in: mean mm·m + mk·k + m0 and trend km·m + kk·k + k0, the six numbers in this order. */
export function passThrough(along: Float64Array): void {
  along[0] = 1;
  along[1] = 0;
  along[2] = 0;
  along[3] = 0;
  along[4] = 1;
  along[5] = 0;
}

/**
 * Works out the parts from `from` up to `end`.
 *
 * @param along - What enters `from` by m and k of what enters the ring, see {@link passThrough}; changed to what comes behind the last.
 */
export function sweep(ring: Ring, from: number, end: number, along: Float64Array): void {
  let mm = along[0]!;
  let mk = along[1]!;
  let m0 = along[2]!;
  let km = along[3]!;
  let kk = along[4]!;
  let k0 = along[5]!;
  let like = -1;
  let meanByRest = 0;
  let meanByStart = 0;
  let trendByRest = 0;
  let meanByMean = 0;
  let meanByTrend = 0;
  let trendByMean = 0;
  let trendByTrend = 0;
  for (let at = from; at < end; at += NUMBERS) {
    if (ring[at + LIKE]! !== like) {
      like = ring[at + LIKE]! | 0;
      meanByRest = ring[like + MEAN_BY_REST]!;
      meanByStart = ring[like + MEAN_BY_START]!;
      trendByRest = ring[like + TREND_BY_REST]!;
      meanByMean = ring[like + MEAN_BY_MEAN]!;
      meanByTrend = ring[like + MEAN_BY_TREND]!;
      trendByMean = ring[like + TREND_BY_MEAN]!;
      trendByTrend = ring[like + TREND_BY_TREND]!;
    }
    const rest = ring[at + REST]!;
    const start = ring[at + START]!;
    const mean = meanByRest * rest + meanByStart * start;
    const trend = trendByRest * (rest - start);
    ring[at + MEAN] = mean;
    ring[at + TREND] = trend;
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
  along[0] = mm;
  along[1] = mk;
  along[2] = m0;
  along[3] = km;
  along[4] = kk;
  along[5] = k0;
}

/** Closes the ring: mean and trend of what enters it, from what comes back; left in the first two places of `along`. */
export function close(along: Float64Array): void {
  const mm = along[0]!;
  const mk = along[1]!;
  const m0 = along[2]!;
  const km = along[3]!;
  const kk = along[4]!;
  const k0 = along[5]!;
  const determinant = (1 - mm) * (1 - kk) - mk * km;
  along[0] = (m0 * (1 - kk) + mk * k0) / determinant;
  along[1] = (k0 * (1 - mm) + km * m0) / determinant;
}

/** Writes into the parts from `from` up to `end` what became of them. @param flow - Mean and trend before them; changed to those behind them. */
export function spread(ring: Ring, from: number, end: number, flow: Float64Array): void {
  let m = flow[0]!;
  let k = flow[1]!;
  let like = -1;
  let share = 0;
  let gone = 0;
  let late = 0;
  let meanByMean = 0;
  let meanByTrend = 0;
  let trendByMean = 0;
  let trendByTrend = 0;
  for (let at = from; at < end; at += NUMBERS) {
    if (ring[at + LIKE]! !== like) {
      like = ring[at + LIKE]! | 0;
      share = ring[like + SHARE]!;
      gone = ring[like + GONE]!;
      late = ring[like + LATE]!;
      meanByMean = ring[like + MEAN_BY_MEAN]!;
      meanByTrend = ring[like + MEAN_BY_TREND]!;
      trendByMean = ring[like + TREND_BY_MEAN]!;
      trendByTrend = ring[like + TREND_BY_TREND]!;
    }
    ring[at + INLET] = m;
    ring[at + RISE] = gone * (share * m + ring[at + REST]! - ring[at + START]!) + late * share * k;
    const mean = meanByMean * m + meanByTrend * k + ring[at + MEAN]!;
    k = trendByMean * m + trendByTrend * k + ring[at + TREND]!;
    m = mean;
  }
  flow[0] = m;
  flow[1] = k;
}
