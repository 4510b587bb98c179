// Whether a log can be set against a run.
import type { GaugeLog } from '@noonloop/weather-io';
import { DesignError, type DesignIssue, quote } from '../../input/errors.ts';
import { MEASURED } from './observe.ts';
import type { Span } from './span-run.ts';

/** Runs begin so long before the first reading, that the tank forgets how it began. Judgement: five times its memory. [h] */
export const SETTLE = 240;
/** Longest log: beyond, a fault that came and went is lost in the mean. Judgement. [d] */
const LONGEST = 150;
/** Faults after which no more are listed. */
const MOST_ISSUES = 50;

const LIMITS = {
  tankTopTemperature: [-30, 270, '°C'],
  flowTemperature: [-50, 400, '°C'],
  returnTemperature: [-50, 400, '°C'],
  loopPressure: [-1e5, 2e7, 'Pa gauge'],
  heaterMeter: [0, 1e15, 'J'],
} as const;

/** Throws with every fault of a log; gives the span that the runs take. @param least - Readings needed. */
export function checkedSpan(log: GaugeLog, least: number): Span {
  const issues: DesignIssue[] = [];
  const fault = (path: string, found: unknown, expected: string, remedy: string) =>
    issues.push({ path, found: typeof found === 'string' ? found : quote(found), expected, remedy });
  const readings: unknown = log?.readings;
  if (!Array.isArray(readings) || readings.length < least) {
    const found = Array.isArray(readings) ? `${readings.length} readings` : quote(readings);
    fault('log.readings', found, `at least ${least} readings`, 'Read the gauges some more times, in sun and at night.');
    throw new DesignError(issues);
  }
  let last = Number.NEGATIVE_INFINITY;
  let meter = Number.NEGATIVE_INFINITY;
  log.readings.forEach((reading, at) => {
    const path = `log.readings[${at}]`;
    const { hour } = reading ?? {};
    if (!(typeof hour === 'number' && hour >= 0 && hour <= 8760)) {
      fault(`${path}.hour`, hour, 'hours of the year from 0 to 8760', 'Count from 00:00 on 1 January, standard time.');
    } else if (hour <= last) {
      fault(`${path}.hour`, hour, 'a later time than in the reading before', 'Sort the readings.');
    } else last = hour;
    for (const key of MEASURED) {
      const value = reading?.[key];
      const [low, high, unit] = LIMITS[key];
      if (value === null || (typeof value === 'number' && value >= low && value <= high)) continue;
      fault(`${path}.${key}`, value, `a number from ${low} to ${high} ${unit}, or null`, 'Correct it, or give null.');
    }
    const runs: unknown = reading?.pumpRuns;
    if (runs !== null && typeof runs !== 'boolean') {
      fault(`${path}.pumpRuns`, runs, 'true, false or null', 'Give null where nobody looked.');
    }
    const counted = reading?.heaterMeter;
    if (typeof counted === 'number') {
      if (counted < meter) {
        fault(`${path}.heaterMeter`, counted, 'no less than before: a meter counts up', 'Begin a new log.');
      }
      meter = counted;
    }
  });
  const first = log.readings[0]?.hour;
  if (issues.length === 0 && last - first! > 24 * LONGEST) {
    const days = `${Math.round((last - first!) / 24)} days`;
    fault('log.readings', days, `at most ${LONGEST} days from first to last`, 'Cut the log to the weeks in question.');
  }
  if (issues.length > 0) throw new DesignError(issues.slice(0, MOST_ISSUES));
  const from = Math.max(0, Math.trunc(first!) - SETTLE);
  return { from, to: Math.min(8760, Math.max(from + 3, Math.ceil(last) + 1)) };
}

/** Most numbers that are weighed at once: the work grows with their cube. Judgement. */
const MOST_NUMBERS = 300;

/** A log with readings left out evenly until it is small enough. */
export function thinned(log: GaugeLog): { readonly log: GaugeLog; readonly every: number } {
  const count = log.readings.reduce((sum, row) => sum + MEASURED.filter((key) => row[key] !== null).length, 0);
  const every = Math.max(1, Math.ceil(count / MOST_NUMBERS));
  return { log: every === 1 ? log : { ...log, readings: log.readings.filter((_, at) => at % every === 0) }, every };
}
