/**
 * Root of a rising function between two bounds, by false position with the Illinois rule and bisection whenever that stalls.
 * Returns the nearer bound when the function does not change sign.
 */
export function risingRoot(f: (x: number) => number, low: number, high: number, tolerance: number): number {
  let a = low;
  let b = high;
  let fa = f(a);
  let fb = f(b);
  if (fa >= 0) return a;
  if (fb <= 0) return b;
  let side = 0;
  for (let step = 0; step < 200 && b - a > tolerance; step++) {
    // Every third step halves the bracket, so that it ends however crooked the function is.
    const x = step % 3 === 2 ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx < 0) {
      a = x;
      fa = fx;
      if (side < 0) fb /= 2;
      side = -1;
    } else {
      b = x;
      fb = fx;
      if (side > 0) fa /= 2;
      side = 1;
    }
  }
  return (a + b) / 2;
}
