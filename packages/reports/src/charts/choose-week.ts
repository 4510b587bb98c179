import type { RunResult } from '@noonloop/sim-core';

/** Which week: that with the hottest air of the year, or with the coldest. */
export type WeekKind = 'hottest' | 'coldest';

/**
 * First day of the seven days, midnight to midnight, whose outdoor air is hottest or coldest on the mean.
 *
 * @returns day of the year, 0 to 358 [d]
 */
export function chooseWeek({ columns }: RunResult, kind: WeekKind): number {
  const sign = kind === 'hottest' ? 1 : -1;
  let best = 0;
  let highest = Number.NEGATIVE_INFINITY;
  for (let first = 0; first + 7 <= 365; first++) {
    const sum = sign * columns.ambientTemperature.subarray(first * 24, (first + 7) * 24).reduce((a, b) => a + b, 0);
    if (sum > highest) [best, highest] = [first, sum];
  }
  return best;
}
