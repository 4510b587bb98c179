/** Inputs of a study that go together: how it is said, checked, and laid into a Latin hypercube. */
import { CholeskyDecomposition, inverse, Matrix } from 'ml-matrix';
import type { DesignIssue } from '../input/errors.ts';
import { normalQuantile } from './distributions.ts';
import { issue } from './request.ts';

/** Two uncertain inputs that go together. */
export interface Correlation {
  /** The two, by place, both of them numbers that spread. */
  readonly between: readonly [one: string, other: string];
  /** Rank correlation, above −1 and below 1: positive where a large one comes with a large other. [-] */
  readonly rank: number;
}

/** What is to be reached: columns of the cube, and their correlations with each other. */
interface CorrelatedColumns {
  readonly columns: readonly number[];
  readonly target: Matrix;
}

/**
 * Reads correlations.
 *
 * @param issues - Receives every fault.
 * @param names - Inputs that spread as numbers, at the place of their column; `null` for those that do not.
 */
export function readCorrelations(
  issues: DesignIssue[],
  given: readonly Correlation[],
  names: readonly (string | null)[],
): CorrelatedColumns | null {
  if (!Array.isArray(given)) {
    issues.push(issue('options.correlations', given, 'a list of { between, rank }', 'Put it in brackets.'));
    return null;
  }
  const before = issues.length;
  const pairs = given.map(({ between, rank }, at): readonly [number, number, number] => {
    const place = `options.correlations.${at}`;
    const [one = -1, other = -1] = Array.isArray(between) ? between.map((name) => names.indexOf(name)) : [];
    const known = names.filter((name) => name !== null).join(', ');
    if (one < 0 || other < 0 || one === other || between.length !== 2)
      issues.push(
        issue(`${place}.between`, between, `two different of ${known}`, 'Name inputs that spread as numbers.'),
      );
    if (!(Math.abs(rank) < 1))
      issues.push(issue(`${place}.rank`, rank, 'above −1 and below 1', 'Give a rank correlation.'));
    return [Math.min(one, other), Math.max(one, other), rank];
  });
  const seen = new Set<string>();
  for (const [at, [one, other]] of pairs.entries()) {
    if (seen.has(`${one} ${other}`))
      issues.push(
        issue(`options.correlations.${at}`, given[at]!.between, 'each pair once', 'Leave one of the two out.'),
      );
    seen.add(`${one} ${other}`);
  }
  if (issues.length > before || pairs.length === 0) return null;
  const columns = [...new Set(pairs.flatMap((pair) => pair.slice(0, 2)))].sort((a, b) => a - b);
  const target = Matrix.eye(columns.length);
  for (const [one, other, rank] of pairs) {
    target.set(columns.indexOf(one), columns.indexOf(other), rank);
    target.set(columns.indexOf(other), columns.indexOf(one), rank);
  }
  if (!new CholeskyDecomposition(target).isPositiveDefinite()) {
    const remedy = 'If a goes with b and b with c, a must go with c too: name that pair, or lower the ranks.';
    issues.push(
      issue('options.correlations', given.map(({ rank }) => rank).join(', '), 'correlations that can all hold', remedy),
    );
    return null;
  }
  return { columns, target };
}

/**
 * Puts the strata of some columns into another order, so that their ranks correlate as asked; each stratum is still met once.
 *
 *     scores M with correlation T = Q Qᵀ, target C = P Pᵀ:   ranks of M (P Q⁻¹)ᵀ
 *
 * @param strata - Of each column, the stratum of each sample; changed.
 * @see Iman & Conover, Communications in Statistics B 11 (1982) 311–334.
 */
export function correlateStrata(strata: readonly Uint32Array[], { columns, target }: CorrelatedColumns): void {
  const samples = strata[columns[0]!]!.length;
  const score = Float64Array.from({ length: samples }, (_, stratum) => normalQuantile((stratum + 0.5) / samples));
  const scores = new Matrix(samples, columns.length);
  for (const [at, column] of columns.entries())
    for (let sample = 0; sample < samples; sample++) scores.set(sample, at, score[strata[column]![sample]!]!);
  // Scores of a whole column have mean 0 and the same size, so that their products are their correlations.
  const products = scores.transpose().mmul(scores);
  const own = Matrix.div(products, products.get(0, 0));
  const lower = new CholeskyDecomposition(target).lowerTriangularMatrix;
  const mix = lower.mmul(inverse(new CholeskyDecomposition(own).lowerTriangularMatrix));
  const mixed = scores.mmul(mix.transpose());
  for (const [at, column] of columns.entries()) {
    const order = Uint32Array.from({ length: samples }, (_, sample) => sample);
    order.sort((one, other) => mixed.get(one, at) - mixed.get(other, at) || one - other);
    for (let rank = 0; rank < samples; rank++) strata[column]![order[rank]!] = rank;
  }
}
