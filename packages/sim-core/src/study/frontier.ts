import { MEASURE_UNITS, type Measure } from './measures.ts';
import { issue, refuse } from './request.ts';
import type { StudyRow } from './types.ts';

/** A number of a row: a key figure by name, or what the caller makes of the row; `null` leaves the row out. */
export type RowNumber = Measure | ((row: StudyRow) => number | null);

/** What a frontier weighs. */
export interface FrontierOptions {
  /** The less the better: a price, reckoned from `row.inputs`. */
  readonly cost: RowNumber;
  /** The more the better. Default `fuelSaved`. */
  readonly saving?: RowNumber;
}

/** A design that no other beats in cost and saving at once. */
export interface FrontierPoint {
  /** In the unit of the caller's choice. */
  readonly cost: number;
  /** In the unit of the caller's choice. */
  readonly saving: number;
  /** The design. */
  readonly row: StudyRow;
}

/**
 * Designs worth a look: each saves more than every cheaper one. Of designs with the same cost and saving the first stands. Keeps
 * no more rows than the frontier has.
 *
 * @param rows - Of any study, as they come.
 * @param options - What cost and saving are.
 * @returns Cheapest first. Rows that failed, or without a finite cost or saving, are left out.
 * @throws {@link DesignError} for an unknown key figure.
 */
export async function frontier(
  rows: Iterable<StudyRow> | AsyncIterable<StudyRow>,
  options: FrontierOptions,
): Promise<FrontierPoint[]> {
  const costOf = rowNumber('cost', options.cost);
  const savingOf = rowNumber('saving', options.saving ?? 'fuelSaved');
  let points: FrontierPoint[] = [];
  for await (const row of rows) {
    if (row.error !== undefined) continue;
    const [cost, saving] = [costOf(row), savingOf(row)];
    if (cost === null || saving === null || !Number.isFinite(cost) || !Number.isFinite(saving)) continue;
    if (points.some((point) => point.cost <= cost && point.saving >= saving)) continue;
    points = points.filter((point) => !(cost <= point.cost && saving >= point.saving));
    points.push({ cost, saving, row });
  }
  return points.sort((a, b) => a.cost - b.cost);
}

/** How to get a number from a row. @internal */
export function rowNumber(path: string, number: RowNumber): (row: StudyRow) => number | null {
  if (typeof number === 'function') return number;
  const known = Object.hasOwn(MEASURE_UNITS, number);
  refuse(known ? [] : [issue(path, number, 'the name of a key figure, or a function of a row', 'Check the spelling.')]);
  return (row) => row.measures[number] ?? null;
}
