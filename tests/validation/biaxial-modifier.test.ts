import { describe, expect, it } from 'vitest';
import { biaxialIncidenceModifier, diffuseModifiers } from '../../packages/sim-core/src/physics/collector/index.ts';

// Invented tables of a tube collector. Diffuse modifiers: sum over 3000 × 6000 directions of equal solid angle above (and as many
// below) the horizon, in altitude and azimuth; numpy 2, written apart from the integration under test.
const angles = [0, 10, 20, 30, 40, 50, 60, 70, 80, 90];
const transversal = { angles, values: [1, 1.02, 1.06, 1.14, 1.26, 1.36, 1.3, 1.05, 0.6, 0] };
const longitudinal = { angles, values: [1, 1, 0.99, 0.98, 0.95, 0.9, 0.82, 0.68, 0.42, 0] };

describe('diffuse modifiers of tubes [sum over directions, numpy, six decimals; within 1e-4]', () => {
  it.each([
    [0, 'upright', 1.036664, 0],
    [20, 'upright', 1.053258, 0.502932],
    [20, 'level', 1.051828, 0.548932],
    [45, 'upright', 1.06631, 0.863876],
    [45, 'level', 1.038687, 1.024874],
    [90, 'upright', 1.036663, 1.036663],
    [90, 'level', 1.036663, 1.036663],
  ] as const)('tilt %i°, tubes %s: sky %f, ground %f', (tilt, tubes, sky, ground) => {
    const ours = diffuseModifiers({ transversal, longitudinal, tubes }, tilt);
    expect(Math.abs(ours.sky - sky)).toBeLessThan(1e-4);
    expect(Math.abs(ours.ground - ground)).toBeLessThan(1e-4);
  });

  it('with K_T = cos θT and K_L = 1 a level plane has π/4 [closed form: ∫∫ cos²λ cos²ψ dλ dψ / π]', () => {
    const fine = Array.from({ length: 181 }, (_, row) => row / 2);
    const cosines = fine.map((angle) => Math.cos((angle * Math.PI) / 180));
    const even = { angles: [0, 89.9999], values: [1, 1] };
    const ours = diffuseModifiers(
      { transversal: { angles: fine, values: cosines }, longitudinal: even, tubes: 'level' },
      0,
    );
    expect(Math.abs(ours.sky - Math.PI / 4)).toBeLessThan(1e-4);
  });
});

describe('beam on tubes [ISO 9806: product of the two tables]', () => {
  it('is one table on each axis and the product between', () => {
    const tubes = { transversal, longitudinal, tubes: 'upright' } as const;
    expect(biaxialIncidenceModifier(tubes, 50, 0)).toBeCloseTo(1.36, 12);
    expect(biaxialIncidenceModifier(tubes, 0, 65)).toBeCloseTo(0.75, 12);
    expect(biaxialIncidenceModifier(tubes, 50, 65)).toBeCloseTo(1.36 * 0.75, 12);
    expect(() => biaxialIncidenceModifier(tubes, 91, 0)).toThrow(/transversalAngle: found 91/);
  });
});
