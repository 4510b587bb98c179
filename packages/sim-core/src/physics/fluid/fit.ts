/**
 * The polynomial through a function at Chebyshev points from 0 to a highest value, in u = 2 t/highest − 1, lowest power first.
 *
 * Newton's divided differences, then expanded; well-conditioned up to about degree 12.
 */
export function fitPolynomial(f: (t: number) => number, highest: number, degree: number): Float64Array {
  const points = Array.from({ length: degree + 1 }, (_, k) => Math.cos((Math.PI * (2 * k + 1)) / (2 * degree + 2)));
  const differences = points.map((u) => f(((u + 1) * highest) / 2));
  for (let order = 1; order <= degree; order++) {
    for (let k = degree; k >= order; k--) {
      differences[k] = (differences[k]! - differences[k - 1]!) / (points[k]! - points[k - order]!);
    }
  }
  const coefficients = new Float64Array(degree + 1);
  for (let k = degree; k >= 0; k--) {
    // coefficients ← coefficients · (u − points[k]) + differences[k]
    for (let j = degree; j >= 1; j--) coefficients[j] = coefficients[j - 1]! - points[k]! * coefficients[j]!;
    coefficients[0] = differences[k]! - points[k]! * coefficients[0]!;
  }
  return coefficients;
}
