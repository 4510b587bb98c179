/** One table of what every number of money means. */
import type { MoneyCase } from './types.ts';

/** Key of a number of money that is one a design, whatever was paid for it. */
type BillKey =
  | 'billWithout'
  | 'billWith'
  | 'energySaving'
  | 'maintenance'
  | 'worthOfSavings'
  | 'levelisedCostOfFuelHeat'
  | 'co2Without'
  | 'co2With'
  | 'co2Saved';
/** Key of a number of money that depends on the investment. */
export type CaseKey = Exclude<keyof MoneyCase, 'parts'>;

/** What kind of number it is. */
export type MoneyKind = 'amount' | 'currency' | 'years' | 'rate' | 'heatPrice' | 'mass';

/** What a number of money means. */
export interface MoneyDefinition {
  readonly label: string;
  readonly kind: MoneyKind;
  readonly definition: string;
}

const define = (label: string, kind: MoneyKind, definition: string): MoneyDefinition => ({ label, kind, definition });

/** Numbers of the first year. */
export const BILL_DEFINITIONS: Readonly<Record<BillKey, MoneyDefinition>> = {
  billWithout: define(
    'Energy bill without solar',
    'currency',
    'Fuel of the same house without the solar system, and the electricity of its heater’s controls, in the first year.',
  ),
  billWith: define(
    'Energy bill with solar',
    'currency',
    'Fuel of the backup heater and the electricity of its controls and of the pump, in the first year.',
  ),
  energySaving: define('Saved on energy', 'currency', 'Energy bill without solar less energy bill with solar.'),
  maintenance: define('Upkeep', 'currency', 'Maintenance of the solar system in the first year, as given.'),
  worthOfSavings: define(
    'Worth of the savings',
    'currency',
    'Present worth of the net savings of all years at the discount rate. The system pays where it costs less, built.',
  ),
  levelisedCostOfFuelHeat: define(
    'Heater’s heat, levelised',
    'heatPrice',
    'Present worth of the energy that the solar heat saves, the heater’s losses in it, over the present worth of the energy delivered. Hold the levelised cost of heat against this, not against the price of fuel.',
  ),
  co2Without: define(
    'Carbon dioxide without solar',
    'mass',
    'Carbon dioxide of fuel and electricity of one year without the solar system, by the factors below.',
  ),
  co2With: define(
    'Carbon dioxide with solar',
    'mass',
    'Carbon dioxide of fuel and electricity of one year with the solar system, by the factors below.',
  ),
  co2Saved: define(
    'Carbon dioxide saved',
    'mass',
    'The difference of the two. What making the parts took is left out.',
  ),
};

/** Numbers that depend on the investment. */
export const CASE_DEFINITIONS: Readonly<Record<CaseKey, MoneyDefinition>> = {
  investment: define(
    'Investment',
    'currency',
    'What the system costs at the start, as given: with new parts and, where given, with used ones.',
  ),
  simplePayback: define(
    'Simple payback',
    'years',
    'Investment over the net saving of the first year: energy less upkeep. Without interest or escalation.',
  ),
  discountedPayback: define(
    'Discounted payback',
    'years',
    'Years until the present worth of the net savings reaches the investment; none where it does not within the life.',
  ),
  netPresentValue: define(
    'Net present value',
    'currency',
    'Present worth of the net savings of all years at the discount rate, less the investment. Above zero, the system earns more than the money would.',
  ),
  internalRateOfReturn: define(
    'Internal rate of return',
    'rate',
    'Discount rate at which the net present value is zero.',
  ),
  levelisedCostOfHeat: define(
    'Levelised cost of heat',
    'heatPrice',
    'Investment and the present worth of upkeep and of the pump’s electricity, over the present worth of the energy delivered.',
  ),
};

/** Keys in the order of reports. */
export const BILL_KEYS = [
  'billWithout',
  'billWith',
  'energySaving',
  'maintenance',
  'worthOfSavings',
  'levelisedCostOfFuelHeat',
] as const satisfies BillKey[];
/** Keys in the order of reports. */
export const CASE_KEYS = Object.keys(CASE_DEFINITIONS) as readonly CaseKey[];
/** Keys in the order of reports. */
export const CARBON_KEYS = ['co2Without', 'co2With', 'co2Saved'] as const satisfies BillKey[];

/** Fuel in the unit of its bill; the unit is that of the prices. */
export const FUEL_DEFINITIONS: Readonly<Record<'without' | 'with' | 'saved', MoneyDefinition>> = {
  without: define(
    'Bought without solar',
    'amount',
    'Fuel of one year without the solar system, as the bill counts it.',
  ),
  with: define('Bought with solar', 'amount', 'Fuel of one year with the solar system, as the bill counts it.'),
  saved: define('Saved', 'amount', 'The difference of the two, as the bill counts it.'),
};
