import { describe, expect, it } from 'vitest';
import { clockShift, inRange, readDayRange } from '../../../../packages/sim-core/src/physics/draw/days.ts';

describe('readDayRange', () => {
  it('refuses a last day that is none, a day 00 and anything but text [requirement]', () => {
    for (const text of ['01-01..02-30', '01-00..01-05', ['07-10..07-24']]) expect(readDayRange(text)).toBeNull();
  });
});

describe('inRange', () => {
  it('a range of one day holds that day alone [definition]', () => {
    const days = [8, 9, 10].map((day) => inRange({ first: 9, last: 9 }, day));
    expect(days).toEqual([false, true, false]);
  });
});

/** Hours at which the clock is put forward or back, the first being forward. */
const changes = (shift: Uint8Array): number[] => {
  const hours: number[] = [];
  for (let hour = 1; hour < shift.length; hour++) if (shift[hour] !== shift[hour - 1]) hours.push(hour);
  return hours;
};

describe('clockShift', () => {
  it('north, days 89 to 299: ahead from hour 2138 until before 7178 [by hand, 24 × 89 + 2 and 24 × 299 + 2]', () => {
    const shift = clockShift({ first: 89, last: 299 });
    expect(shift).toHaveLength(8760);
    expect(shift[0]).toBe(0);
    expect(changes(shift)).toEqual([2138, 7178]);
  });

  it('south, days 277 to 94: ahead at the turn of the year, back from 2258 to before 6650 [by hand]', () => {
    const shift = clockShift({ first: 277, last: 94 });
    expect(shift[0]).toBe(1);
    expect(changes(shift)).toEqual([2258, 6650]);
  });

  it('from a day to the same day, and without a range, never [definition]', () => {
    expect(Math.max(...clockShift({ first: 9, last: 9 }))).toBe(0);
    expect(Math.max(...clockShift(null))).toBe(0);
  });
});
