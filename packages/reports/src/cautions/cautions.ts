/** What could hurt someone or break something, in plain words, from the numbers of a run. Never a design rule. */
import type { RunResult } from '@noonloop/sim-core';
import { formatQuantity, type Units } from '../units.ts';
import { GENERAL_CAUTIONS } from './general.ts';
import { fluidLimit, freezing } from './loop.ts';
import { hotTank, relief, tankRating } from './tank.ts';
import type { Caution, CautionSeverity, RuleContext } from './types.ts';
import { heaterSetting, lukewarm, scald, shortfall } from './water.ts';

/** In this order among equals. */
const RULES = [scald, relief, freezing, hotTank, heaterSetting, tankRating, fluidLimit, lukewarm, shortfall];

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
  const found = RULES.map((rule) => rule(context)).filter((caution) => caution !== null);
  return [...found.sort((a, b) => GRAVITY[a.severity] - GRAVITY[b.severity]), ...GENERAL_CAUTIONS];
}
