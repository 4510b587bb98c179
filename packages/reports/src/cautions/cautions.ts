/** What could hurt someone or break something, in plain words, from the numbers of a run. Never a design rule. */
import type { RunResult } from '@noonloop/sim-core';
import { formatQuantity, type Units } from '../units.ts';
import { GENERAL } from './general.ts';
import { boiling, fluidLimit, freezing, loopRelief, lowPressure, thinning } from './loop.ts';
import { hotTank, relief, tankRating } from './tank.ts';
import type { Caution, CautionSeverity, Rule, RuleContext } from './types.ts';
import { heaterSetting, lukewarm, scald, shortfall } from './water.ts';

/** In this order among equals. */
const RULES = [
  scald,
  relief,
  loopRelief,
  freezing,
  hotTank,
  heaterSetting,
  tankRating,
  fluidLimit,
  boiling,
  lowPressure,
  thinning,
  lukewarm,
  shortfall,
];

const shorten = (finding: string): string => finding.charAt(0).toLowerCase() + finding.slice(1).replace(/\.$/, '');

const GRAVITY: Record<CautionSeverity, number> = { danger: 0, warning: 1, note: 2 };

/**
 * Cautions of a run, the gravest first, then the general ones that hold for every system.
 *
 * @param result - a run
 * @param units - of the numbers in the texts
 */
export function cautions(result: RunResult, units: Units = 'metric'): Caution[] {
  const context: RuleContext = {
    result,
    columns: result.columns,
    units,
    show: (value, kind) => formatQuantity(value, kind, units),
    degrees: (value) => formatQuantity(value, 'temperature', units),
  };
  const apply = (rules: readonly Rule[]): Caution[] =>
    rules
      .map((rule) => rule(context))
      .filter((caution) => caution !== null)
      .map((caution) => ({ ...caution, short: shorten(caution.finding) }));
  return [...apply(RULES).sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]), ...apply(GENERAL)];
}

/** How many cautions of each severity. */
export interface CautionCount {
  /** Could hurt someone or the house. */
  readonly danger: number;
  /** Could break a part of the system. */
  readonly warning: number;
  /** Good to know. */
  readonly note: number;
  /** Of dangers and warnings, `2 dangers, 3 cautions`; `No danger found` where there is neither, `No danger found, 1 caution` without a danger. */
  readonly words: string;
}

/** Counts cautions by severity. @param list - from {@link cautions}, or all groups of a report */
export function countCautions(list: readonly { readonly severity: CautionSeverity }[]): CautionCount {
  const count = (severity: CautionSeverity): number => list.filter((one) => one.severity === severity).length;
  const [danger, warning, note] = [count('danger'), count('warning'), count('note')];
  const many = (number: number, word: string): string => `${number} ${word}${number === 1 ? '' : 's'}`;
  const words = [
    danger > 0 ? many(danger, 'danger') : 'No danger found',
    ...(warning > 0 ? [many(warning, 'caution')] : []),
  ];
  return { danger, warning, note, words: words.join(', ') };
}
