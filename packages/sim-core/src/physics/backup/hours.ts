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

/** What holds in each hour of the year by the house's clock, told by the hours from midnight of 1 January. Shape [8760]. */
const byTheClock = (summerTime: string | null, holds: (clock: number) => number): Uint8Array =>
  clockShift(summerTime === null ? null : readDayRange(summerTime)).map((ahead, hour) => holds(hour + ahead));

/** Hours of the year in one of some spans of the day. Shape [8760]. @internal */
export function inSpans(spans: readonly (readonly [number, number])[], summerTime: string | null): Uint8Array {
  const day = new Uint8Array(24);
  for (const [from, to] of spans) day.fill(1, Math.ceil(from), Math.ceil(to));
  return byTheClock(summerTime, (clock) => day[clock % 24]!);
}

/** Hours of the year on days of some ranges. Shape [8760]. @internal */
export function onDays(days: readonly string[], summerTime: string | null): Uint8Array {
  const ranges = days.map((range) => readDayRange(range)!);
  const year = new Uint8Array(365).map((_, day) => (ranges.some((range) => inRange(range, day)) ? 1 : 0));
  return byTheClock(summerTime, (clock) => year[Math.trunc(clock / 24) % 365]!);
}
