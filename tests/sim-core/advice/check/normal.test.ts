import { describe, expect, it } from 'vitest';
import { dayFactors, gaussFrom, uniformFrom } from '../../../../packages/sim-core/src/advice/check/lots.ts';
import { divided, logDensity, normalOf, squareOf } from '../../../../packages/sim-core/src/advice/check/normal.ts';

describe('a normal distribution of two numbers, worked by hand: covariance [4 2; 2 3], determinant 8', () => {
  const normal = normalOf([
    [4, 2],
    [2, 3],
  ]);

  it('half the logarithm of the determinant [requirement]', () => {
    expect(normal.halfLog).toBeCloseTo(Math.log(8) / 2, 14);
  });

  it('[4 2; 2 3] x = [8, 7] → x = [1.25, 1.5]; square of [8, 7]: 8 × 1.25 + 7 × 1.5 [requirement]', () => {
    const x = divided(normal, [8, 7]);
    expect(x[0]).toBeCloseTo(1.25, 14);
    expect(x[1]).toBeCloseTo(1.5, 14);
    expect(squareOf(normal, [8, 7])).toBeCloseTo(20.5, 13);
    expect(logDensity(normal, [8, 7])).toBeCloseTo(-Math.log(8) / 2 - 10.25, 13);
  });

  it('no numbers at all: nothing to say [definition]', () => {
    expect(logDensity(normalOf([]), [])).toBeCloseTo(0, 14);
  });
});

describe('days drawn by lot', () => {
  it('mean 1 and the stated spread of the logarithm, within three standard errors of 40 years [requirement]', () => {
    const gauss = gaussFrom(uniformFrom(3));
    const all = Array.from({ length: 40 }, () => [...dayFactors(gauss, 0.4)]).flat();
    const mean = all.reduce((sum, value) => sum + value, 0) / all.length;
    const logs = all.map(Math.log);
    const middle = logs.reduce((sum, value) => sum + value, 0) / logs.length;
    const spread = Math.sqrt(logs.reduce((sum, value) => sum + (value - middle) ** 2, 0) / logs.length);
    expect(Math.abs(mean - 1)).toBeLessThan((3 * 0.42) / Math.sqrt(all.length));
    expect(Math.abs(spread - 0.4)).toBeLessThan((3 * 0.4) / Math.sqrt(2 * all.length));
  });

  it('the same seed gives the same bits [requirement]', () => {
    expect(dayFactors(gaussFrom(uniformFrom(8)), 0.2)).toEqual(dayFactors(gaussFrom(uniformFrom(8)), 0.2));
  });
});
