/** Words and numbers of the answer: few digits, the unit of the bill, designs by name. */
import { MONTH_NAMES, MONTH_STARTS, monthOfDay } from '../calendar.ts';
import { designChanges } from '../design-changes.ts';
import { wholeAmount } from '../money/prices.ts';
import { displayUnit, formatNumber } from '../units.ts';
import type { AnswerContext, Candidate } from './types.ts';

const COUNTS = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const ORDINALS = ['', 'first', 'second', 'third', 'fourth', 'fifth', 'sixth', 'seventh', 'eighth', 'ninth', 'tenth'];

/** `two`, `12`. */
export const countWords = (count: number): string => COUNTS[count] ?? String(count);
/** `third`, `12th`. */
const ordinalWords = (count: number): string => ORDINALS[count] ?? `${count}th`;
/** First letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** `$1,970`, `€260`, `CHF 1,200`: whole, tens from a thousand up. */
export function currencyWords(value: number, currency: string): string {
  const step = Math.abs(value) >= 1000 ? 10 : 1;
  const money = new Intl.NumberFormat('en-US', { style: 'currency', currency, maximumFractionDigits: 0 });
  return money
    .format(Math.round(value / step) * step)
    .replace('-', '−')
    .replace(/\u00a0/g, ' ');
}

/** `about 6 years`, `less than a year`. */
export function yearsWords(years: number): string {
  if (years < 1) return 'less than a year';
  const rounded = years < 3 ? Math.round(2 * years) / 2 : Math.round(years);
  return `about ${String(rounded)
    .replace('.5', '½')
    .replace(/^(\d+)½$/, '$1½')} year${rounded === 1 ? '' : 's'}`;
}

const FRACTIONS: readonly (readonly [number, string])[] = [
  [0.1, 'a tenth'],
  [0.2, 'a fifth'],
  [0.25, 'a quarter'],
  [1 / 3, 'a third'],
  [0.5, 'half'],
  [2 / 3, 'two thirds'],
  [0.75, 'three quarters'],
  [0.9, 'nine tenths'],
  [1, 'as much as'],
];

/** A share in words where one is within two hundredths, `a third of`; else `41 % of`. */
export function shareWords(share: number): string {
  const found = FRACTIONS.find(([value]) => Math.abs(share - value) <= 0.02);
  if (found === undefined) return `${formatNumber(100 * share, 0)} % of`;
  return found[1] === 'as much as' ? found[1] : `${found[1]} of`;
}

/** `8 August`. @param hour - of the year [h] */
export function dayWords(hour: number): string {
  const day = Math.floor(hour / 24);
  const month = monthOfDay(day);
  return `${day - MONTH_STARTS[month]! + 1} ${MONTH_NAMES[month]}`;
}

/** Fuel of a candidate in words and digits that may be subtracted. */
interface FuelWords {
  /** Amount in the unit of the bill. */
  readonly value: number;
  /** `84`. */
  readonly number: string;
  /** `gallons of propane`. */
  readonly unit: string;
}

/** An energy of fuel in the unit of the bill, or of the report without prices. @param energy - by gross calorific value [J] */
export function fuelWords(
  energy: number,
  { money, summary }: Pick<Candidate, 'money' | 'summary'>,
  units: AnswerContext['units'],
): FuelWords {
  const billed = money?.fuel;
  if (billed?.saved != null && billed.savedWords !== null && summary.year.fuelSaved !== 0) {
    const value = (energy / summary.year.fuelSaved) * billed.saved;
    return { value, number: wholeAmount(value), unit: billed.savedWords.replace(/^\S+ /, '') };
  }
  const { symbol, scale } = displayUnit('fuel', units);
  const value = energy * scale;
  const what = summary.design.heater.carrier === 'electricity' ? 'electricity' : 'fuel';
  return { value, number: wholeAmount(value), unit: `${symbol === 'therm' ? 'therms' : symbol} of ${what}` };
}

/** `84 gallons of propane`. */
export const savedWords = (candidate: Candidate, units: AnswerContext['units']): string => {
  const { number, unit } = fuelWords(candidate.summary.year.fuelSaved, candidate, units);
  return `${number} ${unit}`;
};

/** Whether nothing but the number of panels differs. */
export function onlyPanels(from: Candidate, to: Candidate): boolean {
  const changes = designChanges(from.summary.design, to.summary.design);
  return changes.length === 1 && changes[0]!.path === 'array.panels';
}

/** `Two panels`, where only their number differs among all; else the letter. */
export function nameOf(candidate: Candidate, all: readonly Candidate[]): string {
  const others = all.filter((one) => one !== candidate);
  const { panels } = candidate.summary.design.array;
  return others.length > 0 && others.every((one) => onlyPanels(one, candidate))
    ? `${countWords(panels)} panel${panels === 1 ? '' : 's'}`
    : candidate.letter;
}

/** `B costs`, `two panels cost`: a verb after what {@link nameOf} says. */
export const verb = (name: string, one: string, many: string): string => (/panels$/.test(name) ? many : one);
/** `is`, `are`. */
export const isOrAre = (name: string): string => verb(name, 'is', 'are');

/** What `to` has more than `from`: `the third panel`; else its letter. */
export function addedPart(from: Candidate, to: Candidate): string {
  const [before, after] = [from.summary.design.array.panels, to.summary.design.array.panels];
  if (!onlyPanels(from, to) || after <= before) return to.letter;
  return after === before + 1 ? `the ${ordinalWords(after)} panel` : `the ${countWords(after - before)} more panels`;
}
