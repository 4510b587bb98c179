/** In which months the sun alone makes the hot water, in words. */
import { MONTH_NAMES } from '../calendar.ts';
import type { Money } from '../money/types.ts';
import type { Summary } from '../summary.ts';
import { formatNumber, type Units } from '../units.ts';
import { joinWords } from './join.ts';
import { capital, fuelWords } from './words.ts';

/** Spans of months that follow each other; the year is a ring, so November to February is one. @param months - 0 to 11, ascending */
function monthSpans(months: readonly number[]): [from: number, to: number][] {
  const spans: [number, number][] = [];
  for (const month of months) {
    const last = spans.at(-1);
    if (last !== undefined && last[1] === month - 1) last[1] = month;
    else spans.push([month, month]);
  }
  if (spans.length > 1 && spans[0]![0] === 0 && spans.at(-1)![1] === 11) spans[0]![0] = spans.pop()![0];
  return spans;
}

const spanWords = ([from, to]: readonly [number, number]): string =>
  from === to
    ? `in ${MONTH_NAMES[from]}`
    : (from + 1) % 12 === to
      ? `in ${MONTH_NAMES[from]} and ${MONTH_NAMES[to]}`
      : `from ${MONTH_NAMES[from]} to ${MONTH_NAMES[to]}`;

/** `from April to June and in September`. @param months - 0 to 11, ascending; at least one */
export function monthsInWords(months: readonly number[]): string {
  return joinWords(monthSpans(months).map(spanWords));
}

/** `From April to September the sun alone makes the hot water.`, or which month comes nearest; `null` where none is asked for. */
export function describeSeason({ months, sunAloneMonths }: Summary): string | null {
  if (sunAloneMonths.length === 12) return 'The sun alone makes the hot water all year.';
  if (sunAloneMonths.length > 0) return `${capital(monthsInWords(sunAloneMonths))} the sun alone makes the hot water.`;
  const shares = months.map(({ sunShare }) => sunShare ?? -1);
  const best = shares.indexOf(Math.max(...shares));
  if (shares[best]! < 0) return null;
  return `In no month does the sun alone make the hot water; it comes nearest in ${MONTH_NAMES[best]}, with ${formatNumber(100 * shares[best]!, 0)} % of it.`;
}

/** Share of the burner's heat from which the heater's own loss is the larger part of it; by definition. [-] */
const MOST = 0.5;

/**
 * What the heater still burns in the months in which the sun alone suffices: switched off for them it would burn nothing. `null`
 * where there is no such month, or its own loss is not most of what it burns then.
 *
 * @param units - of fuel without prices
 * @param money - of the same run, for the unit of its bill
 */
export function describeStandby(summary: Summary, units: Units, money: Money | null = null): string | null {
  const { months, sunAloneMonths, design } = summary;
  const sum = (key: 'heaterFuel' | 'heaterHeat' | 'heaterLoss'): number =>
    sunAloneMonths.reduce((total, month) => total + months[month]![key], 0);
  const fuel = sum('heaterFuel');
  if (!(fuel > 0) || sum('heaterLoss') < MOST * sum('heaterHeat')) return null;
  const ban =
    design.heater.elementHeight > 0 ? '' : ' Off, it kills no germs: ask what the local code wants before you do so.';
  const { number, unit } = fuelWords(fuel, { money, summary }, units);
  return `Most of what the heater takes then, about ${number} ${unit}, keeps the heater itself warm; switched off for these months it would save that too.${ban}`;
}
