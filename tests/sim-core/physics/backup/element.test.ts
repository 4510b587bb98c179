import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { heatByElement } from '../../../../packages/sim-core/src/physics/backup/element.ts';
import { mixInversions } from '../../../../packages/sim-core/src/physics/tank/inversion.ts';

const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

describe('heatByElement', () => {
  it('fills the coldest layers above it first [by hand: 20 + 10 K·nodes over 30, 35, 60]', () => {
    const tank = Float64Array.of(15, 30, 35, 60);
    expect(heatByElement(tank, 1, 1, 15, 70)).toBeCloseTo(15, 12);
    expect([...tank]).toEqual([15, 40, 40, 60]);
  });

  it('stops at its thermostat and leaves what is hotter and what lies below [requirement]', () => {
    const tank = Float64Array.of(15, 30, 35, 80);
    expect(heatByElement(tank, 1, 2, 1e6, 60)).toBeCloseTo(2 * (30 + 25), 12);
    expect([...tank]).toEqual([15, 60, 60, 80]);
    expect(heatByElement(tank, 1, 2, 1e6, 60)).toBe(0);
  });

  it('gives all its heat while the thermostat asks [requirement]', () => {
    const tank = new Float64Array(20).fill(10);
    expect(heatByElement(tank, 12, 3, 60, 60)).toBeCloseTo(60, 12);
    expect(tank[11]).toBe(10);
    expect(tank[12]).toBeCloseTo(10 + 60 / 3 / 8, 12);
  });

  it('ends as heat poured into its layer and left to turn over ends, for any column in order [requirement]', () => {
    const cases = fc.record({
      rises: fc.array(fc.double({ min: 0, max: 10, noNaN: true }), { minLength: 2, maxLength: 30 }),
      place: fc.double({ min: 0, max: 0.99, noNaN: true }),
      heat: fc.double({ min: 0, max: 50, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ rises, place, heat }) => {
        let level = 10;
        const start = Float64Array.from(rises, (rise) => {
          level += rise;
          return level;
        });
        const lowest = Math.trunc(place * start.length);
        const filled = start.slice();
        const given = heatByElement(filled, lowest, 1, heat, 1e4);
        const poured = start.slice();
        poured[lowest]! += heat;
        mixInversions(poured);
        expect(given).toBeCloseTo(heat, 9);
        expect(sum(filled) - sum(start)).toBeCloseTo(given, 9);
        filled.forEach((temperature, node) => {
          expect(temperature).toBeCloseTo(poured[node]!, 8);
        });
      }),
    );
  });
});
