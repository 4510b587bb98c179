// The little of linear algebra that the check needs: symmetric positive matrices, row by row in one array.

/** Lower triangle L of A = L Lᵀ (Cholesky), in place; throws no error: a pivot that is not positive is lifted to the least. */
export function factorize(a: Float64Array, n: number): void {
  for (let j = 0; j < n; j++) {
    const rowJ = j * n;
    let pivot = a[rowJ + j]!;
    for (let k = 0; k < j; k++) pivot -= a[rowJ + k]! ** 2;
    const diagonal = Math.sqrt(Math.max(pivot, 1e-12));
    a[rowJ + j] = diagonal;
    for (let i = j + 1; i < n; i++) {
      const rowI = i * n;
      let sum = a[rowI + j]!;
      for (let k = 0; k < j; k++) sum -= a[rowI + k]! * a[rowJ + k]!;
      a[rowI + j] = sum / diagonal;
    }
  }
}

/** Solves L x = b in place. */
export function solveLower(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * b[k]!;
    b[i] = sum / l[i * n + i]!;
  }
}

/** Solves Lᵀ x = b in place. */
export function solveUpper(l: Float64Array, n: number, b: Float64Array): void {
  for (let i = n - 1; i >= 0; i--) {
    let sum = b[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * b[k]!;
    b[i] = sum / l[i * n + i]!;
  }
}

/** Half the logarithm of the determinant of L Lᵀ. */
export function halfLogDeterminant(l: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.log(l[i * n + i]!);
  return sum;
}

/** Inverse of L Lᵀ. */
export function invert(l: Float64Array, n: number): Float64Array {
  const inverse = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    const unit = new Float64Array(n);
    unit[column] = 1;
    solveLower(l, n, unit);
    solveUpper(l, n, unit);
    for (let row = 0; row < n; row++) inverse[row * n + column] = unit[row]!;
  }
  return inverse;
}

/** Scalar product. */
export function dot(a: ArrayLike<number>, b: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += a[i]! * b[i]!;
  return sum;
}
