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
  const shift = clockShift(summerTime === null ? null : readDayRange(summerTime));
  const ranges = offDays.map((days) => readDayRange(days)!);
  return Uint8Array.from({ length: 8760 }, (_, hour) => {
    const clock = hour + shift[hour]!;
    const ofDay = clock % 24;
    const day = Math.trunc(clock / 24) % 365;
    const timer = heatingHours !== null && !heatingHours.some(([from, to]) => ofDay >= from && ofDay < to);
    const switched = ranges.some((range) => inRange(range, day));
    return (timer ? HEATER_OFF.timer : 0) | (switched ? HEATER_OFF.switched : 0);
  });
}
