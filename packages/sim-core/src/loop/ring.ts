import { meanOfRise } from '../relaxation.ts';

/** Parts on a ring through which one fluid goes round: what each is in this step, and what became of it. Shape [parts] each. */
export interface Ring {
  /** Step over the time constant of the part's volume. [-] */
  readonly x: Float64Array;
  /** g: how much of the inlet drives the volume. [-] */
  readonly share: Float64Array;
  /** Share of the outlet that comes from the volume; the rest passes it by. [-] */
  readonly own: Float64Array;
  /** r: what drives the volume besides its inlet. [K] */
  readonly rest: Float64Array;
  /** T0: the volume at the start of the step. [°C] */
  readonly start: Float64Array;
  /** Result: mean of what flows into each part; what leaves the last one stands behind it. Shape [parts + 1]. [°C] */
  readonly inlet: Float64Array;
  /** Result: rise of each volume from start to end of the step. [K] */
  readonly rise: Float64Array;
  /** Scratch. Shape [parts × {@link NUMBERS}]. */
  readonly map: Float64Array;
}

/** Numbers of one part in {@link Ring.map}. */
const NUMBERS = 8;
/** Below this, (1 − φ)/x loses digits that the series of {@link meanOfRise} keeps. */
const SMALL = 1e-2;

/** Makes room for a ring. */
export function makeRing(parts: number): Ring {
  const column = () => new Float64Array(parts);
  return {
    x: column(),
    share: column(),
    own: column(),
    rest: column(),
    start: column(),
    inlet: new Float64Array(parts + 1),
    rise: column(),
    map: new Float64Array(parts * NUMBERS),
  };
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
  const { inlet, map, own, rest, rise, share, start, x } = ring;
  const parts = x.length;

  // After the parts so far: mean = mm·m + mk·k + m0, trend = km·m + kk·k + k0, with m and k of what enters the first part.
  let mm = 1;
  let mk = 0;
  let m0 = 0;
  let km = 0;
  let kk = 1;
  let k0 = 0;
  let lastX = -1;
  let gone = 0; // 1 − d
  let held = 0; // φ
  let settled = 0; // 1 − φ
  let turning = 0;
  let bend = 0;
  let late = 0;
  for (let part = 0, at = 0; part < parts; part++, at += NUMBERS) {
    const number = x[part]!;
    if (number !== lastX) {
      lastX = number;
      if (number > SMALL) {
        gone = 1 - Math.exp(-number);
        held = gone / number;
        settled = 1 - held;
        bend = 0.5 * held - settled / number;
      } else {
        // From the series down, so that a part that hardly exchanges keeps its digits.
        const risen = meanOfRise(number);
        settled = number * risen;
        held = 1 - settled;
        gone = number * held;
        bend = 0.5 * held - risen;
      }
      late = settled - 0.5 * gone;
      turning = 2 * (gone - settled);
    }
    const fromVolume = own[part]!;
    const driven = fromVolume * share[part]!;
    const meanByMean = 1 - fromVolume + driven * settled;
    const meanByTrend = driven * bend;
    const trendByMean = driven * turning;
    const trendByTrend = 1 - fromVolume + 2 * driven * (late - bend);
    const mean = fromVolume * (settled * rest[part]! + held * start[part]!);
    const trend = fromVolume * turning * (rest[part]! - start[part]!);
    map[at] = meanByMean;
    map[at + 1] = meanByTrend;
    map[at + 2] = mean;
    map[at + 3] = trendByMean;
    map[at + 4] = trendByTrend;
    map[at + 5] = trend;
    map[at + 6] = gone;
    map[at + 7] = late;
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

  const determinant = (1 - mm) * (1 - kk) - mk * km;
  let m = (m0 * (1 - kk) + mk * k0) / determinant;
  let k = (k0 * (1 - mm) + km * m0) / determinant;
  for (let part = 0, at = 0; part < parts; part++, at += NUMBERS) {
    inlet[part] = m;
    const g = share[part]!;
    rise[part] = map[at + 6]! * (g * m + rest[part]! - start[part]!) + map[at + 7]! * g * k;
    const mean = map[at]! * m + map[at + 1]! * k + map[at + 2]!;
    k = map[at + 3]! * m + map[at + 4]! * k + map[at + 5]!;
    m = mean;
  }
  inlet[parts] = m;
}
