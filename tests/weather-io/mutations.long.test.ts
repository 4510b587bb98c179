import { parseWeather, WeatherError } from '@noonloop/weather-io';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { epwLines, nsrdbLines, plainLines, pvgisLines, tmy3Lines } from './samples.ts';

/** Pieces that break readers, besides any text at all. */
const piece = fc.oneof(
  fc.constantFrom(
    ',',
    '\n',
    '"',
    '""',
    '-9900',
    '9999',
    '99.9',
    'NaN',
    '1e400',
    '__proto__',
    '#',
    ':',
    '0',
    '\r',
    '\ufeff',
    '',
  ),
  fc.string({ maxLength: 20 }),
  fc.double().map(String),
);

/** One change: `length` characters at a place, given as a share of the text, give way to a piece. */
const mutation = fc.record({
  place: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.oneof(fc.nat(4), fc.nat(200_000)),
  piece,
  inHead: fc.boolean(),
});

function mutate(
  text: string,
  changes: readonly { place: number; length: number; piece: string; inHead: boolean }[],
): string {
  let changed = text;
  for (const { place, length, piece: put, inHead } of changes) {
    const at = Math.floor(place * (inHead ? Math.min(700, changed.length) : changed.length));
    changed = changed.slice(0, at) + put + changed.slice(at + length);
  }
  return changed;
}

describe('random changes to a good file either read or give a WeatherError [ours: property]', () => {
  it.each([
    ['tmy3', tmy3Lines()],
    ['epw', epwLines()],
    ['pvgis', pvgisLines()],
    ['nsrdb', nsrdbLines()],
    ['plain', plainLines()],
  ])('%s', (_, lines) => {
    const text = lines.join('\n');
    let refused = 0;
    fc.assert(
      fc.property(fc.array(mutation, { minLength: 1, maxLength: 4 }), (changes) => {
        try {
          const { columns } = parseWeather(mutate(text, changes));
          for (const values of Object.values(columns) as (Float64Array | null)[]) {
            expect(values?.length ?? 8760).toBe(8760);
            expect(values?.every((value) => Number.isFinite(value)) ?? true).toBe(true);
          }
        } catch (error) {
          if (!(error instanceof WeatherError)) throw error;
          refused++;
          expect(error.issues.length).toBeGreaterThan(0);
          expect(error.issues.length).toBeLessThanOrEqual(20);
        }
      }),
      { numRuns: 30, seed: 7 },
    );
    expect(refused).toBeGreaterThan(10);
  });
});
