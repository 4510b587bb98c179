import { describe, expect, it } from 'vitest';
import type { CoilDesign } from '../../../../packages/sim-core/src/design/design.ts';
import { compileFluid } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { coilUA, compileCoil } from '../../../../packages/sim-core/src/physics/loop/coil.ts';
import { coilConductance } from '../../../../packages/sim-core/src/physics/loop/coil-conductance.ts';
import { parts } from './parts.ts';

const steel: CoilDesign = {
  ...parts.coil,
  length: 8,
  innerDiameter: 0.025,
  outerDiameter: 0.033,
  wallConductivity: 15,
  fouling: 5e-4,
};

const query = { coil: steel, fluid: 'water', flow: 6e-5, fluidTemperature: 65, tankTemperature: 35 } as const;

describe('coilConductance', () => {
  it('gives films that add up to its conductance [series of resistances]', () => {
    const result = coilConductance(query);
    const { length, innerDiameter: di, outerDiameter: d, wallConductivity, fouling } = query.coil;
    const resistance =
      1 / (result.insideCoefficient * Math.PI * di * length) +
      Math.log(d / di) / (2 * Math.PI * wallConductivity * length) +
      fouling / (Math.PI * d * length) +
      1 / (result.outsideCoefficient * Math.PI * d * length);
    expect(1 / resistance).toBeCloseTo(result.conductance, 9);
    expect(result.surfaceTemperature).toBeGreaterThan(35);
    expect(result.surfaceTemperature).toBeLessThan(65);
  });

  it('is what the run’s own kernel gives, and its Re is 4 V̇ρ/(π d μ) [water at 65 °C: 980.55 kg/m³, 0.4332 mPa·s, from memory]', () => {
    const { conductance, reynolds } = coilConductance(query);
    const water = compileFluid('water', 0);
    expect(coilUA(compileCoil(steel, water), 6e-5, 65, 35)).toBeCloseTo(conductance, 9);
    expect(Math.abs(reynolds / ((4 * 6e-5 * 980.55) / (Math.PI * 0.025 * 4.332e-4)) - 1)).toBeLessThan(1e-3);
  });

  it.each([
    ['coil.length', 'to 10000 m', { coil: { ...steel, length: 0 } }],
    ['coil.innerDiameter', ' m', { coil: { ...steel, innerDiameter: 0 } }],
    ['coil.outerDiameter', 'to 1 m', { coil: { ...steel, outerDiameter: 0.02 } }],
    ['coil.wallConductivity', 'to 1000 W/(m·K)', { coil: { ...steel, wallConductivity: 0 } }],
    ['coil.fouling', 'to 1 m²·K/W', { coil: { ...steel, fouling: -1 } }],
    ['flow', 'to 1 m³/s', { flow: -1 }],
    ['fluidTemperature', '°C (liquid)', { fluidTemperature: -5 }],
    ['tankTemperature', 'to 140 °C', { tankTemperature: -1 }],
  ])('names %s, with what it may be %s [requirement]', (path, ending, change) => {
    const words = ending.replace(/[()/]/g, '\\$&');
    expect(() => coilConductance({ ...query, ...change })).toThrow(new RegExp(`^${path}: found .*${words}\\. `));
  });
});
