import type { RunResult } from '@noonloop/sim-core';

/** The season of a week, by the hemisphere of the site. */
export type Season = 'summer' | 'winter';

/** April to September in days. */
const HALF = { from: 90, to: 273 };

/**
 * First day of the week, aligned to days, with the most sun on the collectors in the summer half of the year, or the least in
 * the winter half. Summer half: April to September north of the equator, October to March south of it.
 *
 * @returns day of the year, 0 to 358 [d]
 */
export function chooseWeek({ columns, site }: RunResult, season: Season): number {
  const daily = Array.from({ length: 365 }, (_, day) =>
    columns.irradiance.subarray(day * 24, day * 24 + 24).reduce((sum, value) => sum + value, 0),
  );
  const middle = (season === 'summer') === site.latitude >= 0;
  const inHalf = (day: number): boolean => (day >= HALF.from && day < HALF.to) === middle;
  let best = -1;
  let bestSum = 0;
  for (let first = 0; first + 7 <= 365; first++) {
    if (!inHalf(first) || !inHalf(first + 6)) continue;
    const sum = daily.slice(first, first + 7).reduce((total, value) => total + value, 0);
    if (best < 0 || (season === 'summer' ? sum > bestSum : sum < bestSum)) {
      best = first;
      bestSum = sum;
    }
  }
  return best;
}
