// A log of frequent readings as columns.
import type { GaugeKey, GaugeLog, GaugeReading } from '@noonloop/weather-io';
import { DesignError, type DesignIssue, quote } from '../../input/errors.ts';
import { percentile } from '../../study/percentiles.ts';

/** Columns of a log; NaN where nothing was read. Shape [n]. */
export interface Series {
  /** From 00:00 on 1 January, standard time. [h] */
  readonly hour: Float64Array;
  /** [°C] */
  readonly collector: Float64Array;
  /** Bottom of the tank, or its top where that is all there is. [°C] */
  readonly bottom: Float64Array;
  /** Top of the tank, or its bottom. [°C] */
  readonly top: Float64Array;
  /** [°C] */
  readonly room: Float64Array;
  /** [°C] */
  readonly air: Float64Array;
  /** [W/m²] */
  readonly light: Float64Array;
  /** Share of full speed, 1 where only "runs" is known. [-] */
  readonly speed: Float64Array;
  /** Which gauges were read at all. */
  readonly has: (key: GaugeKey) => boolean;
}

/** Readings farther apart than this do not follow each other. Judgement. [h] */
export const GAP = 0.55;
/** Least length. Judgement: a week has clear and dull days. [d] */
const LEAST_DAYS = 7;
/** Faults after which no more are listed. */
const MOST_ISSUES = 50;

const LIMITS = {
  collectorTemperature: [-60, 400, '°C'],
  tankBottomTemperature: [-30, 270, '°C'],
  tankTopTemperature: [-30, 270, '°C'],
  roomTemperature: [-40, 160, '°C'],
  airTemperature: [-70, 160, '°C'],
  light: [0, 2000, 'W/m²'],
  pumpSpeed: [0, 1, ''],
} as const satisfies Partial<Record<GaugeKey, readonly [number, number, string]>>;
type ColumnKey = keyof typeof LIMITS;
const KEYS = Object.keys(LIMITS) as ColumnKey[];

/** Takes a log apart. @throws {@link DesignError} with every fault of it. */
export function seriesOf(log: GaugeLog): Series {
  const readings = readingsOf(log);
  const has = (key: GaugeKey) => readings.some((row) => typeof row[key] === 'number' || typeof row[key] === 'boolean');
  const columns = Object.fromEntries(KEYS.map((key) => [key, columnOf(readings, key)])) as Record<
    ColumnKey,
    Float64Array
  >;
  requireGauges(columns, readings);
  const { tankBottomTemperature: low, tankTopTemperature: high } = columns;
  const either = (one: Float64Array, other: Float64Array) =>
    one.map((value, at) => (Number.isNaN(value) ? other[at]! : value));
  const speed = columns.pumpSpeed.map((value, at) => {
    const { pumpRuns } = readings[at]!;
    return Number.isNaN(value) && typeof pumpRuns === 'boolean' ? Number(pumpRuns) : value;
  });
  return {
    hour: columnOf(readings, 'hour'),
    collector: columns.collectorTemperature,
    bottom: has('tankBottomTemperature') ? low : high,
    top: has('tankTopTemperature') ? either(high, low) : low,
    room: columns.roomTemperature,
    air: columns.airTemperature,
    light: columns.light,
    speed,
    has,
  };
}

/** One gauge's readings. An index is ten times as fast as `Float64Array.from`, which asks an iterator for each. Shape [n]. */
function columnOf(readings: readonly GaugeReading[], key: ColumnKey | 'hour'): Float64Array {
  const column = new Float64Array(readings.length);
  for (let at = 0; at < column.length; at++) column[at] = readings[at]![key] ?? Number.NaN;
  return column;
}

/** The readings, their times and values looked at. */
function readingsOf(log: GaugeLog): readonly GaugeReading[] {
  const readings: unknown = log?.readings;
  const issues: DesignIssue[] = [];
  const fault = (path: string, found: unknown, expected: string, remedy: string) =>
    issues.push({ path: `log.readings${path}`, found: quote(found), expected, remedy });
  if (!Array.isArray(readings) || readings.length === 0) {
    fault('', readings, 'a list of readings', 'Read the log with readLog.');
    throw new DesignError(issues);
  }
  let last = -1;
  (readings as readonly GaugeReading[]).forEach((row, at) => {
    const hour: unknown = row?.hour;
    if (typeof hour !== 'number' || !(hour >= 0 && hour <= 8760) || hour <= last)
      fault(`[${at}].hour`, hour, 'rising hours of the year from 0 to 8760', 'Sort the readings.');
    else last = hour;
    for (const key of KEYS) {
      const value: unknown = row?.[key] ?? null;
      if (value === null) continue;
      const [least, most, unit] = LIMITS[key];
      if (typeof value === 'number' && value >= least && value <= most) continue;
      const expected = `a number from ${least} to ${most}${unit === '' ? '' : ` ${unit}`}, or null`;
      fault(`[${at}].${key}`, value, expected, 'Correct it, or give null.');
    }
  });
  if (issues.length > 0) throw new DesignError(issues.slice(0, MOST_ISSUES));
  return readings;
}

function requireGauges(columns: Record<ColumnKey, Float64Array>, readings: readonly GaugeReading[]): void {
  const issues: DesignIssue[] = [];
  const fault = (found: string, expected: string, remedy: string) =>
    issues.push({ path: 'log.readings', found, expected, remedy });
  const read = (key: ColumnKey) => columns[key].some((value) => !Number.isNaN(value));
  if (!read('collectorTemperature'))
    fault('no collectorTemperature', 'a sensor of the collector', 'Give it, or check the log with weather.');
  if (!read('tankBottomTemperature') && !read('tankTopTemperature'))
    fault('no temperature of the tank', 'tankBottomTemperature or tankTopTemperature', 'Give one of them.');
  const hours = readings.map(({ hour }) => hour);
  const steps = hours
    .slice(1)
    .map((hour, at) => hour - hours[at]!)
    .sort((a, b) => a - b);
  const step = steps.length === 0 ? Number.POSITIVE_INFINITY : percentile(steps, 0.5);
  if (!(step <= 0.5))
    fault(
      `readings ${Number.isFinite(step) ? `${Number(step.toPrecision(2))} h` : 'none'} apart`,
      'readings every 30 minutes or closer',
      'Take a data logger; a notebook by hand is checked with weather.',
    );
  const days = (hours.at(-1)! - hours[0]!) / 24;
  if (days < LEAST_DAYS)
    fault(`${days.toFixed(1)} days`, `at least ${LEAST_DAYS} days`, 'Let the logger run on, in sun and at night.');
  if (issues.length > 0) throw new DesignError(issues);
}
