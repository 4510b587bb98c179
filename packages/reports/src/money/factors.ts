/** Present worth of series of payments: closed forms of engineering economics. */
import { ReportError } from '../errors.ts';

/**
 * Present worth of 1 a year, the first at the end of year 1, each later one higher by the escalation:
 *
 *     Σ_{j=1..N} (1 + g)^(j−1) / (1 + d)^j  =  (1 − ((1 + g)/(1 + d))^N) / (d − g),   N/(1 + d) where g = d
 *
 * With g = 0 it is the uniform-series present worth factor (P/A, d, N), otherwise that of the geometric gradient (P/A₁, g, d, N).
 *
 * @param years - N, whole [a], ≥ 0
 * @param discountRate - d, by the year [-], > −1
 * @param escalation - g, by the year [-], > −1; default 0
 * @returns present worth over the first payment [-]
 * @throws {@link ReportError} for a negative or broken number of years, or a rate of −1 or less.
 * @see Duffie & Beckman, Solar Engineering of Thermal Processes, 4th ed. (2013), chapter 11, PWF(N, i, d); from memory
 */
export function presentWorthFactor(years: number, discountRate: number, escalation = 0): number {
  if (!Number.isInteger(years) || years < 0)
    throw new ReportError('years', `${years}`, 'a whole number of years from 0', 'Give whole years.');
  for (const [path, rate] of [
    ['discountRate', discountRate],
    ['escalation', escalation],
  ] as const)
    if (!(rate > -1 && rate < Number.POSITIVE_INFINITY))
      throw new ReportError(path, `${rate}`, 'a fraction above −1', 'Give 0.03 for 3 % a year.');
  return worth(years, discountRate, escalation);
}

/** {@link presentWorthFactor}, unchecked; by `log1p` and `expm1`, so that rates close to each other lose no digits. @internal */
export function worth(years: number, d: number, g: number): number {
  if (d === g) return years / (1 + d);
  return -Math.expm1(years * Math.log1p((g - d) / (1 + d))) / (d - g);
}
