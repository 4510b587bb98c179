/** What stands on the first sheet of every format, in words and figures, laid out nowhere yet. */
import type { RunResult } from '@noonloop/sim-core';
import { formatDay } from '../calendar.ts';
import { formatMoney, moneyOf } from '../money/rows.ts';
import type { Money, MoneyCase, MoneyGiven } from '../money/types.ts';
import type { Summary } from '../summary.ts';
import { displayUnit, formatNumber, formatQuantity, roundTo, toDisplay, type UnitKind, type Units } from '../units.ts';

/** One line of the sheet: a number of every design. */
export interface SheetRow {
  /** Which block of one design's sheet it stands in. */
  readonly group: 'saved' | 'cost' | 'heat';
  readonly label: string;
  /** With unit, a design each. */
  readonly cells: readonly string[];
  /** More about each, such as when; empty where there is none. */
  readonly notes: readonly string[];
  /** Against the first design, from the second on; empty where it means nothing. */
  readonly differences: readonly string[];
}

/** What rows are made from. */
interface Ground {
  readonly results: readonly RunResult[];
  readonly summaries: readonly Summary[];
  readonly units: Units;
  readonly money: readonly Money[] | null;
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

const none = (values: readonly unknown[]): string[] => values.map(() => '');

const signed = (value: number, digits: number, symbol: string): string =>
  value === 0 ? '=' : `${value > 0 ? '+' : ''}${formatNumber(value, digits)}${symbol === '' ? '' : ` ${symbol}`}`;

/** Differences of numbers as they are shown, against the first. @param values - in shown units */
const against = (values: readonly (number | null)[], digits: number, symbol: string): string[] =>
  values.map((value, index) => {
    const first = values[0] ?? null;
    if (index === 0 || value === null || first === null) return '';
    return signed(roundTo(roundTo(value, digits) - roundTo(first, digits), digits), digits, symbol);
  });

/** Row of a quantity. */
function quantityRow(
  { units }: Ground,
  group: SheetRow['group'],
  label: string,
  kind: UnitKind,
  values: readonly (number | null)[],
): SheetRow {
  const { digits, symbol } = displayUnit(kind, units);
  const shown = values.map((value) => (value === null ? null : toDisplay(value, kind, units)));
  return {
    group,
    label,
    cells: values.map((value) => formatQuantity(value, kind, units)),
    notes: none(values),
    differences: against(shown, digits, kind === 'temperature' || kind === 'hours' ? symbol : ''),
  };
}

/** `about 88 h`, or none. */
const hoursInWords = (hours: number): string => (hours < 0.5 ? 'none' : `about ${formatNumber(hours, 0)} h`);

function hoursRow({ summaries }: Ground, label: string, key: 'stagnationHours' | 'highLimitHours'): SheetRow {
  const hours = summaries.map(({ year }) => year[key]);
  return {
    group: 'heat',
    label,
    cells: hours.map(hoursInWords),
    notes: none(hours),
    differences: against(hours, 0, 'h'),
  };
}

function freezingRow({ results, units }: Ground): SheetRow {
  const spare = results.map(freezingSpare);
  const { scale } = displayUnit('temperatureDifference', units);
  const degrees = units === 'us' ? '°F' : '°C';
  const cells = spare.map((one) =>
    one < 0
      ? `froze, ${formatNumber(-one * scale, 0)} ${degrees} too cold`
      : `${formatNumber(one * scale, 0)} ${degrees} to spare`,
  );
  return {
    group: 'heat',
    label: 'Coldest fluid from freezing',
    cells,
    notes: none(spare),
    differences: against(
      spare.map((one) => one * scale),
      0,
      degrees,
    ),
  };
}

/** Fuel in the unit of the bill where prices say it, else by its heat. */
function fuelRow(ground: Ground): SheetRow {
  const { money, summaries } = ground;
  const label = 'Fuel saved a year';
  const billed = money?.map(({ fuel }) => fuel.saved) ?? [];
  if (money === null || billed.some((saved) => saved === null))
    return quantityRow(
      ground,
      'saved',
      label,
      'fuel',
      summaries.map(({ year }) => year.fuelSaved),
    );
  return {
    group: 'saved',
    label,
    cells: money.map(({ fuel }) => fuel.savedWords!),
    notes: none(billed),
    differences: against(billed, 0, ''),
  };
}

/** Rows that prices give. */
function moneyRowsOf({ units }: Ground, money: readonly Money[]): { saved: SheetRow[]; cost: SheetRow[] } {
  const { currency } = money[0]!;
  const amount = (value: number | null): string =>
    value === null ? '–' : `${formatMoney(value, 'currency', currency, units)} ${currency}`;
  const row = (group: SheetRow['group'], label: string, values: readonly (number | null)[]): SheetRow => ({
    group,
    label,
    cells: values.map(amount),
    notes: none(values),
    differences: against(values, 0, ''),
  });
  const carbon = money.map(({ co2Saved }) => co2Saved);
  const mass = displayUnit('mass', units);
  return {
    saved: [
      row(
        'saved',
        'Money saved a year',
        money.map(({ energySaving }) => energySaving),
      ),
      ...(carbon.every((one) => one === null)
        ? []
        : [
            {
              group: 'saved' as const,
              label: 'Carbon dioxide saved a year',
              cells: carbon.map((one) => formatQuantity(one, 'mass', units)),
              notes: none(carbon),
              differences: against(
                carbon.map((one) => (one === null ? null : one * mass.scale)),
                mass.digits,
                '',
              ),
            },
          ]),
    ],
    cost: caseRows(money, row),
  };
}

/** What it costs and when it is paid back, by the parts given first, where every design has a price. */
function caseRows(
  money: readonly Money[],
  row: (group: SheetRow['group'], label: string, values: readonly (number | null)[]) => SheetRow,
): SheetRow[] {
  const cases = money.flatMap(({ cases: of }): readonly MoneyCase[] => of.slice(0, 1));
  if (cases.length < money.length) return [];
  const payback = cases.map(({ discountedPayback }) => discountedPayback);
  return [
    row(
      'cost',
      'Cost',
      cases.map(({ investment }) => investment),
    ),
    {
      group: 'cost',
      label: 'Paid back in',
      cells: payback.map((years, index) =>
        years === null ? `not in ${money[index]!.years.length} years` : `${formatNumber(years, 1)} years`,
      ),
      notes: none(payback),
      differences: against(payback, 1, ''),
    },
    row(
      'cost',
      `Worth after ${money[0]!.years.length} years`,
      cases.map(({ netPresentValue }) => netPresentValue),
    ),
  ];
}

/** Every row of the sheet, in order of use. */
export function sheetRows(
  results: readonly RunResult[],
  summaries: readonly Summary[],
  units: Units,
  given: MoneyGiven | undefined,
): SheetRow[] {
  const money = given === undefined ? null : moneyOf(results, given);
  const ground: Ground = { results, summaries, units, money };
  const priced = money === null ? { saved: [], cost: [] } : moneyRowsOf(ground, money);
  const tank = quantityRow(
    ground,
    'heat',
    'Hottest tank',
    'temperature',
    summaries.map(({ year }) => year.peakTankTemperature),
  );
  return [
    fuelRow(ground),
    ...priced.saved,
    ...priced.cost,
    { ...tank, notes: summaries.map(({ year }) => `on ${formatDay(Math.floor(year.peakTankHour / 24))}`) },
    hoursRow(ground, 'Stagnation', 'stagnationHours'),
    hoursRow(ground, 'Stopped by the high limit', 'highLimitHours'),
    freezingRow(ground),
  ];
}
