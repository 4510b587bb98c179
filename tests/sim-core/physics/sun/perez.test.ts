import { perezSky, relativeAirMass } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';

/** Perez, Ineichen, Seals, Michalsky & Stewart (1990), Solar Energy 44(5) 271, table 6: lower edge of the clearness, F11 F12 F13, F21 F22 F23 (typed anew, from memory). */
const TABLE = [
  [1, [-0.008, 0.588, -0.062], [-0.06, 0.072, -0.022]],
  [1.065, [0.13, 0.683, -0.151], [-0.019, 0.066, -0.029]],
  [1.23, [0.33, 0.487, -0.221], [0.055, -0.064, -0.026]],
  [1.5, [0.568, 0.187, -0.295], [0.109, -0.152, -0.014]],
  [1.95, [0.873, -0.392, -0.362], [0.226, -0.462, 0.001]],
  [2.8, [1.132, -1.237, -0.412], [0.288, -0.823, 0.056]],
  [4.5, [1.06, -1.6, -0.359], [0.264, -1.127, 0.131]],
  [6.2, [0.678, -0.327, -0.25], [0.156, -1.377, 0.251]],
] as const;
const NORMAL = 1367;

/** Both brightness coefficients as the model lets them be seen: on an upright plane square to the sun’s azimuth. */
function coefficientsAt(clearness: number, delta: number, zenith: number): readonly [number, number, number] {
  const z = (zenith * Math.PI) / 180;
  const dhi = (delta * NORMAL) / relativeAirMass(zenith);
  const kappa = 1.041 * z ** 3;
  const dni = dhi * (clearness * (1 + kappa) - kappa - 1);
  const of = (tilt: number, incidenceCosine: number) =>
    perezSky({ dhi, dni, extraterrestrialNormal: NORMAL, zenith, incidenceCosine, tilt });
  // Level: the sky holds (1 − F1); upright: ½ (1 − F1) + F2; the ring R F1.
  const ofLevel = 1 - of(0, Math.cos(z)).sky / dhi;
  const ofUpright = of(90, 0).sky / dhi - 0.5 * (1 - ofLevel);
  return [ofLevel, ofUpright, of(0, Math.cos(z)).circumsolar / dhi];
}

describe('the coefficients of Perez’ sky, one by one [table 6 of the paper]', () => {
  it.each(TABLE.map(([edge, ring, horizon], bin) => [edge, TABLE[bin + 1]?.[0] ?? 9, ring, horizon] as const))(
    'clearness from %f to %f',
    (from, to, ring, horizon) => {
      const conditions = [
        [0.05, 30],
        [0.12, 30],
        [0.05, 62],
        [0.1, 45],
      ] as const;
      for (const [delta, zenith] of conditions) {
        const z = (zenith * Math.PI) / 180;
        for (const clearness of [from + 1e-9, to - 1e-9]) {
          const [f1, f2, seen] = coefficientsAt(clearness, delta, zenith);
          expect(f1).toBeCloseTo(Math.max(0, ring[0] + ring[1] * delta + ring[2] * z), 9);
          expect(f2).toBeCloseTo(horizon[0] + horizon[1] * delta + horizon[2] * z, 9);
          expect(seen).toBeCloseTo(f1, 9); // the ratio of level and normal is 1
        }
      }
    },
  );
});
