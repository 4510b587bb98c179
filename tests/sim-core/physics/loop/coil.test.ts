import { describe, expect, it } from 'vitest';
import type { CoilDesign } from '../../../../packages/sim-core/src/design/design.ts';
import {
  type CompiledFluid,
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidSpecificHeat,
  fluidViscosity,
} from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import {
  waterConductivity,
  waterDensity,
  waterExpansion,
  waterSpecificHeat,
  waterViscosity,
} from '../../../../packages/sim-core/src/physics/fluid/water.ts';
import { coilUA, compileCoil } from '../../../../packages/sim-core/src/physics/loop/coil.ts';
import { coiledTubeNusselt, horizontalCylinderNusselt } from '../../../../packages/sim-core/src/physics/loop/film.ts';
import { parts } from './parts.ts';

const coils: CoilDesign[] = [
  parts.coil,
  { ...parts.coil, length: 8, innerDiameter: 0.025, outerDiameter: 0.033, wallConductivity: 15, fouling: 5e-4 },
  { ...parts.coil, length: 30, innerDiameter: 0.01, outerDiameter: 0.02 },
];
const water = compileFluid('water', 0);

/** The same resistances with no tables, surface temperature iterated until it stands: within 1e-12 of itself, or 100 times. */
function iterated(coil: CoilDesign, c: CompiledFluid, flow: number, t: number, tank: number): number {
  const { length, innerDiameter: di, outerDiameter: d } = coil;
  const mu = fluidViscosity(c, t);
  const k = fluidConductivity(c, t);
  const reynolds = (4 * flow * fluidDensity(c, t)) / (Math.PI * di * mu);
  const inside = coiledTubeNusselt(reynolds, (mu * fluidSpecificHeat(c, t)) / k, di / 0.4) * k * Math.PI * length;
  const wall =
    Math.log(d / di) / (2 * Math.PI * coil.wallConductivity * length) + coil.fouling / (Math.PI * d * length);
  const G = 1 / (1 / inside + wall);
  let surface = (t + tank) / 2;
  let conductance = 0;
  for (let pass = 0; pass < 100; pass++) {
    const f = (surface + tank) / 2;
    const [muW, kW, cW] = [waterViscosity(f), waterConductivity(f), waterSpecificHeat(f)];
    const expansion = waterExpansion(Math.max(f, 8));
    const rayleigh = (9.80665 * expansion * Math.abs(surface - tank) * waterDensity(f) ** 2 * cW * d ** 3) / (muW * kW);
    const h = horizontalCylinderNusselt(rayleigh, (muW * cW) / kW) * kW * Math.PI * length;
    conductance = (G * h) / (G + h);
    const before = surface;
    surface = tank + ((t - tank) * G) / (G + h);
    if (Math.abs(surface - before) < 1e-12 * Math.abs(surface - tank)) break;
  }
  return conductance;
}

describe('coilUA', () => {
  /** Largest error up to 40 K between fluid and tank, and up to 105 K. */
  const worst = { upTo40: 0, upTo105: 0 };
  const lookForWorst = (): void => {
    for (const coil of coils) {
      for (const fluid of [compileFluid('propylene-glycol', 0.4), water]) {
        const c = compileCoil(coil, fluid);
        for (const flow_L_per_min of [0, 0.5, 2, 16]) {
          for (const t of [2, 10, 25, 40, 60, 80, 110]) {
            for (const tank of [5, 10, 20, 40, 60, 90]) {
              const flow = flow_L_per_min / 6e4;
              const error = Math.abs(coilUA(c, flow, t, tank) / iterated(coil, fluid, flow, t, tank) - 1);
              worst.upTo105 = Math.max(worst.upTo105, error);
              if (Math.abs(t - tank) <= 40) worst.upTo40 = Math.max(worst.upTo40, error);
            }
          }
        }
      }
    }
  };
  lookForWorst();

  it('the Newton steps and the tables are within 0.5 % of the full iteration up to 40 K [stated error]', () => {
    expect(worst.upTo40).toBeLessThan(0.005);
  });

  it('and within 1 % up to 105 K [stated error]', () => {
    expect(worst.upTo105).toBeLessThan(0.01);
  });

  const c = compileCoil(parts.coil, compileFluid('propylene-glycol', 0.4));

  it('rises with the flow, without a jump: 1 % more flow never gives more than 1 % more [its contract]', () => {
    const jumps: number[] = [];
    for (let flow = 1e-8; flow < 1e-3; flow *= 1.01) {
      const ratio = coilUA(c, flow * 1.01, 60, 40) / coilUA(c, flow, 60, 40);
      if (!(ratio >= 1 && ratio < 1.01)) jumps.push(flow);
    }
    expect(jumps).toEqual([]);
    expect(Math.abs(coilUA(c, 1e-12, 60, 40) / coilUA(c, 0, 60, 40) - 1)).toBeLessThan(1e-3);
  });

  it('is continuous in the temperatures, also where fluid and tank meet [its contract]', () => {
    const jumps: number[] = [];
    for (let t = -30; t < 150; t += 0.01) {
      if (Math.abs(t - 40) < 1) continue; // h_o ~ ΔT^(1/6) is steep there; its limit is looked at below
      if (!(Math.abs(coilUA(c, 5e-5, t + 0.01, 40) / coilUA(c, 5e-5, t, 40) - 1) < 2e-3)) jumps.push(t);
    }
    expect(jumps).toEqual([]);
    const equal = coilUA(c, 5e-5, 40, 40);
    let apart = Number.POSITIVE_INFINITY;
    for (const difference of [1e-2, 1e-5, 1e-8, 1e-11]) {
      const now = Math.abs(coilUA(c, 5e-5, 40 + difference, 40) / equal - 1);
      expect(now).toBeLessThan(apart);
      apart = now;
    }
    expect(apart).toBeLessThan(0.25); // 1e-11 K still carries (1e-11)^(1/6) = 1.5 % of what 1 K does
  });
});
