// What gauges tell by themselves, as data: words are those of `@noonloop/reports`.
import type { GaugeKey } from '@noonloop/weather-io';
import type { Saying } from '../../input/saying.ts';

/** All that gauges alone may show, in the order in which one looks after it. */
export const GAUGE_FAULTS = [
  'sensor-dead',
  'pump-stands',
  'no-flow',
  'night-circulation',
  'sensor-apart',
  'weak-transfer',
  'tank-loss',
] as const;
/** What gauges alone may show. */
export type GaugeFault = (typeof GAUGE_FAULTS)[number];

/** All that speaks for a fault. */
export const GAUGE_EVIDENCE = [
  'stuck',
  'jumps',
  'upside-down',
  'hot-while-standing',
  'runs-without-gain',
  'warm-at-night',
  'warms-in-the-dark',
  'starts-and-stops-moved',
  'starts-off-setting',
  'carries-less',
  'nights-cool-faster',
  'loses-more-than-stated',
] as const;
/** Which sentence speaks for a fault. */
export type GaugeEvidenceCode = (typeof GAUGE_EVIDENCE)[number];

/** One thing that was found. */
export interface GaugeFinding {
  /** Which. */
  readonly fault: GaugeFault;
  /** The gauge, where it is one. */
  readonly gauge: GaugeKey | null;
  /** Hour from which it shows; `null`: from the first day on. [h] */
  readonly since: number | null;
  /** Days or nights on which it shows. */
  readonly days: number;
  /** Of so many on which it could. */
  readonly of: number;
  /** What speaks for it. */
  readonly evidence: Saying<GaugeEvidenceCode>;
}

/** All figures that gauges give. */
export const GAUGE_FIGURES = [
  'start-difference',
  'stop-difference',
  'running-difference',
  'carried',
  'night-time-constant',
  'tank-loss',
  'start-light',
  'hottest-standing',
] as const;
/** A figure that gauges give. */
export type GaugeFigureKey = (typeof GAUGE_FIGURES)[number];

/** A figure read off the log: what a calibration without weather can tell. */
export interface GaugeFigure {
  /** Which. */
  readonly key: GaugeFigureKey;
  /** Median of the days or nights; of `hottest-standing` the highest. [{@link unit}] */
  readonly value: number;
  /** A quarter of the days lies below. [{@link unit}] */
  readonly low: number;
  /** A quarter lies above. [{@link unit}] */
  readonly high: number;
  /** `K`, `h`, `W/K`, `W/m²`, `°C` or `1/h`. */
  readonly unit: string;
  /** Days or nights. */
  readonly count: number;
}

/** All that gauges alone do not tell. */
export const GAUGE_UNTOLD = [
  'no-weather',
  'fault-from-the-start',
  'sensor-that-steers',
  'flow-or-fouling',
  'no-pump',
  'no-bottom',
  'no-room',
  'no-light',
  'no-volume',
  'no-settings',
  'few-nights',
  'few-starts',
  'not-an-inspection',
] as const;
/** Why something is not told. */
export type GaugeUntoldCode = (typeof GAUGE_UNTOLD)[number];

/** What a log says without weather and without a run. */
export interface GaugeCheck {
  /** The first of what was found; `nothing-seen` where nothing was. */
  readonly verdict: GaugeFault | 'nothing-seen';
  /** In the order in which one looks after it. */
  readonly findings: readonly GaugeFinding[];
  /** What can be read off. */
  readonly figures: readonly GaugeFigure[];
  /** What cannot be told, and why. */
  readonly untold: readonly GaugeUntoldCode[];
  /** Days looked at. [d] */
  readonly days: number;
  /** First and last hour of the log. [h] */
  readonly span: readonly [from: number, to: number];
  /** What the reader of the log noted. */
  readonly remarks: readonly string[];
}
