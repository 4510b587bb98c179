import { describe, expect, it } from 'vitest';
import { compare, days } from './referee.ts';

/** Limit that the project sets itself: agreement of node temperatures at the default step. [K] */
const AGREEMENT = 0.05;

/** Tests of the days; the quick run looks at some hours of each, and they begin with its tank. */
export const holdDays = (whole: boolean) =>
  describe.each(days)(
    'a clear day, $name [odex 2.0.4, tolerance 1e-10, on the same equations written apart]',
    (day) => {
      const hours = whole ? ([0, 24] as const) : day.quick;
      const worst = compare(day, 1, hours);

      it('keeps the tank within 0.05 K at the default step, within 0.1 K in the hour after a jump', () => {
        expect(worst.tank).toBeLessThan(AGREEMENT);
        expect(worst.tankAfterJump).toBeLessThan(2 * AGREEMENT);
      });

      it('keeps absorber and pipes within 0.07 K in even running, the coil’s content within 0.25 K', () => {
        expect(worst.circuit).toBeLessThan(0.07);
        // It follows the water, whose front conduction moves, in half hours: 17 kJ/K against 62 of a tank node.
        expect(worst.coil).toBeLessThan(0.25);
      });

      it(`lets fluid and absorber differ by less than ${day.jumpLimit} K after a jump`, () => {
        // The slug of the pipes or of the hot absorber goes round several times within a step; its heat is not lost.
        expect(worst.circuitAfterJump).toBeLessThan(day.jumpLimit);
      });

      it('comes to the same temperatures with steps of a tenth: both solve the same equations', () => {
        const fine = compare(day, 10, hours);
        expect(Math.max(fine.tank, fine.circuit, fine.tankAfterJump)).toBeLessThan(0.012);
        expect(fine.circuitAfterJump).toBeLessThan(0.012 * day.jumpLimit);
      });
    },
  );
