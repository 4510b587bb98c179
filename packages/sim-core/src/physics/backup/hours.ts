import type { HeaterDesign } from '../../design/design.ts';
import { clockShift, inRange, readDayRange } from '../draw/days.ts';

/** Why a heater may not heat in an hour, as bits: its timer, or switched off for days. */
export const HEATER_OFF = { timer: 1, switched: 2 } as const;

/**
 * Hours in which a heater may not heat, by the house's clock.
 *
 * @param heater - Its days off and its timer.
 * @param summerTime - `draw.summerTime`.
 * @returns Bits of {@link HEATER_OFF}, 0 where it may heat. Shape [8760]; `null`: always.
 * @internal
 */
export function heaterOffHours(
  { offDays, heatingHours }: Pick<HeaterDesign, 'offDays' | 'heatingHours'>,
  summerTime: string | null,
): Uint8Array | null {
  if (offDays.length === 0 && heatingHours === null) return null;
  const on = heatingHours === null ? null : inSpans(heatingHours, summerTime);
  const off = onDays(offDays, summerTime);
  return off.map((switched, hour) => switched * HEATER_OFF.switched + (on?.[hour] === 0 ? HEATER_OFF.timer : 0));
}

/** A moment of the house's clock: hour of the day, and day of the year from 0. */
type ClockTest = (hour: number, day: number) => boolean;

/** Hours of the year for which a test holds by the house's clock. Shape [8760]. */
function byTheClock(summerTime: string | null, holds: ClockTest): Uint8Array {
  const shift = clockShift(summerTime === null ? null : readDayRange(summerTime));
  return shift.map((ahead, hour) => {
    const clock = hour + ahead;
    return holds(clock % 24, Math.trunc(clock / 24) % 365) ? 1 : 0;
  });
}

/** Hours of the year in one of some spans of the day. Shape [8760]. @internal */
export const inSpans = (spans: readonly (readonly [number, number])[], summerTime: string | null): Uint8Array =>
  byTheClock(summerTime, (hour) => spans.some(([from, to]) => hour >= from && hour < to));

/** Hours of the year on days of some ranges. Shape [8760]. @internal */
export function onDays(days: readonly string[], summerTime: string | null): Uint8Array {
  const ranges = days.map((range) => readDayRange(range)!);
  return byTheClock(summerTime, (_, day) => ranges.some((range) => inRange(range, day)));
}
