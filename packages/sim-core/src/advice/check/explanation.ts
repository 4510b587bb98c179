// An explanation of a log, and how likely it makes the numbers.
import type { Matrix } from 'ml-matrix';
import type { Saying } from '../../input/saying.ts';
import type { CauseCode, FormCode } from './causes.ts';
import { covariance, type Expectation, expect, timeCorrelation } from './expectation.ts';
import type { Library, RunFamily } from './library.ts';
import { divided, dot, logDensity, type Normal, normalOf } from './normal.ts';
import type { MeasuredKey, Observation, Observations, PumpLook } from './observe.ts';
import { SLIP_CHANCE, SLIP_NOISE } from './slips.ts';
import type { Trace } from './span-run.ts';
import type { ReadingNoise } from './uncertainty.ts';

/** A cause in one form, degree and time of beginning, not yet set against the numbers. */
export interface Hypothesis {
  readonly cause: CauseCode;
  readonly form: Saying<FormCode>;
  /** Hour from which it holds; `null`: all through the log. [h] */
  readonly since: number | null;
  /** For a gauge that is wrong. */
  readonly sensor: MeasuredKey | null;
  /** Share of the cause's prior weight. */
  readonly prior: number;
  /** Chance of a running pump at each look. */
  readonly running: Float64Array;
}

/** A hypothesis set against the numbers. */
export interface Explanation extends Hypothesis {
  readonly logLikelihood: number;
  readonly expectation: Expectation;
  /** Numbers that it takes for slips of the pen. Shape [n]. */
  readonly slips: Uint8Array;
}

/** Shares of the log at which a fault may have begun. */
const BEGINNINGS = [1 / 3, 2 / 3];

/** What all explanations of one log share. */
export interface Trial {
  readonly library: Library;
  readonly numbers: readonly Observation[];
  readonly looks: readonly PumpLook[];
  readonly noise: ReadingNoise;
  readonly correlation: Matrix;
  /** When a fault may have begun; `null`: before the log. */
  readonly beginnings: readonly (number | null)[];
  /** Numbers taken for slips of the pen. */
  readonly slips: Uint8Array;
  /** What runs expect, computed once. */
  readonly known: Map<Trace, Expectation>;
}

/** A log, ready to be tried. */
export function trialOf(library: Library, { numbers, looks }: Observations, noise: ReadingNoise): Trial {
  const hours = [...numbers, ...looks].map(({ hour }) => hour);
  const first = Math.min(...hours);
  const last = Math.max(...hours);
  return {
    library,
    numbers,
    looks,
    noise,
    correlation: timeCorrelation(numbers),
    beginnings: [null, ...BEGINNINGS.map((share) => first + share * (last - first))],
    slips: new Uint8Array(numbers.length),
    known: new Map(),
  };
}

/**
 * What a family of runs expects. A run that changes little seems easier to read; a fault must not win by that where gauges scatter
 * less than was stated, so that no reading is taken for surer than in the healthy system.
 *
 * @param base - A run of the family; default its own.
 */
export function expectIn(trial: Trial, family: RunFamily, base = family.base): Expectation {
  const { known, library, noise, numbers } = trial;
  const before = known.get(base);
  if (before !== undefined) return before;
  const own = expect(family, numbers, library.uncertainty, noise, base);
  const healthy = base === library.healthy.base ? own : expectIn(trial, library.healthy);
  const reading = own.reading.map((value, at) => Math.max(value, healthy.reading[at]!));
  const expectation = { ...own, reading, gauge: reading };
  known.set(base, expectation);
  return expectation;
}

/** Slips count for nothing. */
function widened({ slips }: Trial, expectation: Expectation): Expectation {
  const reading = expectation.reading.map((value, at) => value * (slips[at] === 1 ? SLIP_NOISE ** 2 : 1));
  return { ...expectation, reading };
}

/** Covariance of an expectation, decomposed. */
export const normalFor = (trial: Trial, expectation: Expectation): Normal =>
  normalOf(covariance(widened(trial, expectation), trial.numbers, trial.correlation, trial.library.uncertainty.model));

const residualOf = ({ numbers }: Trial, mean: Float64Array): Float64Array =>
  Float64Array.from(numbers, ({ value }, at) => value - mean[at]!);

/** Log-likelihood of the numbers. */
export const fitOf = (trial: Trial, normal: Normal, mean: Float64Array): number =>
  logDensity(normal, residualOf(trial, mean));

/** The same with an offset of some spread in the touched numbers (rank one: Sherman and Morrison 1950). */
export function fitWithOffset(
  trial: Trial,
  normal: Normal,
  mean: Float64Array,
  { touch, spread }: { readonly touch: Float64Array; readonly spread: number },
): number {
  const touched = divided(normal, touch);
  const growth = 1 + spread * spread * dot(touch, touched);
  const explained = (spread * dot(touched, residualOf(trial, mean))) ** 2 / growth;
  return fitOf(trial, normal, mean) - 0.5 * Math.log(growth) + 0.5 * explained;
}

/** A hypothesis with its likelihood, looks at the pump included. */
export function explain(trial: Trial, hypothesis: Hypothesis, expectation: Expectation, fit: number): Explanation {
  const { looks, slips } = trial;
  const logLikelihood = looks.reduce(
    (sum, { runs }, at) => sum + Math.log(runs ? hypothesis.running[at]! : 1 - hypothesis.running[at]!),
    fit + dot(slips, slips) * Math.log(SLIP_CHANCE),
  );
  return { ...hypothesis, logLikelihood, expectation: widened(trial, expectation), slips };
}
