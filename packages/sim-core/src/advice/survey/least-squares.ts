// Linear systems of a survey, by `ml-matrix`.
import { LuDecomposition, Matrix, QrDecomposition } from 'ml-matrix';

/** Below this share of the largest pivot a matrix is singular to rounding. */
const SINGULAR = 1e-14;

const isSingular = (triangle: Matrix): boolean => {
  const pivots = triangle.diagonal().map(Math.abs);
  return !(Math.min(...pivots) > SINGULAR * Math.max(...pivots));
};

/**
 * Solves a square system.
 *
 * @returns The solution, or `null` where the matrix is singular to rounding.
 * @internal
 */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const decomposed = new LuDecomposition(matrix.map((row) => [...row]));
  if (isSingular(decomposed.upperTriangularMatrix)) return null;
  return decomposed.solve(Matrix.columnVector([...right])).to1DArray();
}

/**
 * Linear least squares by Householder's decomposition, columns scaled to unit length so that their sizes do not matter.
 *
 * @param rows - One row of the columns' values for each observation.
 * @param values - Observations.
 * @returns Coefficients.
 * @throws RangeError where the columns do not tell the coefficients apart.
 * @internal
 */
export function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): number[] {
  const lengths = rows[0]!.map((_, at) => Math.hypot(...rows.map((row) => row[at]!)) || 1);
  const decomposed = new QrDecomposition(rows.map((row) => row.map((value, at) => value / lengths[at]!)));
  if (isSingular(decomposed.upperTriangularMatrix))
    throw new RangeError('observations that do not tell the coefficients apart');
  const scaled = decomposed.solve(Matrix.columnVector([...values])).to1DArray();
  return scaled.map((value, at) => value / lengths[at]!);
}
