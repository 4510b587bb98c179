// Files to fill in, in metric and in US units. All numbers are invented.
import { CANDIDATES, SURVEY, YARD_TEST } from './buying.ts';
import { DESIGN, LIMITS, STUDY } from './design.ts';
import { LOG, METER, METER_TABLE, PRICES, READINGS } from './records.ts';
import { LAYOUT, MONTHS } from './weather.ts';

/** Texts by kind: metric, US units. */
export const DRAFTS = {
  design: DESIGN,
  months: MONTHS,
  layout: LAYOUT,
  meter: METER,
  log: LOG,
  prices: PRICES,
  survey: SURVEY,
  'yard-test': YARD_TEST,
  collectors: CANDIDATES,
  sizing: LIMITS,
  study: STUDY,
} as const satisfies Readonly<Record<string, readonly [metric: string, us: string]>>;

/** Tables that the drafts of `log` and `meter` name. */
export const TABLES = {
  readings: READINGS,
  'meter-table': METER_TABLE,
} as const;
