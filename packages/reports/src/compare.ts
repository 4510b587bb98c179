import type { RunResult } from '@noonloop/sim-core';
import { DEFINITIONS, NUMBER_KEYS, type NumberKey } from './definitions.ts';
import { ReportError } from './errors.ts';
import { type Summary, summarize } from './summary.ts';

/** Which design the differences are taken against. */
export type ComparisonReference = 'first' | 'previous';

/** One number of every design. */
export interface ComparisonRow {
  /** Which number; its definition stands in {@link DEFINITIONS}. */
  readonly key: NumberKey;
  /** Of each design, in the order given. [SI, °C, hours or 0 to 1] */
  readonly values: readonly (number | null)[];
  /** Value less that of the reference design, `null` for the first and where there is no value. [SI, K, hours or 0 to 1] */
  readonly differences: readonly (number | null)[];
  /** Difference over the size of the reference's value; `null` where that is 0 or the number is a temperature. [-] */
  readonly relativeDifferences: readonly (number | null)[];
}

/** Two or more designs side by side. */
export interface Comparison {
  /** In the order given. */
  readonly summaries: readonly Summary[];
  /** What the differences are taken against. */
  readonly against: ComparisonReference;
  /** Every number, in the order of {@link DEFINITIONS}. */
  readonly rows: readonly ComparisonRow[];
}

/** Index of the design with which design `index` is compared. @internal */
export const referenceIndex = (index: number, against: ComparisonReference): number =>
  against === 'first' ? 0 : index - 1;

/**
 * Sets the numbers of two or more designs side by side.
 *
 * @throws {@link ReportError} for fewer than two.
 */
export function compareSummaries(summaries: readonly Summary[], against: ComparisonReference = 'first'): Comparison {
  if (summaries.length < 2)
    throw new ReportError(
      'summaries',
      `${summaries.length}`,
      'two or more',
      'Give every design that is to be compared.',
    );
  const rows = NUMBER_KEYS.map((key): ComparisonRow => {
    const values = summaries.map((summary) => summary.year[key]);
    const references = values.map((_, index) =>
      index === 0 ? null : (values[referenceIndex(index, against)] ?? null),
    );
    const differences = values.map((value, index) => {
      const reference = references[index] ?? null;
      return value === null || reference === null ? null : value - reference;
    });
    const isTemperature = DEFINITIONS[key].kind === 'temperature';
    const relativeDifferences = differences.map((difference, index) => {
      const reference = references[index] ?? null;
      return difference === null || !reference || isTemperature ? null : difference / Math.abs(reference);
    });
    return { key, values, differences, relativeDifferences };
  });
  return { summaries, against, rows };
}

/** {@link compareSummaries} of the summaries of runs. */
export const compareRuns = (results: readonly RunResult[], against: ComparisonReference = 'first'): Comparison =>
  compareSummaries(results.map(summarize), against);
