/** Shares of the variance: how much of what a key figure spreads comes from each input. */
import { latinHypercube } from '../latin-hypercube.ts';
import type { Measure } from '../measures.ts';
import { percentile } from '../percentiles.ts';
import { diceFor } from '../random.ts';
import type { StudyRow } from '../types.ts';

/** Draws from the samples, for the bounds. */
const RESAMPLES = 200;

/** A share of the variance with the bounds within which nine of ten resamplings of the rows lie. */
export interface VarianceShare {
  /** Share; may come out below 0 or above 1 with few samples. [-] */
  readonly share: number;
  /** 5 % of the resamplings lie below. [-] */
  readonly low: number;
  /** 5 % lie above. [-] */
  readonly high: number;
}

/** What one input has to do with the spread of one key figure. */
export interface SobolIndices {
  /** By itself: what the variance would fall by on average if the input were known. */
  readonly first: VarianceShare;
  /** With all that it does together with others: what would be left if all others were known. */
  readonly total: VarianceShare;
}

/** Outcome of a variance-based study. */
export interface Sobol {
  /** Indices by input and key figure; a key figure that does not spread has none. */
  readonly indices: Readonly<Record<string, Readonly<Partial<Record<Measure, SobolIndices>>>>>;
  /** Base samples used, those with a failed design left out. */
  readonly samples: number;
  /** Rows whose design failed. */
  readonly failed: number;
}

/**
 * Points of the unit cube: for each base sample A, B, and A with one coordinate after the other taken from B.
 *
 * @internal
 */
export function sobolPoints(seed: number, samples: number, inputs: number) {
  const cube = latinHypercube(seed, samples, 2 * inputs);
  return (index: number): readonly number[] => {
    const sample = Math.trunc(index / (inputs + 2));
    const place = index % (inputs + 2);
    return Array.from({ length: inputs }, (_, input) => {
      const fromB = place === 1 || place === input + 2;
      return cube(sample, fromB ? inputs + input : input);
    });
  };
}

/**
 * Indices of a set of rows, by the estimators of Saltelli et al. and of Jansen:
 *
 *     S_i = Σ (f_B − m) (f_ABi − f_A)/(N V),   S_Ti = Σ (f_A − f_ABi)²/(2 N V),   m, V mean and variance of all f_A and f_B
 *
 * @see Saltelli et al., Computer Physics Communications 181 (2010) 259–270, table 2 (b) and (f).
 * @internal
 */
export async function analyseSobol(
  rows: Iterable<StudyRow> | AsyncIterable<StudyRow>,
  paths: readonly string[],
  measures: readonly Measure[],
  seed: number,
): Promise<Sobol> {
  const width = paths.length + 2;
  const values = new Map(measures.map((measure) => [measure, [] as number[]]));
  let group: StudyRow[] = [];
  let failed = 0;
  let samples = 0;
  for await (const row of rows) {
    if (row.error !== undefined) failed++;
    if (row.index % width === 0) group = [];
    group.push(row);
    if (group.length < width || group[0]!.index % width !== 0) continue;
    if (group.every(({ error }) => error === undefined)) samples++;
    for (const [measure, list] of values) {
      const ofGroup = group.map(({ measures: given }) => given[measure] ?? null);
      if (ofGroup.every((value) => value !== null)) list.push(...(ofGroup as number[]));
    }
  }
  const indices = paths.map((path, input) => {
    const ofInput = measures.flatMap((measure): [Measure, SobolIndices][] => {
      const found = indicesOf(values.get(measure)!, width, input, seed);
      return found === null ? [] : [[measure, found]];
    });
    return [path, Object.fromEntries(ofInput)];
  });
  return { indices: Object.fromEntries(indices), samples, failed };
}

function indicesOf(values: readonly number[], width: number, input: number, seed: number): SobolIndices | null {
  const count = values.length / width;
  const whole = estimate(values, width, input, count, (at) => at);
  if (whole === null) return null;
  const firsts: number[] = [];
  const totals: number[] = [];
  for (let draw = 0; draw < RESAMPLES; draw++) {
    const dice = diceFor(seed, draw);
    const resampled = estimate(values, width, input, count, () => dice.below(count));
    if (resampled === null) continue;
    firsts.push(resampled.first);
    totals.push(resampled.total);
  }
  const bounded = (share: number, draws: number[]): VarianceShare => {
    const sorted = Float64Array.from(draws).sort();
    return { share, low: percentile(sorted, 0.05), high: percentile(sorted, 0.95) };
  };
  return { first: bounded(whole.first, firsts), total: bounded(whole.total, totals) };
}

function estimate(
  values: readonly number[],
  width: number,
  input: number,
  count: number,
  pick: (at: number) => number,
) {
  if (count < 2) return null;
  const chosen = Array.from({ length: count }, (_, at) => pick(at) * width);
  let mean = 0;
  for (const at of chosen) mean += (values[at]! + values[at + 1]!) / (2 * count);
  let variance = 0;
  let alone = 0;
  let together = 0;
  for (const at of chosen) {
    const [a, b, mixed] = [values[at]!, values[at + 1]!, values[at + 2 + input]!];
    variance += ((a - mean) ** 2 + (b - mean) ** 2) / (2 * count);
    alone += ((b - mean) * (mixed - a)) / count;
    together += (a - mixed) ** 2 / (2 * count);
  }
  // A spread at the last bits of the number is none.
  if (!(variance > (1e-12 * mean) ** 2)) return null;
  return { first: alone / variance, total: together / variance };
}
