// What a yard test says, as data: words are those of `@noonloop/reports`.
import type { Saying } from '../../input/saying.ts';
import type { WorkingStep } from '../../input/working.ts';
import type { Band } from './band.ts';
import type { RatedCollector } from './rate.ts';

/** Where a coefficient of the line comes from. */
export type YardOrigin = 'test' | 'known' | 'both' | 'assumed' | 'cannot tell';

/** All remedies of a coefficient that cannot be told. */
export const YARD_REMEDIES = [
  'full-sun-near-air',
  'warm-or-covered',
  'spread-or-covered',
  'sun-meter-against-glass',
] as const;
/** What the readings would have to be like. */
export type YardRemedyCode = (typeof YARD_REMEDIES)[number];

/** All notes of a yard test. */
export const YARD_NOTES = [
  'beyond-glass',
  'against-known',
  'small-rise',
  'off-the-line',
  'no-spare-readings',
  'scatter',
  'all-covered',
  'oblique-light',
  'never-feed-a-dry-panel',
] as const;
/** What a reader should know before trusting a yard test. */
export type YardNoteCode = (typeof YARD_NOTES)[number];

/** A coefficient of the line, with the limits that it stays within in about nine cases of ten. */
export interface YardCoefficient {
  /** `null` where the readings cannot tell it. */
  readonly band: Band | null;
  /** Readings, what was known before, both, a common value, or nothing. */
  readonly from: YardOrigin;
  /** What the readings would have to be like, where they cannot tell; else `null`. */
  readonly remedy: YardRemedyCode | null;
}

/** One reading on the line. */
export interface YardPoint {
  /** Heat into the fluid per area. [W/m²] */
  readonly flux: number;
  /** (t_m − t_a)/G; `null` with the panel covered. [m²·K/W] */
  readonly reducedTemperature: number | null;
  /** η; `null` with the panel covered. [-] */
  readonly efficiency: number | null;
  /** Limits of η in nine cases of ten, from what differs between readings; of the flux with the panel covered. */
  readonly error: number;
  /** Distance from the line in standard deviations; beyond 3 the reading is doubtful. [-] */
  readonly residual: number;
}

/** A panel's line from readings in a yard. */
export interface YardRating {
  /** For `array.collector` of `defineSystem`; `null` where eta0 or a1 cannot be told. */
  readonly collector: RatedCollector | null;
  /** Zero-loss efficiency at normal incidence. [-] */
  readonly eta0: YardCoefficient;
  /** [W/(m²·K)] */
  readonly a1: YardCoefficient;
  /** [W/(m²·K²)] */
  readonly a2: YardCoefficient;
  /** The readings, in order. */
  readonly points: readonly YardPoint[];
  /**
   * Σ (residual/deviation)² over the points less the coefficients that they told; near 1 when the tools are as good as said;
   * `null` without spare points. [-]
   */
  readonly scatter: number | null;
  /** The working. */
  readonly steps: readonly WorkingStep[];
  /** What a reader should know before trusting it. */
  readonly notes: readonly Saying<YardNoteCode>[];
}
