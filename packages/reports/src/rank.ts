/** Designs in the order that the reader asks for. */
import type { RunResult } from '@noonloop/sim-core';
import { DEFINITIONS, NUMBER_KEYS, type NumberKey } from './definitions.ts';
import { ReportError } from './errors.ts';
import { CASE_DEFINITIONS, CASE_KEYS, type CaseKey } from './money/definitions.ts';
import { formatMoney, hasOwnInvestments, moneyOf, moneyUnit } from './money/rows.ts';
import type { MoneyGiven } from './money/types.ts';
import { type Summary, summarize } from './summary.ts';
import { formatQuantity, type Units } from './units.ts';

/** What designs may be ranked by: a number of the year, or with prices one of money, for new parts. */
export type RankKey = NumberKey | CaseKey;

/** Designs in order. */
export interface Ranking {
  /** What they are ranked by. */
  readonly by: RankKey;
  /** Which end is first. */
  readonly first: 'highest' | 'lowest';
  /** Indices of the designs as given, the best first; equals in the order given, those without a value last. */
  readonly order: readonly number[];
  /** Value of each design as given. [SI, °C, hours or 0 to 1; money as {@link Money} has it] */
  readonly values: readonly (number | null)[];
}

/** Numbers of which more is better; of all others less is. */
const MORE_IS_BETTER: ReadonlySet<RankKey> = new Set<RankKey>([
  'deliveredEnergy',
  'sunShare',
  'solarFraction',
  'fuelSaving',
  'fuelSaved',
  'coldestAbsorber',
  'tapHeat',
  'irradiation',
  'collectorHeat',
  'coilHeat',
  'netPresentValue',
  'internalRateOfReturn',
]);

const isMoney = (key: RankKey): key is CaseKey => (CASE_KEYS as readonly string[]).includes(key);

/**
 * Ranks designs by a number.
 *
 * @param results - the designs
 * @param by - energy, saving and the worth of money rank the highest first; temperatures of heat, hours, losses, fuel and
 *   prices the lowest
 * @param prices - needed for a number of money
 * @throws {@link ReportError} for an unknown number, or one of money without prices or without what each design costs.
 */
export function rankDesigns(results: readonly RunResult[], by: RankKey, prices?: MoneyGiven): Ranking {
  return rankSummaries(results, results.map(summarize), by, prices);
}

/** @internal */
export function rankSummaries(
  results: readonly RunResult[],
  summaries: readonly Summary[],
  by: RankKey,
  prices?: MoneyGiven,
): Ranking {
  const known: readonly string[] = [...NUMBER_KEYS, ...CASE_KEYS];
  if (!known.includes(by))
    throw new ReportError('rankBy', JSON.stringify(by) ?? 'nothing', `one of ${known.join(', ')}`, 'Choose one.');
  if (isMoney(by) && prices === undefined)
    throw new ReportError('rankBy', by, 'prices with it', 'Give the option money, or rank by a number of the year.');
  if (isMoney(by) && !hasOwnInvestments(prices!, results.length))
    throw new ReportError(
      'rankBy',
      `${by}, and no investment of each design`,
      'an investment for each design',
      'With one for all, each added part would be free. List them under designs: - investment: 1200, and so on.',
    );
  const values = isMoney(by)
    ? moneyOf(results, prices!).map(({ cases }) => cases[0]![by])
    : summaries.map(({ year }) => year[by]);
  const sign = MORE_IS_BETTER.has(by) ? -1 : 1;
  const order = values
    .map((_, index) => index)
    .sort((a, b) => {
      const [one, other] = [values[a] ?? null, values[b] ?? null];
      if (one === null || other === null) return Number(one === null) - Number(other === null) || a - b;
      return sign * (one - other) || a - b;
    });
  return { by, first: sign < 0 ? 'highest' : 'lowest', order, values };
}

/** What the order is by, in words. @internal */
export const rankLabel = ({ by, first }: Ranking): string =>
  `Ranked by ${(isMoney(by) ? CASE_DEFINITIONS[by] : DEFINITIONS[by]).label.toLowerCase()}, ${first} first`;

/** Value of a design in words. @internal */
export function rankValue({ by, values }: Ranking, index: number, currency: string, units: Units): string {
  const value = values[index] ?? null;
  if (!isMoney(by)) return formatQuantity(value, DEFINITIONS[by].kind, units);
  const { kind } = CASE_DEFINITIONS[by];
  return value === null ? '–' : `${formatMoney(value, kind, currency, units)} ${moneyUnit(kind, currency, units)[0]}`;
}
