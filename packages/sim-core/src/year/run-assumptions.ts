/** What a run takes for granted about its weather, by code; the sentences are in `@noonloop/reports`. */
import { SKY_BASES } from '../physics/collector/night-sky.ts';

/** All codes. */
export const RUN_ASSUMPTION_CODES = [
  ...SKY_BASES,
  'albedo-of-weather',
  'albedo-of-design',
  'no-snow-depth',
  'no-wind',
  'wind-along-collectors',
] as const;

/** One of {@link RUN_ASSUMPTION_CODES}. */
export type RunAssumptionCode = (typeof RUN_ASSUMPTION_CODES)[number];
