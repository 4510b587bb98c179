import type { Saying } from '../input/saying.ts';

/** Codes of what a run clamped, extrapolated or left out. */
export const NOTICE_CODES = [
  'fluid-extrapolated',
  'fluid-below-freezing',
  'pipe-below-freezing',
  'tank-freezing',
  'runs-by-itself',
  'loop-relief-valve',
  'loop-pressure-low',
  'glycol-thinned',
  'boiling',
  'beam-without-sun',
  'wind-held',
  'motor-overloaded',
  'module-tables-held',
  'pump-points-ended',
  'pump-cannot-lift',
  'draw-held',
  'heater-not-firing',
  'heater-off',
  'heat-pump-points-ended',
  'relief-valve',
  'cooled-at-night',
] as const;

/** Code of something that a run clamped, extrapolated or left out. */
export type NoticeCode = (typeof NOTICE_CODES)[number];

/** Something that was clamped, extrapolated or left out in a run; `noticeWords` of `@noonloop/reports` has its sentence. */
export interface RunNotice extends Saying<NoticeCode> {
  /** How many hours it touched. [h] */
  readonly hours: number;
}
