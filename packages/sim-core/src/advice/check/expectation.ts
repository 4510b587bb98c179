// What a family of runs expects for the numbers of a log, and how sure it is.
import { Matrix } from 'ml-matrix';
import type { RunFamily } from './library.ts';
import { expected, type Observation, readingVariance } from './observe.ts';
import type { Trace } from './span-run.ts';
import type { ModelUncertainty, ReadingNoise } from './uncertainty.ts';

/** Expectation for n numbers. */
export interface Expectation {
  /** Shape [n]. */
  readonly mean: Float64Array;
  /** Variance from reading, with slips of the pen. Shape [n]. */
  readonly reading: Float64Array;
  /** The same without slips. Shape [n]. */
  readonly gauge: Float64Array;
  /** What one standard deviation of each uncertain thing adds; each of shape [n]. */
  readonly slopes: readonly Float64Array[];
  /** What days of their own add, over the root of their number; each of shape [n]. */
  readonly days: readonly Float64Array[];
}

/** Uncertain things that move no run: constant in each gauge, or proportional. */
function gaugeSlopes(
  mean: Float64Array,
  numbers: readonly Observation[],
  uncertainty: ModelUncertainty,
): Float64Array[] {
  const of = (key: Observation['key'], by: (at: number) => number) =>
    Float64Array.from(numbers, (number, at) => (number.key === key ? by(at) : 0));
  return [
    of('tankTopTemperature', () => uncertainty.thermometer),
    of('flowTemperature', () => uncertainty.thermometer),
    of('returnTemperature', () => uncertainty.thermometer),
    of('loopPressure', () => uncertainty.fillPressure),
    of('heaterMeter', (at) => uncertainty.meter * mean[at]!),
  ];
}

const difference = (a: Float64Array, b: Float64Array, scale = 1): Float64Array =>
  a.map((value, at) => scale * (value - b[at]!));

/** What a family of runs expects. @param base - A run of the family; default its own. */
export function expect(
  family: RunFamily,
  numbers: readonly Observation[],
  uncertainty: ModelUncertainty,
  noise: ReadingNoise,
  base: Trace = family.base,
): Expectation {
  const of = (trace: Trace) => expected(trace, numbers);
  const mean = of(base);
  const scale = 1 / Math.sqrt(Math.max(1, family.days.length));
  const reading = readingVariance(base, numbers, noise);
  return {
    mean,
    reading,
    gauge: reading,
    slopes: [
      ...family.movedBy.map((trace, at) => difference(of(trace), of(family.against[at]!))),
      ...gaugeSlopes(mean, numbers, uncertainty),
    ],
    days: family.days.map((trace) => difference(of(trace), of(family.plainDay), scale)),
  };
}

/**
 * One expectation turning into another, number by number: between two degrees of a fault, or from healthy to faulty.
 *
 * @param share - Of `to`; shape [n]. [-]
 */
export function blend(from: Expectation, to: Expectation, share: Float64Array): Expectation {
  const mix = (a: Float64Array, b: Float64Array) => a.map((value, at) => value + share[at]! * (b[at]! - value));
  const all = (a: readonly Float64Array[], b: readonly Float64Array[]) => a.map((column, at) => mix(column, b[at]!));
  return {
    mean: mix(from.mean, to.mean),
    reading: mix(from.reading, to.reading),
    gauge: mix(from.gauge, to.gauge),
    slopes: all(from.slopes, to.slopes),
    days: all(from.days, to.days),
  };
}

/** Within this time the memory of a day fades to 1/e: the tank turns over in a day or two. Judgement. [h] */
const MEMORY = 48;
/** What the model misses of a pressure, lasting as long. Judgement. [Pa] */
const MODEL_PRESSURE = 3000;

/** Shared by all expectations of a log: how much two numbers have to do with each other by their times. Shape [n × n]. */
export function timeCorrelation(numbers: readonly Observation[]): Matrix {
  const hours = numbers.map(({ hour }) => hour);
  return new Matrix(hours.map((a) => hours.map((b) => Math.exp(-Math.abs(a - b) / MEMORY))));
}

/** What two numbers have in common by the columns: an entry of their matrix times its transpose. */
function together(columns: readonly Float64Array[], i: number, j: number): number {
  let sum = 0;
  for (let at = 0; at < columns.length; at++) sum += columns[at]![i]! * columns[at]![j]!;
  return sum;
}

/** Covariance of the numbers about the mean: S∘T + M + J Jᵀ + R. Shape [n × n]. */
export function covariance(
  { days, reading, slopes }: Expectation,
  numbers: readonly Observation[],
  correlation: Matrix,
  model: number,
): Matrix {
  const n = numbers.length;
  const found = new Matrix(n, n);
  const modelVariance = numbers.map(({ key }) =>
    key === 'heaterMeter' ? 0 : (key === 'loopPressure' ? MODEL_PRESSURE : model) ** 2,
  );
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      const shared = numbers[j]!.key === numbers[i]!.key ? modelVariance[i]! : 0;
      const value = correlation.get(i, j) * (together(days, i, j) + shared) + together(slopes, i, j);
      found.set(i, j, value + (i === j ? reading[i]! : 0));
      found.set(j, i, found.get(i, j));
    }
  }
  return found;
}
