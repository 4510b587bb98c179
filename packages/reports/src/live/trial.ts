import type { RunResult, SystemInput } from '@noonloop/sim-core';
import type { MoneyOptions } from '../money/index.ts';
import type { LiveFault } from './types.ts';

/** One design run, with its prices. */
export interface Trial {
  readonly input: SystemInput;
  readonly result: RunResult;
  readonly money: MoneyOptions | null;
  /** What is wrong with the prices. */
  readonly faults: readonly LiveFault[];
}
