import fc from 'fast-check';

const PARTS = 1_000_000;

/**
 * A finite number within bounds, mostly evenly spread. A double of fast-check is spread over bit patterns: nearly all of those from 0 to 1 are below
 * 1e-10.
 */
export const number = (min: number, max: number) =>
  fc.oneof(
    { weight: 9, arbitrary: fc.integer({ min: 0, max: PARTS }).map((part) => min + ((max - min) * part) / PARTS) },
    { weight: 1, arbitrary: fc.double({ min, max, noNaN: true }) },
  );

/** What a design seldom has: `null` in three of four. */
export const seldom = <T>(what: fc.Arbitrary<T>) =>
  fc.oneof({ weight: 3, arbitrary: fc.constant(null) }, { weight: 1, arbitrary: what });

/** Days of the year with some meaning, the turn of the year among them. */
export const days = fc.constantFrom('04-01..09-30', '07-10..07-24', '12-27..01-03', '11-01..02-28');
