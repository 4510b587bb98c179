// From rows as a file has them to hours of a local year.

import type { Sequence } from './table/sequence.ts';
import { LEAP_DAY_START } from './time/calendar.ts';
import { HOURS_OF_YEAR } from './year.ts';

/** Share of an hour's rows that must be there for their mean to stand for the hour. Judgement. [-] */
const ENOUGH_ROWS = 0.75;

/**
 * Means over the hours of a column with several rows in each hour; keeps the energy. Where rows are missing (`NaN`) the others
 * stand for the hour if they are three quarters of it; else the hour is missing.
 */
export function hourlyMeans(values: Float64Array, stepsPerHour: number): Float64Array {
  if (stepsPerHour === 1) return values;
  const hourly = new Float64Array(values.length / stepsPerHour);
  for (let hour = 0; hour < hourly.length; hour++) {
    let sum = 0;
    let count = 0;
    for (let step = 0; step < stepsPerHour; step++) {
      const value = values[hour * stepsPerHour + step]!;
      if (Number.isNaN(value)) continue;
      sum += value;
      count++;
    }
    hourly[hour] = count >= ENOUGH_ROWS * stepsPerHour ? sum / count : Number.NaN;
  }
  return hourly;
}

/**
 * Hours of the clock from instants at equal steps in the hour: each instant stands for the step about it, and what of that lies in
 * the hour before or after goes there. At :00 and :30 the weights are ¼, ½, ¼. The year is a ring; the energy is kept.
 *
 * @param values - `NaN` where missing: the others stand for the hour if they are three quarters of it.
 * @param sequence - Rows in the hour, and where the first stands.
 */
export function hoursOfInstants(
  values: Float64Array,
  { stepsPerHour, firstMinute }: Pick<Sequence, 'stepsPerHour' | 'firstMinute'>,
): Float64Array {
  if (stepsPerHour === 1) return values;
  const hours = values.length / stepsPerHour;
  const hourly = new Float64Array(hours);
  // The step about instant `step` reaches from step + over to step + over + 1, in steps after the start of the hour.
  const over = firstMinute * stepsPerHour - 0.5;
  for (let hour = 0; hour < hours; hour++) {
    let sum = 0;
    let weights = 0;
    for (let step = -1; step <= stepsPerHour; step++) {
      const value = values[(hour * stepsPerHour + step + values.length) % values.length]!;
      const weight = Math.min(step + over + 1, stepsPerHour) - Math.max(step + over, 0);
      if (!(weight > 0) || Number.isNaN(value)) continue;
      sum += weight * value;
      weights += weight;
    }
    hourly[hour] = weights >= ENOUGH_ROWS * stepsPerHour - 1e-9 ? sum / weights : Number.NaN;
  }
  return hourly;
}

/** Puts rows where they belong in the year; what no row stands for is `NaN`. */
export function placeRows(values: Float64Array, slots: Int32Array | null, length: number): Float64Array {
  if (slots === null) return values;
  const placed = new Float64Array(length).fill(Number.NaN);
  slots.forEach((slot, row) => {
    if (slot >= 0) placed[slot] = values[row]!;
  });
  return placed;
}

/** How the hours of a file move into those of the local year. */
export interface Shift {
  /** Whole hours by which rows move later; the year is a ring, so what leaves at one end comes in at the other. [h] */
  readonly hours: number;
  /** From the start of the new row to the middle of what its irradiance stands for, 0 to below 1. [h] */
  readonly midpoint: number;
}

/**
 * Splits the way from a file's row to the local instant of its irradiance into whole rows and the rest.
 *
 * @param total - From the stamped hour's start, counted as local, to the middle of what its irradiance stands for. [h]
 */
export function shiftOf(total: number): Shift {
  // Offsets in header lines carry about four decimals; without rounding −0.8239 + 1 would not be 0.1761.
  const hours = Math.floor(Number(total.toFixed(6)));
  return { hours, midpoint: Number((total - hours).toFixed(6)) };
}

/** Rolls a ring of rows later by so many, then drops 29 February where there is one. @param perHour - Rows in an hour. */
export function toLocalYear(values: Float64Array, later: number, perHour = 1): Float64Array {
  const local = new Float64Array(HOURS_OF_YEAR * perHour);
  const skipped = values.length - local.length;
  const leapDay = LEAP_DAY_START * perHour;
  copyRing(values, -later, local.subarray(0, leapDay));
  copyRing(values, leapDay + skipped - later, local.subarray(leapDay));
  return local;
}

/** Fills `part` with what stands in a ring from `from` on. */
function copyRing(ring: Float64Array, from: number, part: Float64Array): void {
  const start = ((from % ring.length) + ring.length) % ring.length;
  const first = Math.min(part.length, ring.length - start);
  part.set(ring.subarray(start, start + first));
  part.set(ring.subarray(0, part.length - first), first);
}

/**
 * Values at the middle of each local hour, on the line between the two instants beside it; then 29 February is dropped. Where one of
 * the two is missing (`NaN`), the other stands for it.
 *
 * @param values - One an hour of the file.
 * @param instant - From the start of a file's hour, counted as local, to the instant at which its value holds. [h]
 */
export function atMidHour(values: Float64Array, instant: number): Float64Array {
  const back = Number((instant - 0.5).toFixed(6));
  const hours = Math.floor(back);
  const part = back - hours;
  const later = toLocalYear(values, hours);
  if (part === 0) return later;
  const earlier = toLocalYear(values, hours + 1);
  return later.map((after, hour) => {
    const before = earlier[hour]!;
    if (Number.isNaN(before)) return after;
    return Number.isNaN(after) ? before : before * part + after * (1 - part);
  });
}

/**
 * Calendar year of each local hour: that of the file's row, except that an hour which went around the end of the year is
 * dated by the local clock, so that its sun stays the one of the instant at which it was measured.
 */
export function toLocalYears(years: Int16Array, hours: number): Int16Array {
  const local = new Int16Array(HOURS_OF_YEAR);
  const skipped = years.length - HOURS_OF_YEAR;
  for (let row = 0; row < HOURS_OF_YEAR; row++) {
    const hour = row < LEAP_DAY_START ? row : row + skipped;
    const from = hour - hours;
    const around = from < 0 ? 1 : from >= years.length ? -1 : 0;
    local[row] = years[ringIndex(hour, hours, years.length)]! + around;
  }
  return local;
}

const ringIndex = (hour: number, hours: number, length: number): number =>
  (((hour - hours) % length) + length) % length;
