/** What could hurt someone or break something, in plain words, from the numbers of a run. Never a design rule. */
import type { RunResult } from '@noonloop/sim-core';
import type { Units } from '../units.ts';
import type { CautionText } from '../words/caution-text.ts';
import { CAUTION_WORDS, LOCAL_CODE } from '../words/cautions.ts';
import { fill } from '../words/fill.ts';
import { arrayAway } from './array.ts';
import { backflow, bonding, flue, roof, steam, trades } from './general.ts';
import { coilSmall, fluidLimit, freezing, givenBack, heldInSun, poisonousFluid, thinning } from './loop.ts';
import { mainsElsewhere } from './mains.ts';
import { boiling, loopPressureHigh, loopRelief, lowPressure, steamReach, vesselSmall } from './pressure.ts';
import { directLoop, drainSlope, moduleVoltage, refillSteam } from './roofs.ts';
import { hotTank, hydrogen, relief, tankIce, tankRating, tankSwell } from './tank.ts';
import type { Caution, CautionSeverity, Found, Rule, RuleContext } from './types.ts';
import { coolWater, heaterOff, heaterSetting, hotInlet, longPipe, lukewarm, ring, scald, shortfall } from './water.ts';

/** In this order among equals; those that hold for every system come last. */
const RULES: readonly Rule[] = [
  scald,
  relief,
  loopRelief,
  freezing,
  hotTank,
  tankIce,
  poisonousFluid,
  moduleVoltage,
  directLoop,
  refillSteam,
  heaterSetting,
  loopPressureHigh,
  vesselSmall,
  steamReach,
  tankRating,
  fluidLimit,
  boiling,
  heldInSun,
  lowPressure,
  thinning,
  arrayAway,
  heaterOff,
  coolWater,
  ring,
  longPipe,
  lukewarm,
  hotInlet,
  shortfall,
  coilSmall,
  givenBack,
  mainsElsewhere,
  tankSwell,
  drainSlope,
  roof,
  trades,
  flue,
  steam,
  bonding,
  backflow,
  hydrogen,
];

const GRAVITY: Record<CautionSeverity, number> = { danger: 0, warning: 1, note: 2 };

function inWords({ code, severity, facts, finding, advice }: Found, units: Units): Caution {
  const words: CautionText = CAUTION_WORDS[code];
  const say = (keys: readonly string[]): string => keys.map((key) => fill(words.says[key]!, facts, units)).join(' ');
  const advised = say(advice);
  return {
    code,
    severity,
    facts,
    short: fill(words.short, facts, units),
    finding: say(finding),
    advice: advised.includes('local code') ? advised : `${advised} ${LOCAL_CODE}`,
    who: words.who,
    source: fill(words.source, facts, units),
  };
}

/**
 * Cautions of a run, the gravest first, those that hold for every system last.
 *
 * @param result - a run
 * @param units - of the numbers in the texts
 */
export function cautions(result: RunResult, units: Units = 'metric'): Caution[] {
  const context: RuleContext = { result, columns: result.columns };
  return RULES.map((rule) => rule(context))
    .filter((found) => found !== null)
    .sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity])
    .map((found) => inWords(found, units));
}

/** Severities as readers see them. */
export const SEVERITY_WORDS: Readonly<Record<CautionSeverity, string>> = {
  danger: 'Danger',
  warning: 'Caution',
  note: 'Note',
};

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
