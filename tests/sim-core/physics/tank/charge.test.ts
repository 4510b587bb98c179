import { describe, expect, it } from 'vitest';
import { chargeDown } from '../../../../packages/sim-core/src/physics/tank/charge.ts';
import { sum } from '../../../examples.ts';

describe('charging from above', () => {
  it('moves the water between return and bottom down, and keeps its heat [definition]', () => {
    const temperature = Float64Array.of(10, 20, 30, 40, 50);
    chargeDown(temperature, 2, 1, 45, new Float64Array(3));
    expect([...temperature]).toEqual([20, 30, 45, 40, 50]);
    const before = sum(temperature);
    chargeDown(temperature, 3, 0.4, 60, new Float64Array(4));
    expect(sum(temperature) - before).toBeCloseTo(0.4 * (60 - 20), 12);
    expect(temperature[4]).toBe(50);
  });
});
