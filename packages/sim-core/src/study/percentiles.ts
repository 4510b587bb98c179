/**
 * Percentile of sorted values, linear between neighbours (Hyndman & Fan 1996, type 7).
 *
 * @param sorted - In rising order, at least one.
 * @param share - 0 to 1.
 */
export function percentile(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const above = Math.min(below + 1, sorted.length - 1);
  return sorted[below]! + (place - below) * (sorted[above]! - sorted[below]!);
}
