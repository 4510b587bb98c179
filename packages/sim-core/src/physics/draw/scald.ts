// How soon hot water burns.
import { requireNumber } from '../../input/errors.ts';

/**
 * Time in running water until skin is burnt through (third degree), an adult's, by temperature. [°C], [s]
 *
 * US Consumer Product Safety Commission, document 5098: 120 °F 5 min, 130 °F 30 s, 140 °F 6 s, 150 °F 2 s; for 140 °F the shorter
 * 5 s, and the rows under 120 and above 150 °F, after Moritz & Henriques (1947). Both from memory and secondary pages.
 */
export const BURN_TIMES: readonly (readonly [temperature: number, seconds: number])[] = [
  [45, 10_800],
  [47, 2_700],
  [440 / 9, 300],
  [490 / 9, 30],
  [60, 5],
  [590 / 9, 2],
  [70, 1],
];

/**
 * How soon running water burns an adult's skin through; that of children and the elderly sooner. Between the rows of
 * {@link BURN_TIMES} the logarithm of time is a line.
 *
 * @param temperature - Of the water, 0 to 120. [°C]
 * @returns Infinity below 45 °C, 1 s from 70 °C up. [s]
 * @throws {@link DesignError} outside the range.
 * @see CPSC document 5098, "Avoiding tap water scalds"; Moritz & Henriques (1947).
 */
export function burnTime(temperature: number): number {
  requireNumber('temperature', temperature, 0, 120, '°C');
  const above = BURN_TIMES.findIndex(([row]) => row > temperature);
  if (above === 0) return Number.POSITIVE_INFINITY;
  if (above < 0) return BURN_TIMES.at(-1)![1];
  const [cool, long] = BURN_TIMES[above - 1]!;
  const [hot, short] = BURN_TIMES[above]!;
  return long * (short / long) ** ((temperature - cool) / (hot - cool));
}
