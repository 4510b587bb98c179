/** What stands on the first sheet of every format, in words and figures, laid out nowhere yet. */
import type { RunResult } from '@noonloop/sim-core';
import { capital, currencyWords, dayWords } from '../answer/words.ts';
import type { ReportModel } from '../model/types.ts';
import { FUELS, UNIT_WORDS } from '../money/fuels.ts';
import { wholeAmount } from '../money/prices.ts';
import { moneyOf, moneyOptions } from '../money/rows.ts';
import type { Money, MoneyCase } from '../money/types.ts';
import type { ReportOptions } from '../options.ts';
import { displayUnit, formatNumber, roundTo, toDisplay } from '../units.ts';
import { amount, price, row, type SheetRow, type Shown } from './sheet-rows.ts';

/** The whole sheet. */
interface Sheet {
  readonly rows: readonly SheetRow[];
  /** System, weather, certainty and prices, a sentence each. */
  readonly facts: readonly string[];
}

/** How far the coldest fluid of the year stayed above its freezing point in that hour; below 0 it froze. [K] */
export function freezingSpare({ columns }: RunResult): number {
  let least = Number.POSITIVE_INFINITY;
  for (let hour = 0; hour < 8760; hour++) {
    const coldest = Math.min(columns.absorberMinimumTemperature[hour]!, columns.pipeMinimumTemperature[hour]!);
    least = Math.min(least, coldest - columns.freezingPoint[hour]!);
  }
  return least;
}

/** `77 to 91`, where the uncertainty is known. */
const rangeOf = (value: number, uncertainty: number | undefined, words: (value: number) => string): string =>
  uncertainty === undefined || value <= 0
    ? ''
    : `${words(value * (1 - uncertainty))} to ${words(value * (1 + uncertainty))}`;

/** Fuel in the unit of the bill where prices say it, else by its heat. */
function fuelRow(
  { runs, units }: ReportModel,
  money: readonly Money[] | null,
  uncertainty: number | undefined,
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
    notes: values.map((value) => rangeOf(value, uncertainty, wholeAmount)),
  });
}

/** Rows that prices give. */
function moneyRows({ units }: ReportModel, money: readonly Money[], uncertainty: number | undefined): SheetRow[] {
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
      notes: saving.map((value) => rangeOf(value, uncertainty, inWords)),
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

/** `about 88 h`, or none. */
const hoursShown = (hours: number): Shown =>
  hours < 0.5 ? { text: 'none', value: 0 } : { text: `about ${formatNumber(hours, 0)} h`, value: hours };

function heatRows(results: readonly RunResult[], { runs, units }: ReportModel): SheetRow[] {
  const years = runs.map(({ summary }) => summary.year);
  const degrees = displayUnit('temperature', units).symbol;
  const { scale } = displayUnit('temperatureDifference', units);
  return [
    row({
      group: 'heat',
      label: 'Hottest tank',
      shown: years.map(({ peakTankTemperature }) => {
        const value = roundTo(toDisplay(peakTankTemperature, 'temperature', units), 0);
        return { text: `${formatNumber(value, 0)} ${degrees}`, value };
      }),
      notes: years.map(({ peakTankHour }) => `on ${dayWords(peakTankHour)}`),
      difference: (size) => `${formatNumber(size, 0)} ${degrees}`,
    }),
    row({
      group: 'heat',
      label: 'Stagnation in the sun',
      shown: years.map(({ stagnationHours }) => hoursShown(stagnationHours)),
      difference: (size) => `${formatNumber(size, 0)} h`,
    }),
    row({
      group: 'heat',
      label: 'Stopped by the high limit',
      shown: years.map(({ highLimitHours }) => hoursShown(highLimitHours)),
      difference: (size) => `${formatNumber(size, 0)} h`,
    }),
    row({
      group: 'heat',
      label: 'Coldest fluid',
      shown: results.map((result) => {
        const spare = roundTo(freezingSpare(result) * scale, 0);
        const size = `${formatNumber(Math.abs(spare), 0)} ${degrees}`;
        return { text: spare < 0 ? `${size} too cold: it froze` : `${size} from freezing`, value: spare };
      }),
      difference: (size) => `${formatNumber(size, 0)} ${degrees}`,
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
  const { money: given, uncertainty } = options;
  const money = given === undefined ? null : moneyOf(results, given);
  const rows = [
    fuelRow(model, money, uncertainty),
    ...(money === null ? [] : moneyRows(model, money, uncertainty)),
    ...heatRows(results, model),
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
