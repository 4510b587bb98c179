/** Money as reports show it. */
import type { RunResult } from '@noonloop/sim-core';
import { plainText } from '../escape.ts';
import { describeMoney } from '../money/describe.ts';
import {
  formatMoney,
  hasOwnInvestments,
  type MoneyRow,
  moneyOf,
  moneyOptions,
  moneyRows,
  moneyUnit,
} from '../money/rows.ts';
import type { MoneyGiven } from '../money/types.ts';
import { roundTo, type Units } from '../units.ts';
import type { MoneyModel } from './types.ts';
import { byDesign } from './words.ts';

/** Savings whose two sides stand above them: shown as the difference of what is shown. */
const SIDES: Readonly<Record<string, readonly [without: string, having: string]>> = {
  energySaving: ['billWithout', 'billWith'],
  co2Saved: ['co2Without', 'co2With'],
  fuelBilled_saved: ['fuelBilled_without', 'fuelBilled_with'],
};

/** Difference of the two sides as they are shown; `null` where the number is no such saving, or a side is missing. */
function shownDifferences(
  rows: readonly MoneyRow[],
  key: string,
  index: number,
  [, scale, digits]: ReturnType<typeof moneyUnit>,
): number | null {
  const [without, having] = (SIDES[key] ?? []).map((side) => {
    const value = rows.find((row) => row.key === side)?.values[index] ?? null;
    return value === null ? null : roundTo(value * scale, digits);
  });
  return without == null || having == null ? null : (without - having) / scale;
}

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
  const meanings = new Map(rows.map(({ label, definition }) => [label.replace(/, (new|used)$/, ''), definition]));
  return {
    table: {
      header: ['Number', ...(letters.length > 1 ? letters : ['Year 1 or life'])],
      rows: rows.map(({ key, label, kind, unit, values }) => [
        `${label} [${moneyUnit(kind, currency, units, unit)[0]}]`,
        ...values.map((value, index) =>
          formatMoney(
            shownDifferences(rows, key, index, moneyUnit(kind, currency, units)) ?? value,
            kind,
            currency,
            units,
          ),
        ),
      ]),
    },
    meanings: [...meanings],
    grounds: [
      ...byDesign(
        options.map((one) => describeMoney(one, units).map(plainText)),
        letters,
      ),
      ...(options.some(({ investment }) => investment !== undefined) && !hasOwnInvestments(given, results.length)
        ? [
            'One investment was given for all designs: what an added part costs is not in it, so money does not rank them.',
          ]
        : []),
    ],
  };
}
