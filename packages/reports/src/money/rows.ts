/** Numbers of money of every design, in order, for tables. */
import type { RunResult } from '@noonloop/sim-core';
import { ReportError } from '../errors.ts';
import { displayUnit, formatNumber, type Units } from '../units.ts';
import { checkPrices } from './check.ts';
import {
  BILL_DEFINITIONS,
  BILL_KEYS,
  CARBON_KEYS,
  CASE_DEFINITIONS,
  CASE_KEYS,
  FUEL_DEFINITIONS,
  type MoneyDefinition,
  type MoneyKind,
} from './definitions.ts';
import { money } from './money.ts';
import type { DesignPrices, Money, MoneyGiven, MoneyOptions, MoneySettings } from './types.ts';

/** Options of each design. @throws {@link ReportError} when their number does not fit, a field is wrong or currencies differ. */
export function moneyOptions(given: MoneyGiven, designs: number): readonly MoneyOptions[] {
  const list = isList(given) ? given : spread(given, designs);
  if (list.length !== designs)
    throw new ReportError('money', `${list.length} sets of prices`, `one, or ${designs}`, 'Give one for each design.');
  if (isList(given)) for (const [index, one] of given.entries()) checkPrices(one, `money[${index}]`);
  const currencies = new Set(list.map(({ currency }) => currency));
  if (currencies.size > 1)
    throw new ReportError('money', [...currencies].join(' and '), 'one currency', 'Convert the prices first.');
  return list;
}

const isList = (given: MoneyGiven): given is readonly MoneyOptions[] => Array.isArray(given);

/** What stands for all, and what each design has of its own. */
function spread(given: MoneySettings, designs: number): readonly MoneyOptions[] {
  checkPrices(given);
  const { designs: own, ...shared } = given;
  if (own !== undefined && own.length !== designs)
    throw new ReportError(
      'money.designs',
      `${own.length} entries`,
      `${designs}, one for each design`,
      'List the designs in the order in which they are given.',
    );
  return Array.from({ length: designs }, (_, index) => ({ ...shared, ...own?.[index] }) as MoneyOptions);
}

/**
 * Whether the prices say what each design costs: only then does money rank them, as one investment for all would make each added
 * part free.
 */
export function hasOwnInvestments(given: MoneyGiven, designs: number): boolean {
  if (designs === 1) return true;
  const list: readonly DesignPrices[] = isList(given) ? given : (given.designs ?? []);
  return list.length === designs && list.every(({ investment }) => investment !== undefined);
}

/** Money of every design. */
export const moneyOf = (results: readonly RunResult[], given: MoneyGiven): readonly Money[] => {
  const options = moneyOptions(given, results.length);
  return results.map((result, index) => money(result, options[index]!));
};

/** One number of every design. */
export interface MoneyRow extends MoneyDefinition {
  /** `netPresentValue`, and `netPresentValueUsed` for used parts. */
  readonly key: string;
  /** Unit of the bill, for fuel. */
  readonly unit?: string;
  /** In currency, years, shares, currency/J, kg or {@link unit}; `null`: none. */
  readonly values: readonly (number | null)[];
}

/** Every number: bills, then new parts, used parts, carbon dioxide. */
export function moneyRows(all: readonly Money[]): MoneyRow[] {
  const one = (key: (typeof BILL_KEYS | typeof CARBON_KEYS)[number]): MoneyRow => ({
    key,
    ...BILL_DEFINITIONS[key],
    values: all.map((money) => money[key]),
  });
  const any = (parts: 'new' | 'used'): boolean => all.some(({ cases }) => cases.some((one) => one.parts === parts));
  const anyUsed = any('used');
  const cases = (['new', 'used'] as const).filter(any).flatMap((parts) =>
    CASE_KEYS.map((key): MoneyRow => {
      const { label, ...rest } = CASE_DEFINITIONS[key];
      return {
        key: parts === 'used' ? `${key}Used` : key,
        label: anyUsed ? `${label}, ${parts}` : label,
        ...rest,
        values: all.map(({ cases: of }) => of.find((found) => found.parts === parts)?.[key] ?? null),
      };
    }),
  );
  return [...fuelRows(all), ...BILL_KEYS.map(one), ...cases, ...CARBON_KEYS.map(one)];
}

/** Fuel in the unit of its bill, where one unit and one fuel hold for all. */
function fuelRows(all: readonly Money[]): MoneyRow[] {
  const { unit, word } = all[0]!.fuel;
  if (all.some(({ fuel }) => fuel.unit !== unit || fuel.word !== word || fuel.saved === null)) return [];
  return (['without', 'with', 'saved'] as const).map((key) => {
    const { label, ...rest } = FUEL_DEFINITIONS[key];
    return {
      key: `fuelBilled_${key}`,
      label: `${word.charAt(0).toUpperCase()}${word.slice(1)} ${label.toLowerCase()}`,
      ...rest,
      unit: unit.replace('3', '³'),
      values: all.map(({ fuel }) => fuel[key]),
    };
  });
}

/** Unit, factor from the value to it, and decimals. */
export function moneyUnit(
  kind: MoneyKind,
  currency: string,
  units: Units,
  unit = '',
): [symbol: string, scale: number, digits: number] {
  switch (kind) {
    case 'amount':
      return [unit, 1, 0];
    case 'currency':
      return [currency, 1, 0];
    case 'years':
      return ['years', 1, 1];
    case 'rate':
      return ['%', 100, 1];
    case 'heatPrice': {
      const { symbol, scale } = displayUnit('fuel', units);
      return [`${currency}/${symbol}`, 1 / scale, units === 'us' ? 2 : 3];
    }
    case 'mass': {
      const { symbol, scale, digits } = displayUnit('mass', units);
      return [symbol, scale, digits];
    }
  }
}

/** The number alone as a report shows it; `–` where there is none. */
export function formatMoney(value: number | null, kind: MoneyKind, currency: string, units: Units): string {
  if (value === null) return '–';
  const [, scale, digits] = moneyUnit(kind, currency, units);
  return formatNumber(value * scale, digits);
}
