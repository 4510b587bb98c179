// Sentences with numbers in them: `{name}` stands for a fact, shown in the units of the report with the digits that people can use.
import type { Fact, Saying } from '@noonloop/sim-core';
import { MONTH_NAMES, MONTH_STARTS, momentWords, monthOfDay } from '../calendar.ts';
import { formatDesignValue } from '../quantities.ts';
import { withUnit } from '../shown-units.ts';
import { displayUnit, formatNumber, toDisplay, type UnitKind, type Units } from '../units.ts';
import { template } from './template.ts';

/** Sentences by code. */
export type Words<Code extends string> = Readonly<Record<Code, string>>;

/** Names of what facts name by code, such as gauges. */
type Names = Readonly<Record<string, string>>;

/** SI units of facts, and what they are in reports. */
const KINDS: Readonly<Record<string, UnitKind>> = {
  '°C': 'temperature',
  K: 'temperatureDifference',
  Pa: 'pressure',
  J: 'energy',
  m: 'length',
  'm²': 'area',
  'm³': 'volume',
  'm³/s': 'flow',
  kg: 'mass',
  W: 'power',
  'W electric': 'electricPower',
  'W/m²': 'irradiance',
  h: 'wholeHours',
};

/** What a small number needs more than its kind's digits, so that it does not read 0. */
function digitsFor(shown: number, least: number): number {
  const size = Math.abs(shown);
  if (size === 0 || size >= 9.5) return least;
  return Math.max(least, size >= 0.95 ? 1 : 2);
}

/** Units that are the same in both systems, and how many digits are of use. */
const PLAIN: Readonly<Record<string, (value: number) => string>> = {
  '-': (value) => `${formatNumber(100 * value, digitsFor(100 * value, 0))} %`,
  '1': (value) => formatNumber(value, digitsFor(value, 0)).replace(/\.0+$/, ''),
  min: (value) => counted(value, 'minute'),
  days: (value) => counted(value, 'day'),
  months: (value) => counted(value, 'month'),
  years: (value) => counted(value, 'year'),
  '°': (value) => `${formatNumber(value, 0)}°`,
  year: (value) => String(value),
  'day of the year': (value) => {
    const month = monthOfDay(value);
    return `${value - MONTH_STARTS[month]! + 1} ${MONTH_NAMES[month]}`;
  },
  s: (value) => `${formatNumber(value, 0)} s`,
  'hour of the year': momentWords,
};

const counted = (value: number, word: string): string => {
  const text = formatNumber(value, value < 9.5 ? 1 : 0).replace(/\.0$/, '');
  return `${text} ${word}${text === '1' ? '' : 's'}`;
};

/** From here lengths are pipes and heights, whole in metres or feet. [m] */
const LONG = 2;
/** Pipes are slower, winds worth a word faster. [m/s] */
const WIND = 2;

/** A fact in words. A whole number of the metric unit stays whole; others get the digits that their gauges bear. */
export function factWords(fact: Fact, units: Units, names: Names = {}): string {
  if (typeof fact === 'string') return names[fact] ?? fact;
  const { value, unit } = fact;
  const plain = PLAIN[unit];
  if (plain !== undefined) return plain(value);
  // Lime and light: grams a cubic metre as CaCO3, 100.09 g/mol.
  if (unit === 'mol/m³')
    return units === 'us' ? `${formatNumber(100.09 * value, 0)} mg/L as CaCO3` : `${formatNumber(value, 1)} mmol/L`;
  const kind = KINDS[unit];
  if (unit === 'kg/m²') return withUnit(value, unit, units, 2);
  if (unit === 'm/s') return withUnit(value, value < WIND ? unit : 'm/s wind', units, 2);
  if (unit === 'W electric' && Math.abs(value) < 1000) return withUnit(value, 'W', units, 2);
  if (kind === undefined || (kind === 'length' && Math.abs(value) < LONG))
    return formatDesignValue(value, unit, '', units);
  if (unit === 'm³' && units === 'metric' && Math.abs(value) >= 2) return `${formatNumber(value, 0)} m³`;
  const shown = toDisplay(value, kind, units);
  const { symbol } = displayUnit(kind, units);
  const digits =
    kind === 'temperature' || kind === 'wholeHours'
      ? 0
      : kind === 'temperatureDifference'
        ? Math.min(1, digitsFor(shown, 0))
        : digitsFor(shown, kind === 'flow' ? 1 : 0);
  const text = formatNumber(shown, digits);
  return `${text.includes('.') ? text.replace(/\.?0+$/, '') : text} ${symbol}`;
}

/** A sentence with its facts. */
export const fill = (sentence: string, facts: Saying['facts'], units: Units, names: Names = {}): string =>
  template(sentence, facts, (fact) => factWords(fact, units, names));

/** The sentence of a saying. */
export const sayingWords = <Code extends string>(
  { code, facts }: Saying<Code>,
  words: Words<Code>,
  units: Units,
  names: Names = {},
): string => fill(words[code], facts, units, names);
