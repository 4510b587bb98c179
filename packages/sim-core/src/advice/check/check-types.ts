// What a checked log says, as data: words are those of `@noonloop/reports`.
import type { Saying } from '../../input/saying.ts';
import type { CauseCode, FormCode } from './causes.ts';
import type { DoubtCode } from './doubts.ts';
import type { Evidence } from './evidence.ts';
import type { NextTest } from './next-test.ts';
import type { MeasuredKey } from './observe.ts';

/** One number of the log beside what a healthy system would show. */
export interface CheckedNumber {
  /** Place in `log.readings`. */
  readonly at: number;
  /** Line in the file; `null` where there is none. */
  readonly line: number | null;
  /** Which gauge; for the heater's meter what it counted since its reading before. */
  readonly gauge: MeasuredKey;
  /** Hours from 00:00 on 1 January. [h] */
  readonly hour: number;
  /** As read, or as it is read after a doubt about its unit or its pipe. [°C, Pa or J] */
  readonly found: number;
  /** What a healthy system would show. [°C, Pa or J] */
  readonly expected: number;
  /** Below it fall 2.5 % of the readings of healthy systems; never beyond what a healthy system can reach. [°C, Pa or J] */
  readonly low: number;
  /** Above it fall 2.5 %. [°C, Pa or J] */
  readonly high: number;
  /** Found less expected, in standard deviations. [-] */
  readonly deviation: number;
  /** Whether it lies outside the band. */
  readonly outside: boolean;
  /** Whether the likeliest explanation takes it for a slip of the pen. */
  readonly slip: boolean;
}

/** A cause with its weight. */
export interface RankedCause {
  /** Which. */
  readonly cause: CauseCode;
  /** Share of belief after the readings, 0 to 1; all causes add up to 1. [-] */
  readonly weight: number;
  /** Form and severity that fit best. */
  readonly form: Saying<FormCode>;
  /** Hour from which it fits best; `null`: all through the log. [h] */
  readonly since: number | null;
  /** The gauge, for `sensor-wrong`. */
  readonly gauge: MeasuredKey | null;
  /** What speaks for it, the strongest first; empty where it fits the readings together only. */
  readonly evidence: readonly Evidence[];
}

/** All reasons of a verdict. */
export const REASONS = ['leads', 'two-causes', 'no-cause-fits', 'fits-too-well', 'weather-of-another-year'] as const;
/** Why the verdict is what it is. */
export type ReasonCode = (typeof REASONS)[number];

/** All cautions of a checked log. */
export const CHECK_CAUTIONS = [
  'not-an-inspection',
  'loop-without-flow',
  'lost-fluid-and-frost',
  'vessel-and-relief',
  'valve-too-high',
  'drain-and-descale',
  'thermostat-and-limits',
] as const;
/** What can hurt someone. */
export type CheckCautionCode = (typeof CHECK_CAUTIONS)[number];

/** All notes of a checked log. */
export const CHECK_NOTES = [
  'runs-compared',
  'readings-left-out',
  'begins-in-january',
  'no-pressure',
  'no-pipes',
  'no-looks',
  'no-meter',
  'make-up-hides-leaks',
  'never-seen',
] as const;
/** What was assumed, left out or not to be told from these gauges. */
export type CheckNoteCode = (typeof CHECK_NOTES)[number];

/** What a log says about a system. */
export interface LogCheck {
  /** The likeliest cause where it leads clearly and explains the readings; else `cannot-tell`. */
  readonly verdict: CauseCode | 'cannot-tell';
  /** Why. */
  readonly reason: ReasonCode;
  /** Slips in how the log was written down, to be looked at first; the rest holds for a log that is set right accordingly. */
  readonly doubts: readonly Saying<DoubtCode>[];
  /** Likeliest first; those with a weight under 0.5 % are left out. */
  readonly causes: readonly RankedCause[];
  /** Causes that these gauges could not show in those weeks, whatever they read; they were not weighed. */
  readonly unseen: readonly CauseCode[];
  /** Every number beside its band. */
  readonly numbers: readonly CheckedNumber[];
  /** The cheap test that would tell the likely causes apart; `null` where there is nothing to tell, or no log to tell it by. */
  readonly next: NextTest | null;
  /** Mean square of the deviations that the likeliest cause leaves, about 1 where it explains them. [-] */
  readonly fit: number;
  /** What can hurt someone. */
  readonly cautions: readonly CheckCautionCode[];
  /** What was assumed, left out or not to be told from these gauges. */
  readonly notes: readonly Saying<CheckNoteCode>[];
  /** What the reader of the notebook noted, and the notebook's own remarks, as they stand there. */
  readonly remarks: readonly string[];
}
