// The band of a healthy system at each number of a log.
import type { GaugeLog } from '@noonloop/weather-io';
import type { CheckedNumber } from './check-types.ts';
import { covariance, timeCorrelation } from './expectation.ts';
import type { Explanation } from './explanation.ts';
import type { Library } from './library.ts';
import type { MeasuredKey, Observation, Observations } from './observe.ts';

/** Band of 95 % of a normal distribution, in standard deviations. */
const BAND = 1.96;

/** Every number beside its band. */
export function bandsOf(
  log: GaugeLog,
  { numbers }: Observations,
  library: Library,
  { healthy, likeliest }: { readonly healthy: Explanation; readonly likeliest: Explanation },
): CheckedNumber[] {
  const { expectation } = healthy;
  // The band is of a clean reading: what is taken for a slip must not widen it.
  const clean = { ...expectation, reading: expectation.gauge };
  const matrix = covariance(clean, numbers, timeCorrelation(numbers), library.uncertainty.model);
  return numbers.map((number, i) => {
    const { at, key, hour, value } = number;
    const expected = expectation.mean[i]!;
    const deviation = Math.sqrt(matrix.get(i, i));
    const [least, most] = reach(number, library);
    const own = BAND * Math.hypot(Math.sqrt(expectation.gauge[i]!), contact(key, library));
    const low = Math.min(expected, Math.max(expected - BAND * deviation, least - own));
    const high = Math.max(expected, Math.min(expected + BAND * deviation, most + own));
    return {
      at,
      line: log.readings[at]!.line,
      gauge: key,
      hour,
      found: value,
      expected,
      low: key === 'heaterMeter' ? Math.max(0, low) : low,
      high,
      deviation: (value - expected) / deviation,
      outside: value < low || value > high,
      slip: likeliest.slips[i] === 1,
    };
  });
}

/** What a gauge may be off in all its readings. [K, Pa or J] */
const contact = (key: MeasuredKey, { uncertainty }: Library): number =>
  key === 'heaterMeter' ? 0 : key === 'loopPressure' ? uncertainty.fillPressure : uncertainty.thermometer;

/**
 * Least and most that any healthy run shows in the weeks of the log: a normal distribution about a run that is near boiling, or
 * about a cold pipe, reaches where no system does.
 */
function reach({ key, hour, since }: Observation, { healthy, span }: Library): [least: number, most: number] {
  const columns = [healthy.base, ...healthy.movedBy, ...healthy.days].map((trace) => trace[key]);
  if (key !== 'heaterMeter') return [smallest(columns), largest(columns)];
  // A meter counts no faster than its fastest hour.
  const perHour = largest(
    columns.map((column) => column.map((value, at) => (at === 0 ? value : value - column[at - 1]!))),
  );
  return [0, perHour * Math.min(Math.ceil(hour - since) + 1, span.to - span.from)];
}

const smallest = (columns: readonly Float64Array[]): number =>
  columns.reduce((least, column) => column.reduce((a, b) => Math.min(a, b), least), Number.POSITIVE_INFINITY);
const largest = (columns: readonly Float64Array[]): number =>
  columns.reduce((most, column) => column.reduce((a, b) => Math.max(a, b), most), Number.NEGATIVE_INFINITY);
