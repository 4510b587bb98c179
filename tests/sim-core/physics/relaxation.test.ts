import { describe, expect, it } from 'vitest';
import { decayOf, goneOf } from '../../../packages/sim-core/src/physics/relaxation.ts';

describe('e^(−x) by table and series', () => {
  it('is that of the standard library to two units of the last place [Math.exp; 5e-16]', () => {
    let worst = 0;
    for (let x = 0; x < 40; x += 0.00037) worst = Math.max(worst, Math.abs(decayOf(x) / Math.exp(-x) - 1));
    expect(worst).toBeLessThan(5e-16);
  });

  it('is 1 at 0 and nothing where 1 − e^(−x) is 1 to the last bit [double precision]', () => {
    expect(decayOf(0)).toBe(1);
    for (const x of [40, 71, 1e9, Number.POSITIVE_INFINITY]) expect([decayOf(x), 1 - Math.exp(-x)]).toEqual([0, 1]);
    expect(decayOf(Number.NaN)).toBeNaN();
  });

  it('leaves of 1 what the standard library leaves, however small x is [Math.expm1; 3e-14]', () => {
    for (let x = 1e-12; x < 100; x *= 1.07) expect(Math.abs(goneOf(x) / -Math.expm1(-x) - 1)).toBeLessThan(3e-14);
    expect(goneOf(0)).toBe(0);
  });
});
