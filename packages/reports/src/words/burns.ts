// How soon water burns, in words.
import { burnTime } from '@noonloop/sim-core/formulas';

/** `in 5 minutes`, `in 30 seconds`, `within a second`; rounded to the shorter. @param temperature - of the water [°C] */
export function burnWords(temperature: number): string {
  const seconds = burnTime(temperature);
  if (seconds === Number.POSITIVE_INFINITY) return 'only after hours';
  if (seconds >= 3600) return `in ${Math.floor(seconds / 3600)} hours`;
  if (seconds >= 120) return `in ${Math.floor(seconds / 60)} minutes`;
  if (seconds >= 60) return 'in a minute';
  if (seconds >= 20) return `in ${10 * Math.floor(seconds / 10)} seconds`;
  return seconds >= 2 ? `in ${Math.floor(seconds)} seconds` : 'within a second';
}
