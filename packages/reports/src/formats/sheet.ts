/** What stands on the first sheet of every format, in words and figures, laid out nowhere yet. */
import type { RunResult } from '@noonloop/sim-core';
import { capital, currencyWords } from '../answer/words.ts';
import type { ReportModel } from '../model/types.ts';
import { FUELS, UNIT_WORDS } from '../money/fuels.ts';
import { wholeAmount } from '../money/prices.ts';
import { moneyOf, moneyOptions } from '../money/rows.ts';
import type { Money, MoneyCase } from '../money/types.ts';
import type { ReportOptions } from '../options.ts';
import { bandsAt, rangeText } from '../ranges.ts';
import { displayUnit, formatNumber } from '../units.ts';
import { heatRows, shareRows } from './sheet-heat.ts';
import { amount, price, row, type SheetRow } from './sheet-rows.ts';

/** The whole sheet. */
interface Sheet {
  readonly rows: readonly SheetRow[];
  /** System, weather, certainty and prices, a sentence each. */
  readonly facts: readonly string[];
}

/** What is known of a saving's band, a design each: its ends over the saving itself; `null` where nothing is. */
function savedBands({ runs }: ReportModel, options: ReportOptions): readonly (readonly [number, number] | null)[] {
  const { uncertainty } = options;
  return runs.map((_, index) => {
    const band = bandsAt(options, index, runs.length)?.fuelSaved;
    if (band !== undefined && band.value > 0) return [band.low / band.value, band.high / band.value];
    return uncertainty === undefined ? null : [1 - uncertainty, 1 + uncertainty];
  });
}

/** `77 to 91`, where the band is known. */
const rangeOf = (value: number, band: readonly [number, number] | null, words?: (value: number) => string): string => {
  if (band === null || value <= 0) return '';
  const [low, high] = [value * band[0], value * band[1]];
  return words === undefined ? rangeText([low, high], value < 10 ? 1 : 0) : `${words(low)} to ${words(high)}`;
};

/** Fuel in the unit of the bill where prices say it, else by its heat. */
function fuelRow(
  { runs, units }: ReportModel,
  money: readonly Money[] | null,
  bands: ReturnType<typeof savedBands>,
): SheetRow {
  const billed = money?.every(({ fuel }) => fuel.saved !== null) ? money.map(({ fuel }) => fuel) : null;
  const { scale, symbol } = displayUnit('fuel', units);
  const words = [...new Set(billed?.map(({ word }) => word) ?? [])];
  const what = words.length === 1 ? capital(words[0]!) : 'Fuel';
  const unitOf = (index: number, one: boolean): string =>
    UNIT_WORDS[billed === null ? (symbol as 'kWh' | 'therm') : billed[index]!.unit][one ? 0 : 1];
  const values = billed?.map(({ saved }) => saved!) ?? runs.map(({ summary }) => summary.year.fuelSaved * scale);
  return row({
    group: 'saved',
    label: `${what} saved a year`,
    short: what,
    shown: values.map((value, index) => amount(value, unitOf(index, wholeAmount(value) === '1'))),
    ranges: values.map((value, index) => rangeOf(value, bands[index]!)),
  });
}

/** Rows that prices give. */
function moneyRows({ units }: ReportModel, money: readonly Money[], bands: ReturnType<typeof savedBands>): SheetRow[] {
  const { currency } = money[0]!;
  const inWords = (value: number): string => currencyWords(value, currency);
  const saving = money.map(({ energySaving }) => energySaving);
  const carbon = money.map(({ co2Saved }) => co2Saved);
  const { scale, symbol } = displayUnit('mass', units);
  return [
    row({
      group: 'saved',
      label: 'Money saved a year',
      short: 'Money',
      shown: saving.map((value) => price(value, currency)),
      ranges: saving.map((value, index) => rangeOf(value, bands[index]!, inWords)),
      difference: inWords,
    }),
    ...(carbon.every((one) => one !== null)
      ? [
          row({
            group: 'saved',
            label: 'Carbon dioxide saved a year',
            short: 'Carbon dioxide',
            shown: carbon.map((one) => amount(one * scale, symbol)),
          }),
        ]
      : []),
    ...caseRows(money, inWords),
  ];
}

/** What it costs and when it is paid back, by the parts given first, where every design has a price. */
function caseRows(money: readonly Money[], inWords: (value: number) => string): SheetRow[] {
  const cases = money.flatMap(({ cases: of }): readonly MoneyCase[] => of.slice(0, 1));
  if (cases.length < money.length) return [];
  const { currency } = money[0]!;
  const lives = [...new Set(money.map(({ life }) => life))];
  const used = cases.some(({ parts }) => parts === 'used') ? ', used parts' : '';
  return [
    row({
      group: 'cost',
      label: `Cost${used}`,
      shown: cases.map(({ investment }) => price(investment, currency)),
      difference: inWords,
    }),
    row({
      group: 'cost',
      label: 'Paid back in',
      shown: cases.map(({ discountedPayback: years }, index) =>
        years === null
          ? { text: `not in ${money[index]!.life} years`, value: null }
          : { text: `${formatNumber(years, 1)} years`, value: years },
      ),
      difference: (years) => formatNumber(years, 1),
    }),
    row({
      group: 'cost',
      label: lives.length === 1 ? `Gained after ${lives[0]} years` : 'Gained in its life',
      shown: cases.map(({ netPresentValue }) => price(netPresentValue, currency)),
      difference: inWords,
    }),
  ];
}

/** Prices of what is burnt, each once. */
function pricesLine(count: number, given: NonNullable<ReportOptions['money']>): string {
  const lines = moneyOptions(given, count).flatMap(({ fuel, electricity, currency }) =>
    [fuel, ...(electricity === undefined ? [] : [electricity])].map(
      ({ carrier, price: of, per }) =>
        `${FUELS[carrier].word} ${formatNumber(of, 2)} ${currency} a ${UNIT_WORDS[per][0]}`,
    ),
  );
  return `Prices: ${[...new Set(lines)].join('; ')}.`;
}

/** Everything on the sheet but the answer, the alarm and the months. */
export function sheetOf(results: readonly RunResult[], model: ReportModel, options: ReportOptions): Sheet {
  const { money: given } = options;
  const bands = savedBands(model, options);
  const money = given === undefined ? null : moneyOf(results, given);
  const rows = [
    fuelRow(model, money, bands),
    ...(money === null ? [] : moneyRows(model, money, bands)),
    ...shareRows(model, options),
    ...heatRows(results, model, options),
  ];
  const system =
    model.runs.length === 1
      ? [capital(model.system)]
      : [
          ...(model.differs === '' ? [] : [`Differs: ${model.differs}.`]),
          ...(model.system === ''
            ? []
            : [`Same in ${model.runs.length === 2 ? 'both' : 'all'}: ${model.system.replace(/^of /, 'panels of ')}.`]),
        ];
  return {
    rows,
    facts: [
      ...system,
      `Weather: ${model.site}.`,
      ...(model.sure === null ? [] : [`How sure: ${model.sure}`]),
      ...(given === undefined ? [] : [pricesLine(results.length, given)]),
    ],
  };
}

/** The gravest danger in its own words and how many there are; that there is none, where there is none. */
export function alarmWords({ cautions, cautionCount }: ReportModel): string {
  const worst = cautions.find(({ severity }) => severity === 'danger');
  if (worst === undefined) return `${cautionCount.words}.`;
  const [first] = worst.short;
  return first === undefined ? `${cautionCount.words}.` : `${cautionCount.words}: ${first}.`;
}
