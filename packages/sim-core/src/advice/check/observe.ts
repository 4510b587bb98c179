// What of a log can be set against a run, and what the run expects for it.
import type { GaugeKey, GaugeLog } from '@noonloop/weather-io';
import type { Trace } from './span-run.ts';
import type { ReadingNoise } from './uncertainty.ts';

/** Quantities that a run foretells as a number. */
export type MeasuredKey = Extract<
  GaugeKey,
  'tankTopTemperature' | 'flowTemperature' | 'returnTemperature' | 'loopPressure' | 'heaterMeter'
>;

export const MEASURED: readonly MeasuredKey[] = [
  'tankTopTemperature',
  'flowTemperature',
  'returnTemperature',
  'loopPressure',
  'heaterMeter',
];

/** One number of a log: a reading, or what the meter counted since the reading before. */
export interface Observation {
  readonly key: MeasuredKey;
  /** Place in `log.readings`. */
  readonly at: number;
  readonly hour: number;
  /** Hour of the meter's reading before; else the hour itself. */
  readonly since: number;
  /** In SI; the meter's is a difference. */
  readonly value: number;
}

/** One look at the pump. */
export interface PumpLook {
  readonly at: number;
  readonly hour: number;
  readonly runs: boolean;
}

/** A log as the check works with it. */
export interface Observations {
  readonly numbers: readonly Observation[];
  readonly looks: readonly PumpLook[];
}

/** Takes the log apart. */
export function observe(log: GaugeLog): Observations {
  const numbers: Observation[] = [];
  const looks: PumpLook[] = [];
  let meter: { hour: number; value: number } | null = null;
  log.readings.forEach((reading, at) => {
    const { hour } = reading;
    for (const key of MEASURED) {
      const value = reading[key];
      if (value === null) continue;
      if (key !== 'heaterMeter') {
        numbers.push({ key, at, hour, since: hour, value });
      } else {
        if (meter !== null) numbers.push({ key, at, hour, since: meter.hour, value: value - meter.value });
        meter = { hour, value };
      }
    }
    if (reading.pumpRuns !== null) looks.push({ at, hour, runs: reading.pumpRuns });
  });
  return { numbers, looks };
}

/** Value of a column at an instant: linear between the ends of hours. */
export function valueAt(column: Float64Array, from: number, hour: number): number {
  const place = Math.min(Math.max(hour - from - 1, 0), column.length - 1);
  const before = Math.min(Math.trunc(place), column.length - 2);
  return column[before]! + (place - before) * (column[before + 1]! - column[before]!);
}

/** How fast it changes there. [1/h] */
function slopeAt(column: Float64Array, from: number, hour: number): number {
  const place = Math.min(Math.max(Math.trunc(hour - from - 1), 0), column.length - 2);
  return column[place + 1]! - column[place]!;
}

/** What a run expects for each number. */
export function expected(trace: Trace, numbers: readonly Observation[]): Float64Array {
  return Float64Array.from(numbers, ({ key, hour, since }) => {
    const value = valueAt(trace[key], trace.from, hour);
    return key === 'heaterMeter' ? value - valueAt(trace[key], trace.from, since) : value;
  });
}

/** Share of the change within an hour that a line between its ends may miss; judgement. [-] */
const WITHIN_HOUR = 0.25;

/** What the model of the heater misses of the fuel between two readings, relative. Judgement. [-] */
const MODEL_FUEL = 0.08;

/** Variance of each number from reading it: gauge, the time written down, and what a run by hours does not show. */
export function readingVariance(trace: Trace, numbers: readonly Observation[], noise: ReadingNoise): Float64Array {
  return Float64Array.from(numbers, ({ key, hour, value }) => {
    const slope = slopeAt(trace[key], trace.from, hour);
    const late = (slope * noise.time) / 3600;
    if (key === 'heaterMeter') {
      return 2 * (noise.meter ** 2 + late * late) + (MODEL_FUEL * value) ** 2;
    }
    const gauge = key === 'loopPressure' ? noise.pressure : noise.temperature;
    return gauge ** 2 + late * late + (WITHIN_HOUR * slope) ** 2;
  });
}

/** Chance that the pump is found running, over the hour and its neighbours. */
export function runningChance(trace: Trace, looks: readonly PumpLook[], slip: number): Float64Array {
  const { from, pumpRuns } = trace;
  const last = pumpRuns.length - 1;
  return Float64Array.from(looks, ({ hour }) => {
    const at = Math.min(Math.max(Math.trunc(hour - from), 0), last);
    const near = (pumpRuns[Math.max(at - 1, 0)]! + pumpRuns[Math.min(at + 1, last)]!) / 4 + pumpRuns[at]! / 2;
    return slip + (1 - 2 * slip) * near;
  });
}
