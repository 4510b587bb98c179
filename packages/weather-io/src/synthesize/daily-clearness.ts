// How clear each day of a month is, when only the month's mean is known.
import { rise } from './months.ts';
import { type Gauss, persistent } from './random.ts';

/** Least clearness of a day in the distribution. Bendt et al. (1981). [-] */
const LEAST = 0.05;

/**
 * How much of a day's departure lasts to the next: lag-1 autocorrelation of the Gaussian series behind daily clearness, the
 * same for all places. Graham, Hollands & Brunger (1988), Solar Energy 40(3) 231, from memory. [-]
 */
const MEMORY = 0.29;

/**
 * Clearest day of a month by its mean clearness: 0.6313 + 0.267 K − 11.9 (K − 0.75)⁸.
 * Hollands & Huget (1983), as in Duffie & Beckman, eq. 2.9.8 (from memory). [-]
 */
export const clearestDay = (mean: number): number => 0.6313 + 0.267 * mean - 11.9 * (mean - 0.75) ** 8;

/**
 * Kernel: clearness below which a share of the days lies, by the distribution of Bendt et al.:
 *
 *     F(K) = (e^(γ K0) − e^(γ K)) / (e^(γ K0) − e^(γ K1)),   K0 = 0.05, K1 the clearest day
 *
 * @param share - F, 0 to 1. [-]
 * @param steepness - γ; 0 is an even spread. [-]
 * @param clearest - K1. [-]
 * @see Bendt, Collares-Pereira & Rabl (1981), The frequency distribution of daily insolation values, Solar Energy 27(1) 1.
 */
export function clearnessOfShare(share: number, steepness: number, clearest: number): number {
  const width = clearest - LEAST;
  if (Math.abs(steepness * width) < 1e-6) return LEAST + share * width;
  // Written from the end that the exponential favours, so that it cannot overflow.
  if (steepness > 0) return clearest + Math.log(share + (1 - share) * Math.exp(-steepness * width)) / steepness;
  return LEAST + Math.log(1 - share + share * Math.exp(steepness * width)) / steepness;
}

/**
 * Daily clearness through a year. The order of the days within each month comes from a series with persistence; their
 * values are the distribution's own at evenly spaced shares, so that the month is a typical one; γ is chosen so that the
 * light of the month comes out exactly.
 *
 * @param means - Clearness of each month: its light over that at the top of the air. Shape [12]. [-]
 * @param top - Horizontal irradiation at the top of the air, any unit. Shape [365].
 * @param months - First day of each month, and 365.
 * @returns Shape [365]. [-]
 */
export function dailyClearness(
  means: ArrayLike<number>,
  top: Float64Array,
  months: readonly number[],
  gauss: Gauss,
): Float64Array {
  const rank = persistent(top.length, MEMORY, gauss);
  const daily = new Float64Array(top.length);
  for (let month = 0; month < 12; month++) {
    const days = Array.from({ length: months[month + 1]! - months[month]! }, (_, day) => months[month]! + day);
    const ordered = days.toSorted((a, b) => rank[a]! - rank[b]!);
    const mean = means[month]!;
    const clearest = Math.max(clearestDay(mean), Math.min(mean + 0.03, 1));
    const light = days.reduce((sum, day) => sum + top[day]!, 0);
    const fill = (steepness: number): number => {
      let sum = 0;
      ordered.forEach((day, at) => {
        daily[day] = clearnessOfShare((at + 0.5) / days.length, steepness, clearest);
        sum += daily[day]! * top[day]!;
      });
      return sum - mean * light;
    };
    const rest = fill(rise(fill, -200, 200));
    // A mean at the edge of what the distribution can give: the same correction for all days.
    if (light > 0) for (const day of days) daily[day] = daily[day]! - rest / light;
  }
  return daily;
}
