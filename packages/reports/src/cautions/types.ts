import type { Fact, RunColumns, RunResult } from '@noonloop/sim-core';
import type { CautionCode, SentenceOf, SeverityOf } from '../words/cautions.ts';

export type { CautionCode } from '../words/cautions.ts';

/** How soon to look: `danger` to people or the house, `warning` for parts of the system, `note` good to know. */
export type CautionSeverity = 'danger' | 'warning' | 'note';

/** One caution. */
export interface Caution {
  /** Stable short code, such as `scald`; the guide to cautions lists all. */
  readonly code: CautionCode;
  /** How soon to look. */
  readonly severity: CautionSeverity;
  /** The numbers in its sentences, by name, in SI with °C. */
  readonly facts: Readonly<Record<string, Fact>>;
  /** What was found in a few words, to go on a sentence with: `water at the taps can reach 55 °C`. */
  readonly short: string;
  /** What was found, in plain words with numbers in the report's units; empty for a general caution. */
  readonly finding: string;
  /** Why it matters and what to do, ending in the local code. */
  readonly advice: string;
  /** Who may do it. */
  readonly who: string;
  /** Where the threshold comes from. */
  readonly source: string;
}

/** What a rule finds: which caution, with which numbers, and which of its sentences are said. @internal */
export type Found = {
  [Code in CautionCode]: {
    readonly code: Code;
    readonly severity: SeverityOf<Code>;
    readonly facts: Readonly<Record<string, Fact>>;
    readonly finding: readonly SentenceOf<Code>[];
    readonly advice: readonly SentenceOf<Code>[];
  };
}[CautionCode];

/** What a rule works with. @internal */
export interface RuleContext {
  readonly result: RunResult;
  readonly columns: RunColumns;
}

/** Looks at a run and warns, or does not. @internal */
export type Rule = (context: RuleContext) => Found | null;

const of =
  (unit: string) =>
  (value: number): Fact => ({ value, unit });

/** Facts by their units. @internal */
export const celsius = of('°C');
/** @internal */
export const kelvin = of('K');
/** @internal */
export const hours = of('h');
/** @internal */
export const pascal = of('Pa');
/** @internal */
export const cubicMetres = of('m³');
/** @internal */
export const metres = of('m');
/** @internal */
export const joules = of('J');
/** @internal */
export const share = of('-');
/** Hour of the year, said as day and time. @internal */
export const moment = of('hour of the year');

/** Hours of the year in which something holds. @internal */
export function countHours(holds: (hour: number) => boolean): number {
  let found = 0;
  for (let hour = 0; hour < 8760; hour++) if (holds(hour)) found++;
  return found;
}

/** Hour in which a column is highest (sign 1) or lowest (−1) among the hours that count. @internal */
export function extreme(column: Float64Array, sign: 1 | -1, counts: (hour: number) => boolean = () => true): number {
  let best = -1;
  for (let hour = 0; hour < 8760; hour++)
    if (counts(hour) && (best < 0 || sign * column[hour]! > sign * column[best]!)) best = hour;
  return best;
}

/** Sum of a column. An index is some twenty times as fast as `reduce`, and cautions sum a dozen columns. @internal */
export function total(column: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < column.length; at++) sum += column[at]!;
  return sum;
}
