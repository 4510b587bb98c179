/** Prices. */
import { LEFT_OUT, type Plain } from '../types.ts';
import { AMOUNTS, type Amount } from './amounts.ts';
import { both, type ChoiceKnob, type Ground, type Knob, type NumberKnob } from './knob.ts';

/** A price at one place. */
const priceField = (
  name: string,
  of: Pick<NumberKnob, 'label' | 'help' | 'shown' | 'none'> & { readonly amount?: Amount; readonly usual?: number },
): NumberKnob => ({
  kind: 'number',
  id: `prices.${name}`,
  group: 'money',
  amount: of.amount ?? 'money',
  fieldOnly: true,
  paths: [`prices.${name}`],
  range: both([0, 0, 0]),
  read: ({ written, units }) => {
    const value = written(`prices.${name}`) ?? of.usual;
    return typeof value === 'number' ? AMOUNTS[of.amount ?? 'money'].show(value, units) : null;
  },
  write: (value, { units }) => ({ [`prices.${name}`]: AMOUNTS[of.amount ?? 'money'].write(value, units) }),
  none: of.none ?? { word: '', changes: { [`prices.${name}`]: LEFT_OUT } },
  ...of,
});

const CARRIERS = [
  ['natural-gas', 'Natural gas'],
  ['propane', 'Propane'],
  ['lpg', 'LPG'],
  ['heating-oil', 'Heating oil'],
  ['kerosene', 'Kerosene'],
  ['wood', 'Firewood'],
  ['wood-pellets', 'Wood pellets'],
  ['district-heat', 'District heat'],
] as const;

const UNITS_OF_BILL = [
  ['kWh', 'kWh'],
  ['MJ', 'MJ'],
  ['GJ', 'GJ'],
  ['therm', 'therm'],
  ['MMBtu', 'million Btu'],
  ['m3', 'm³'],
  ['CCF', 'CCF'],
  ['L', 'litre'],
  ['gal', 'gallon'],
  ['kg', 'kg'],
  ['lb', 'pound'],
] as const;

const burns = ({ design }: Ground): boolean => design.heater.carrier !== 'electricity';

const priceChoice = (
  name: string,
  label: string,
  choices: readonly (readonly [string, string])[],
  shown?: (ground: Ground) => boolean,
): ChoiceKnob => ({
  kind: 'choice',
  id: `prices.${name}`,
  label,
  group: 'money',
  paths: [`prices.${name}`],
  choices: ({ written }) => {
    const value = written(`prices.${name}`);
    return typeof value === 'string' && !choices.some(([known]) => known === value)
      ? [...choices, [value, value]]
      : choices;
  },
  read: ({ written }) => String(written(`prices.${name}`) ?? choices[0]![0]),
  write: (value) => ({ [`prices.${name}`]: value }),
  ...(shown === undefined ? {} : { shown }),
});

/** A price is worth nothing without what it is for: with the first all that stands beside it is written too. */
const withFuel = (knob: NumberKnob): NumberKnob => ({
  ...knob,
  write: (value, ground) => {
    const usual = (path: string, of: Plain) => (ground.written(path) === undefined ? { [path]: of } : {});
    const us = ground.units === 'us';
    return {
      ...usual('prices.currency', us ? 'USD' : 'EUR'),
      ...(knob.id.includes('electricity')
        ? usual('prices.electricity.per', 'kWh')
        : { ...usual('prices.fuel.carrier', 'natural-gas'), ...usual('prices.fuel.per', 'kWh') }),
      ...knob.write(value, ground),
    };
  },
});

/** Prices. */
export const MONEY: readonly Knob[] = [
  priceChoice('currency', 'Currency', [
    ['EUR', 'euro'],
    ['USD', 'US dollar'],
    ['GBP', 'pound sterling'],
    ['CHF', 'Swiss franc'],
    ['CAD', 'Canadian dollar'],
    ['AUD', 'Australian dollar'],
  ]),
  priceChoice('fuel.carrier', 'Fuel of the heater', CARRIERS, burns),
  withFuel(priceField('fuel.price', { label: 'Price of the fuel', shown: burns })),
  priceChoice('fuel.per', 'For one', UNITS_OF_BILL, burns),
  priceField('fuel.grossCalorificValue_kWh', {
    label: 'Heat in one unit of the fuel',
    amount: 'plain',
    help: 'kWh, as the bill states it: needed for gas by the m³',
    shown: (ground) =>
      burns(ground) && /^(m3|CCF|ft3|L|gal|kg|lb)$/.test(String(ground.written('prices.fuel.per') ?? '')),
  }),
  withFuel(priceField('electricity.price', { label: 'Price of electricity, a kWh' })),
  priceField('panel', { label: 'One panel, built' }),
  priceField('rest', { label: 'Everything else, built' }),
  priceField('maintenance', { label: 'Upkeep a year' }),
  priceField('discountRate', { label: 'Interest above inflation', amount: 'percent', usual: 0.03 }),
  priceField('life', { label: 'Years reckoned', amount: 'count', usual: 20 }),
];
