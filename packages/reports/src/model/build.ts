/** Content of a report for people, put into words once; the formats lay it out. */
import type { RunResult } from '@noonloop/sim-core';
import { answerOf, sureWords } from '../answer/answer.ts';
import { describeSeason, describeStandby } from '../answer/season.ts';
import { siteWords, systemLine, systemsLine } from '../answer/system.ts';
import { cautions, countCautions } from '../cautions/index.ts';
import { compareSummaries } from '../compare.ts';
import { designChanges } from '../design-changes.ts';
import { cut, letterOf, plainText } from '../escape.ts';
import { FUELS } from '../money/fuels.ts';
import { moneyOf, moneyOptions } from '../money/rows.ts';
import { listRuns, type ReportOptions, type Runs } from '../options.ts';
import { bandsAt, bandsInWords } from '../ranges.ts';
import { rankLabel, rankSummaries, rankValue } from '../rank.ts';
import { describeComparison } from '../sentences.ts';
import { type Summary, summarize } from '../summary.ts';
import { moneyModel } from './money.ts';
import { balanceTable, monthTable, numberRows } from './tables.ts';
import type { RankingModel, ReportModel } from './types.ts';
import { assumptionLines, byDesign, groupCautions, limits, notes, place } from './words.ts';

const COUNTS = ['', 'One', 'Two', 'Three', 'Four', 'Five', 'Six', 'Seven', 'Eight', 'Nine', 'Ten'];

function rankingModel(
  results: readonly RunResult[],
  summaries: readonly Summary[],
  letters: readonly string[],
  { rankBy, money, units = 'metric' }: ReportOptions,
): RankingModel {
  const ranking = rankSummaries(results, summaries, rankBy!, money);
  const currency = money === undefined ? '' : moneyOptions(money, results.length)[0]!.currency;
  return {
    label: rankLabel(ranking),
    lines: ranking.order.map(
      (index) =>
        `${letters[index]} ${cut(plainText(results[index]!.design.name), 60)}: ${rankValue(ranking, index, currency, units)}`,
    ),
  };
}

/** The system in a line, the heater's fuel by its name where prices have it. */
function systemModel(
  results: readonly RunResult[],
  { money, units = 'metric' }: ReportOptions,
): Pick<ReportModel, 'system' | 'differs'> {
  const carriers =
    money === undefined ? [] : moneyOptions(money, results.length).map(({ fuel }) => FUELS[fuel.carrier].word);
  const fuel = new Set(carriers).size === 1 ? carriers[0] : undefined;
  if (results.length === 1) return { system: systemLine(results[0]!.design, units, fuel), differs: '' };
  const { same, differs } = systemsLine(
    results.map(({ design }) => design),
    units,
    fuel,
  );
  return { system: same, differs };
}

/** `Two panels or three?` where nothing else differs; else how many designs there are. */
function titleOf(results: readonly RunResult[]): string {
  const [first, ...others] = results.map(({ design }) => design);
  const counts = results.map(({ design }) => design.array.panels);
  const panels = others.every((other) => designChanges(first!, other).every(({ path }) => path === 'array.panels'));
  if (panels && new Set(counts).size === counts.length) {
    const words = counts.map((count) => (COUNTS[count] ?? String(count)).toLowerCase());
    const between = words.slice(1, -1).map((word) => `, ${word}`);
    const title = `${words[0]} panel${counts[0] === 1 ? '' : 's'}${between.join('')} or ${words.at(-1)}?`;
    return title.charAt(0).toUpperCase() + title.slice(1);
  }
  return `${COUNTS[results.length] ?? results.length} designs compared`;
}

/** Everything that a report says, in words. */
export function buildModel(runs: Runs, options: ReportOptions = {}): ReportModel {
  const { units = 'metric', against = 'first' } = options;
  const results = listRuns(runs);
  const summaries = results.map(summarize);
  const comparison = summaries.length > 1 ? compareSummaries(summaries, against) : null;
  const letters = results.map((_, index) => letterOf(index));
  const found = results.map((result) => cautions(result, units));
  const groups = groupCautions(found, letters);
  const names = results.map(({ design }) => plainText(design.name));
  const bands = results.map((_, index) => bandsAt(options, index, results.length));
  const first = bands[0] ?? null;
  const moneys = options.money === undefined ? null : moneyOf(results, options.money);
  return {
    title: options.title ?? (comparison === null ? names[0]! : titleOf(results)),
    answer: answerOf(results, summaries, options, found),
    sure: first === null ? sureWords(options.uncertainty) : bandsInWords(first),
    ...systemModel(results, options),
    site: [...new Set(results.map(({ site }) => siteWords(site)))].join(' · '),
    place: [...new Set(summaries.map((summary) => place(summary, units)))].join(' · '),
    units,
    runs: results.map((result, index) => ({
      letter: letters[index]!,
      name: names[index]!,
      summary: summaries[index]!,
      months: monthTable(summaries[index]!, units),
      balance: balanceTable(result, units),
    })),
    comparison,
    sentences: comparison === null ? [] : describeComparison(comparison, units),
    ranking:
      comparison === null || options.rankBy === undefined ? null : rankingModel(results, summaries, letters, options),
    numbers: numberRows(summaries, comparison, { units, bands }),
    cautions: groups,
    cautionCount: countCautions(groups),
    season: byDesign(
      summaries.map((summary, index) =>
        [describeSeason(summary), describeStandby(summary, units, moneys?.[index])].filter((line) => line !== null),
      ),
      letters,
    ),
    money: options.money === undefined ? null : moneyModel(results, letters, options.money, units),
    assumptions: assumptionLines(results, letters, units),
    limits: limits(results, letters, units),
    notes: notes(results, letters, units),
  };
}
