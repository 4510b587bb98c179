/** The valve that leads the loop's fluid to one tank or the other. */
import type { ControlDesign, SecondTankDesign } from '../design/design.ts';

/** What decides where the fluid goes. */
export interface Valve {
  /** Top of the first tank from which it has had enough, and under which it is charged again. [°C] */
  readonly divertAt: number;
  readonly resumeAt: number;
  /** High limit and its release, of the second tank. [°C] */
  readonly limit: number;
  readonly release: number;
  /** Whether the first has had enough, and the second is at its limit. */
  full: boolean;
  secondFull: boolean;
  /** Time since it turned last. [s] */
  since: number;
}

/** Prepares the valve, open to the first tank. */
export function compileValve({ divertAt }: SecondTankDesign, control: ControlDesign): Valve {
  const { highLimit, highLimitHysteresis } = control;
  const limit = highLimit ?? Number.POSITIVE_INFINITY;
  return {
    divertAt,
    resumeAt: divertAt - highLimitHysteresis,
    limit,
    release: limit - highLimitHysteresis,
    full: false,
    secondFull: false,
    since: 0,
  };
}
