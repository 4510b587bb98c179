import { describe, expect, it } from 'vitest';
import {
  coiledTubeNusselt,
  horizontalCylinderNusselt,
  straightTubeNusselt,
} from '../../packages/sim-core/src/physics/loop/film.ts';

describe('straightTubeNusselt', () => {
  it.each([
    [10000, 7, 79.49264509],
    [5000, 20, 58.3452205],
    [20000, 3.5, 111.6081579],
  ])('Re %f, Pr %f: %f [Gnielinski 1976, computed apart]', (re, pr, nu) => {
    expect(straightTubeNusselt(re, pr)).toBeCloseTo(nu, 6);
  });

  it('laminar: 3.66 [constant wall temperature]', () => {
    expect(straightTubeNusselt(1500, 20)).toBe(3.66);
  });

  it('between 2300 and 4000 a straight line in Re [Gnielinski 2013, from memory]', () => {
    expect(straightTubeNusselt(3150, 7)).toBeCloseTo((3.66 + straightTubeNusselt(4000, 7)) / 2, 9);
  });
});

describe('horizontalCylinderNusselt', () => {
  it.each([
    [1e7, 4, 33.86616542],
    [1e5, 7, 9.443510382],
    [3e6, 2.5, 22.84610671],
  ])('Ra %f, Pr %f: %f [Churchill & Chu 1975, computed apart]', (ra, pr, nu) => {
    expect(horizontalCylinderNusselt(ra, pr)).toBeCloseTo(nu, 7);
  });
});

describe('coiledTubeNusselt', () => {
  it('Re 2000, Pr 20, d/D 0.04: 37.0 [closed form, Schmidt 1967]', () => {
    const m = 0.5 + 0.2903 * 0.04 ** 0.194;
    const nu = 3.66 + 0.08 * (1 + 0.8 * 0.04 ** 0.9) * 2000 ** m * 20 ** (1 / 3);
    expect(coiledTubeNusselt(2000, 20, 0.04)).toBeCloseTo(nu, 9);
  });

  it('tends to the straight tube as the coil opens: turbulent within 15 % of Gnielinski at d/D 0.001 [two sources]', () => {
    // The coil formula keeps Re instead of Re − 1000 and Blasius' friction instead of Petukhov's.
    for (const re of [3e4, 1e5]) {
      for (const pr of [2, 7, 20]) {
        expect(Math.abs(coiledTubeNusselt(re, pr, 0.001) / straightTubeNusselt(re, pr) - 1)).toBeLessThan(0.15);
      }
    }
  });
});
