import { describe, expect, it } from 'vitest';
import { compileFluid, fluidDensity, fluidViscosity } from '../../packages/sim-core/src/physics/fluid/compile.ts';
import { coilFrictionNumber, criticalReynolds } from '../../packages/sim-core/src/physics/loop/coil-friction.ts';
import { frictionFactor, pipePressureDrop } from '../../packages/sim-core/src/physics/loop/friction.ts';

/** Colebrook (1939), iterated to the last digit: the referee. */
function colebrook(reynolds: number, roughness: number): number {
  let root = 7;
  for (let step = 0; step < 60; step++) root = -2 * Math.log10(roughness / 3.7 + (2.51 * root) / reynolds);
  return root ** -2;
}

describe('frictionFactor', () => {
  it.each([
    [500, 0.001, 0.128],
    [1800, 0.0001, 0.03555555556],
  ])('Re %f laminar: %f, %f [64/Re] [requirement]', (re, roughness, f) => {
    expect(frictionFactor(re, roughness)).toBeCloseTo(f, 10);
  });

  it.each([
    [1e4, 0.001, 0.03217489474, 0.03238180636],
    [1e5, 0.0001, 0.01826505301, 0.01851386608],
    [4e4, 0, 0.02179404653, 0.02196998587],
    [6000, 0.00012, 0.03581979555, 0.03564860024],
  ])(
    'Re %f, ε/D %f: %f [Haaland 1983], of Colebrook’s %f within its stated error',
    (re, roughness, haaland, referee) => {
      expect(frictionFactor(re, roughness)).toBeCloseTo(haaland, 10);
      expect(colebrook(re, roughness)).toBeCloseTo(referee, 10);
      expect(Math.abs(frictionFactor(re, roughness) / referee - 1)).toBeLessThan(0.02);
    },
  );

  it('is within 2 % of Colebrook for Re 4000 to 1e8, ε/D 0 to 0.05 [Haaland’s stated error]', () => {
    let worst = 0;
    for (let re = 4000; re <= 1e8; re *= 1.3) {
      for (const roughness of [0, 1e-6, 1e-5, 1e-4, 1e-3, 1e-2, 5e-2]) {
        worst = Math.max(worst, Math.abs(frictionFactor(re, roughness) / colebrook(re, roughness) - 1));
      }
    }
    expect(worst).toBeLessThan(0.02);
  });
});

describe('pipePressureDrop, propylene glycol x = 0.40 in 30 m of 16 mm tube, ΣK 12', () => {
  it.each([
    [-10, 2, 14000, 1e-6],
    [20, 4, 6131.72, 1e-6],
    [60, 4, 4764.77, 0.02],
    [60, 12, 33327, 0.02],
  ])(
    '%f °C, %f L/min: %f Pa within %f [Darcy–Weisbach with Colebrook, computed apart]',
    (t, flow_L_per_min, drop, tolerance) => {
      const c = compileFluid('propylene-glycol', 0.4);
      const ours = pipePressureDrop({
        flow: flow_L_per_min / 6e4,
        length: 30,
        innerDiameter: 0.016,
        fittingLoss: 12,
        density: fluidDensity(c, t),
        dynamicViscosity: fluidViscosity(c, t),
      });
      expect(Math.abs(ours / drop - 1)).toBeLessThan(tolerance);
    },
  );
});

describe('coiled tube', () => {
  it('Re 250, d/D 0.2: f 0.406328 [White 1929; documented example of the open library fluids]', () => {
    expect(coilFrictionNumber(0.2, 250) / 250 ** 2).toBeCloseTo(0.4063281817830202, 12);
  });

  it('Re 20 000, d/D 0.05: f 0.03331 [closed form: 0.3164 Re^−0.25 + 0.03 √(d/D)]', () => {
    expect(coilFrictionNumber(0.05, 2e4) / 4e8).toBeCloseTo(0.3164 / 2e4 ** 0.25 + 0.03 * Math.sqrt(0.05), 12);
  });

  it('d/D 0.05 and 0.02: laminar to Re 7438 and 5702 [Schmidt 1967]', () => {
    expect(criticalReynolds(0.05)).toBeCloseTo(7438, 0);
    expect(criticalReynolds(0.02)).toBeCloseTo(5702, 0);
  });

  it('turns from White to the turbulent formula within a quarter of Schmidt’s critical Re, d/D 0.02 to 0.1 [two sources agree]', () => {
    for (const curvature of [0.02, 0.04, 0.066, 0.1]) {
      const excess = (re: number) =>
        coilFrictionNumber(curvature, re) - (0.3164 * re ** -0.25 + 0.03 * Math.sqrt(curvature)) * re * re;
      expect(excess(0.75 * criticalReynolds(curvature))).toBeGreaterThan(0);
      expect(Math.abs(excess(1.25 * criticalReynolds(curvature)))).toBeLessThan(1e-6);
    }
  });
});
