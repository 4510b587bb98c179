import { describe, expect, it } from 'vitest';
import {
  factorize,
  halfLogDeterminant,
  invert,
  solveLower,
  solveUpper,
} from '../../../../packages/sim-core/src/advice/check/matrix.ts';
import { dayFactors, gaussFrom, uniformFrom } from '../../../../packages/sim-core/src/advice/check/random.ts';

describe('Cholesky, by a matrix worked by hand: [4 2; 2 3] = [2 0; 1 √2] [2 0; 1 √2]ᵀ', () => {
  const lower = Float64Array.of(4, 2, 2, 3);
  factorize(lower, 2);

  it('factor and determinant 8', () => {
    expect([lower[0], lower[2], lower[3]]).toEqual([2, 1, Math.SQRT2]);
    expect(halfLogDeterminant(lower, 2)).toBeCloseTo(Math.log(8) / 2, 14);
  });

  it('solves [4 2; 2 3] x = [8, 7] → [1.25, 1.5]', () => {
    const x = Float64Array.of(8, 7);
    solveLower(lower, 2, x);
    solveUpper(lower, 2, x);
    expect(x[0]).toBeCloseTo(1.25, 14);
    expect(x[1]).toBeCloseTo(1.5, 14);
  });

  it('inverse [3 −2; −2 4]/8', () => {
    [3 / 8, -2 / 8, -2 / 8, 4 / 8].forEach((value, at) => {
      expect(invert(lower, 2)[at]).toBeCloseTo(value, 14);
    });
  });
});

describe('days drawn by lot', () => {
  it('mean 1 and the stated spread of the logarithm, within three standard errors of 40 years', () => {
    const gauss = gaussFrom(uniformFrom(3));
    const all = Array.from({ length: 40 }, () => [...dayFactors(gauss, 0.4)]).flat();
    const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
    const logs = all.map(Math.log);
    const middle = logs.reduce((sum, value) => sum + value, 0) / logs.length;
    const spread = Math.sqrt(logs.reduce((sum, value) => sum + (value - middle) ** 2, 0) / logs.length);
    expect(Math.abs(mean - 1)).toBeLessThan((3 * 0.42) / Math.sqrt(all.length));
    expect(Math.abs(spread - 0.4)).toBeLessThan((3 * 0.4) / Math.sqrt(2 * all.length));
  });

  it('the same seed gives the same bits', () => {
    expect(dayFactors(gaussFrom(uniformFrom(8)), 0.2)).toEqual(dayFactors(gaussFrom(uniformFrom(8)), 0.2));
  });
});
