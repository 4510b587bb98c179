// Normal distributions of many numbers: covariances by `ml-matrix`.
import { CholeskyDecomposition, Matrix } from 'ml-matrix';

/** A covariance, decomposed. */
export interface Normal {
  readonly cholesky: CholeskyDecomposition;
  /** Half the logarithm of the determinant. */
  readonly halfLog: number;
}

/** Decomposes a covariance; it must be symmetric and positive. */
export function normalOf(covariance: ConstructorParameters<typeof CholeskyDecomposition>[0]): Normal {
  const cholesky = new CholeskyDecomposition(covariance);
  const diagonal = cholesky.lowerTriangularMatrix.diagonal();
  return { cholesky, halfLog: diagonal.reduce((sum, value) => sum + Math.log(value), 0) };
}

/** C⁻¹ a. */
export const divided = ({ cholesky }: Normal, a: ArrayLike<number>): number[] =>
  cholesky.solve(Matrix.columnVector(Array.from(a))).to1DArray();

/** Scalar product. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}

/** Square of a residual in deviations, aᵀ C⁻¹ a. */
export const squareOf = (normal: Normal, a: ArrayLike<number>): number => dot(a, divided(normal, a));

/** Logarithm of the density, less the constant. */
export const logDensity = (normal: Normal, residual: ArrayLike<number>): number =>
  -normal.halfLog - 0.5 * squareOf(normal, residual);
