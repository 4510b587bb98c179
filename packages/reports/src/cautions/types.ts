import type { RunColumns, RunResult } from '@noonloop/sim-core';
import type { UnitKind, Units } from '../units.ts';

/** How soon to look: `danger` to people or the house, `warning` for parts of the system, `note` good to know. */
export type CautionSeverity = 'danger' | 'warning' | 'note';

/** A number that caused a caution. */
export interface CautionNumber {
  /** What it is. */
  readonly label: string;
  /** In SI, °C, hours or 0 to 1. [as {@link CautionNumber.kind} says] */
  readonly value: number;
  /** What kind of number it is. */
  readonly kind: UnitKind;
}

/** One caution. */
export interface Caution {
  /** Stable short code, such as `scald`. */
  readonly code: string;
  /** How soon to look. */
  readonly severity: CautionSeverity;
  /** What was found in a few words, to go on a sentence with: `water at the taps reaches 55 °C`. */
  readonly short: string;
  /** What was found, in plain words with numbers in the report's units; empty for a general caution. */
  readonly finding: string;
  /** What to do, ending in the local code. */
  readonly advice: string;
  /** The numbers that caused it, the decisive one first; empty for a general caution. */
  readonly numbers: readonly CautionNumber[];
  /** Where the threshold comes from. */
  readonly source: string;
}

/** What a rule works with. @internal */
export interface RuleContext {
  readonly result: RunResult;
  readonly columns: RunColumns;
  readonly units: Units;
  /** A quantity in words, in the report's units. */
  readonly show: (value: number, kind: UnitKind) => string;
  /** A temperature in words. */
  readonly degrees: (value: number) => string;
}

/** Looks at a run and warns, or does not. @internal */
export type Rule = (context: RuleContext) => Omit<Caution, 'short'> | null;

/** @internal */
export const hoursNumber = (label: string, value: number): CautionNumber => ({ label, value, kind: 'wholeHours' });
/** @internal */
export const temperatureNumber = (label: string, value: number): CautionNumber => ({
  label,
  value,
  kind: 'temperature',
});

/** Hours of the year in which something holds. @internal */
export function countHours(holds: (hour: number) => boolean): number {
  let hours = 0;
  for (let hour = 0; hour < 8760; hour++) if (holds(hour)) hours++;
  return hours;
}

/** Hour in which a column is highest (sign 1) or lowest (−1) among the hours that count. @internal */
export function extreme(column: Float64Array, sign: 1 | -1, counts: (hour: number) => boolean = () => true): number {
  let best = -1;
  for (let hour = 0; hour < 8760; hour++)
    if (counts(hour) && (best < 0 || sign * column[hour]! > sign * column[best]!)) best = hour;
  return best;
}

/** Sum of a column. @internal */
export const total = (column: Float64Array): number => column.reduce((sum, value) => sum + value, 0);
