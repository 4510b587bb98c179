import { type Caution, cautions } from '../cautions/index.ts';
import { ReportError } from '../errors.ts';
import { letterOf } from '../escape.ts';
import { hasOwnInvestments, moneyOf, moneyOptions } from '../money/rows.ts';
import { listRuns, type ReportOptions, type Runs } from '../options.ts';
import { type Summary, summarize } from '../summary.ts';
import { formatNumber } from '../units.ts';
import { answerOne } from './one.ts';
import { answerSeveral } from './several.ts';
import type { Answer } from './types.ts';

/**
 * The answer in two sentences: what the system does or which design is the one, and what decides. The first rule that holds makes
 * them ({@link Answer.rule}); every number in them is of the summaries and of the money of the designs.
 *
 * @param runs - one run, or several to compare
 * @param options - units, prices, and what is known of the uncertainty
 * @throws {@link ReportError} when there is no run, a column is not a whole year of finite numbers, or a price is wrong.
 */
export function answer(runs: Runs, options: ReportOptions = {}): Answer {
  const results = listRuns(runs);
  return answerOf(results, results.map(summarize), options);
}

/** {@link answer} where the summaries are at hand, and perhaps the cautions of each run. @internal */
export function answerOf(
  results: ReturnType<typeof listRuns>,
  summaries: readonly Summary[],
  { units = 'metric', money }: ReportOptions,
  found: readonly (readonly Caution[])[] = results.map((result) => cautions(result, units)),
): Answer {
  const moneys = money === undefined ? null : moneyOf(results, money);
  const prices = money === undefined ? null : moneyOptions(money, results.length);
  const candidates = results.map((_, index) => ({
    index,
    letter: letterOf(index),
    summary: summaries[index]!,
    money: moneys?.[index] ?? null,
    options: prices?.[index] ?? null,
    dangers: found[index]!.filter(({ severity }) => severity === 'danger'),
  }));
  const costed =
    money !== undefined && hasOwnInvestments(money, results.length) && moneys!.every(({ cases }) => cases.length > 0);
  const context = { candidates, units, costed };
  return results.length === 1 ? answerOne(context) : answerSeveral(context);
}

/**
 * `± 8 % on what is saved; another year’s weather is not in it.`; `null` where it is not known.
 *
 * @param uncertainty - half width of the band, 0 to 1 [-]
 * @throws {@link ReportError} outside the range: a percentage written as a number.
 */
export function sureWords(uncertainty: number | undefined): string | null {
  if (uncertainty === undefined) return null;
  if (!(uncertainty >= 0 && uncertainty < 1))
    throw new ReportError('uncertainty', `${uncertainty}`, 'a fraction from 0 to below 1', 'Give 0.08 for ± 8 %.');
  return `± ${formatNumber(100 * uncertainty, 0)} % on what is saved; another year’s weather is not in it.`;
}
