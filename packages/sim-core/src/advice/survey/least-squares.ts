/**
 * Solves a symmetric system by elimination with pivots.
 *
 * @returns The solution, or `null` where the matrix is singular to rounding.
 * @internal
 */
export function solve(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const n = right.length;
  const rows = matrix.map((row, at) => [...row, right[at]!]);
  const scale = Math.max(...rows.map((row) => Math.max(...row.slice(0, n).map(Math.abs))));
  for (let column = 0; column < n; column++) {
    let pivot = column;
    for (let row = column + 1; row < n; row++)
      if (Math.abs(rows[row]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = row;
    if (!(Math.abs(rows[pivot]![column]!) > 1e-14 * scale)) return null;
    [rows[column], rows[pivot]] = [rows[pivot]!, rows[column]!];
    for (let row = column + 1; row < n; row++) {
      const factor = rows[row]![column]! / rows[column]![column]!;
      for (let at = column; at <= n; at++) rows[row]![at]! -= factor * rows[column]![at]!;
    }
  }
  const answer = new Array<number>(n).fill(0);
  for (let row = n - 1; row >= 0; row--) {
    let rest = rows[row]![n]!;
    for (let at = row + 1; at < n; at++) rest -= rows[row]![at]! * answer[at]!;
    answer[row] = rest / rows[row]![row]!;
  }
  return answer;
}

/**
 * Linear least squares by normal equations, columns scaled to unit length so that their sizes do not matter.
 *
 * @param rows - One row of the columns' values for each observation.
 * @param values - Observations.
 * @returns Coefficients.
 * @throws RangeError where the columns do not tell the coefficients apart.
 * @internal
 */
export function leastSquares(rows: readonly (readonly number[])[], values: readonly number[]): number[] {
  const width = rows[0]!.length;
  const lengths = Array.from({ length: width }, (_, at) => Math.hypot(...rows.map((row) => row[at]!)) || 1);
  const normal = lengths.map((a, i) =>
    lengths.map((b, j) => rows.reduce((sum, row) => sum + (row[i]! / a) * (row[j]! / b), 0)),
  );
  const right = lengths.map((a, i) => rows.reduce((sum, row, at) => sum + (row[i]! / a) * values[at]!, 0));
  const scaled = solve(normal, right);
  if (scaled === null) throw new RangeError('observations that do not tell the coefficients apart');
  return scaled.map((value, at) => value / lengths[at]!);
}
