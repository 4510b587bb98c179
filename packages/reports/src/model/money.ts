/** Money as reports show it. */
import type { RunResult } from '@noonloop/sim-core';
import { plainText } from '../escape.ts';
import { describeMoney } from '../money/describe.ts';
import { formatMoney, type MoneyGiven, moneyOf, moneyOptions, moneyRows, moneyUnit } from '../money/rows.ts';
import type { Units } from '../units.ts';
import type { MoneyModel } from './types.ts';
import { byDesign } from './words.ts';

/** Table, meanings and grounds of the money of all designs. */
export function moneyModel(
  results: readonly RunResult[],
  letters: readonly string[],
  given: MoneyGiven,
  units: Units,
): MoneyModel {
  const options = moneyOptions(given, results.length);
  const { currency } = options[0]!;
  const rows = moneyRows(moneyOf(results, given));
  const meanings = new Map(rows.map(({ label, definition }) => [label.replace(/, (new|used) parts$/, ''), definition]));
  return {
    table: {
      header: ['', ...(letters.length > 1 ? letters : ['Year 1 or life'])],
      rows: rows.map(({ label, kind, values }) => [
        `${label} [${moneyUnit(kind, currency, units)[0]}]`,
        ...values.map((value) => formatMoney(value, kind, currency, units)),
      ]),
    },
    meanings: [...meanings],
    grounds: byDesign(
      options.map((one) => describeMoney(one, units).map(plainText)),
      letters,
    ),
  };
}
