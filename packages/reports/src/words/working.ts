// Lines of a working in words: what is computed, the formula in symbols and in numbers, the result, and where the formula is from.
import type { StepCode, StepFact, WorkingStep } from '@noonloop/sim-core';
import { MONTH_NAMES, momentWords } from '../calendar.ts';
import { listWithUnit, withUnit } from '../shown-units.ts';
import type { Units } from '../units.ts';
import type { LineWords } from './line-words.ts';
import { template } from './template.ts';
import { GLYCOL_LINES } from './workings-glycol.ts';
import { LOOP_LINES } from './workings-loop.ts';
import { PANEL_LINES } from './workings-panel.ts';
import { SIZE_LINES } from './workings-size.ts';

/** A line of a working, ready to be read. */
export interface StepInWords {
  /** What is computed. */
  readonly quantity: string;
  /** The formula in symbols. */
  readonly formula: string;
  /** The formula in numbers, each with its unit. */
  readonly numbers: string;
  /** The result with its unit. */
  readonly result: string;
  /** Where the formula comes from. */
  readonly source: string;
}

/** Words of every line. */
export const LINES: Readonly<Record<StepCode, LineWords>> = {
  ...SIZE_LINES,
  ...LOOP_LINES,
  ...GLYCOL_LINES,
  ...PANEL_LINES,
};

/** What codes among the facts stand for. */
const NAMES: Readonly<Record<string, string>> = {
  water: 'IAPWS SR6-08',
  'propylene-glycol': 'Melinder 2010',
  'ethylene-glycol': 'Melinder 2010',
};

/** What the pump takes is electricity, in watts everywhere; all other power of a working is heat. */
const shownUnit = (code: StepCode, unit: string): string =>
  unit === 'W' && !code.startsWith('pump-') ? 'W of heat' : unit;

function numberWords(code: StepCode, fact: StepFact, units: Units): string {
  if (typeof fact === 'string') return NAMES[fact] ?? fact;
  if ('values' in fact) return listWithUnit(fact.values, fact.unit, units);
  if (fact.unit === 'month') return MONTH_NAMES[fact.value - 1]!;
  if (fact.unit === 'hour of the year') return momentWords(fact.value);
  return withUnit(fact.value, shownUnit(code, fact.unit), units);
}

/**
 * A working in words, line by line, for whoever checks it by hand.
 *
 * @param steps - from a sizing, a survey, a yard test or a glycol function
 * @param units - of all numbers; default `metric`
 */
export const workingInWords = (steps: readonly WorkingStep[], units: Units = 'metric'): StepInWords[] =>
  steps.map(({ code, facts, value, unit }) => {
    const { quantity, formula, numbers = '', source } = LINES[code];
    const say = (text: string): string => template(text, facts, (fact) => numberWords(code, fact, units));
    return {
      quantity: say(quantity),
      formula: say(formula),
      numbers: say(numbers),
      result: withUnit(value, shownUnit(code, unit), units),
      source: say(source),
    };
  });
