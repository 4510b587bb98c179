import { DesignError, defineSystem, simulate } from '@noonloop/sim-core';
import { thermosiphonFlow } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { compileFluid, fluidDensity, fluidViscosity } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { compileCircuit } from '../../../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { compileHydraulics, loopHead } from '../../../../packages/sim-core/src/physics/loop/hydraulics.ts';
import { buoyancyPressure, buoyantFlow } from '../../../../packages/sim-core/src/physics/loop/thermosiphon.ts';
import { loopRises } from '../../../../packages/sim-core/src/physics/loop/thermosiphon-design.ts';
import { compileTank } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../../property/span.ts';
import { parts } from './parts.ts';

const G = 9.80665;
const weather = await inventedValley();

describe('flow by buoyancy', () => {
  it('is (ρ_cold − ρ_warm) g H π d⁴/(128 μ L) in a laminar loop of one bore [Hagen–Poiseuille by hand]', () => {
    const tube = {
      ...parts,
      loop: { ...parts.loop, fittingLoss: 0 },
      array: { ...parts.array, collector: { ...parts.array.collector, ratedPressureDrop: 0 } },
    };
    const c = compileFluid('propylene-glycol', 0.4);
    const query = { parts: tube, height: 0.5, warm: 30, cold: 20 };
    const pressure = (fluidDensity(c, 20) - fluidDensity(c, 30)) * G * 0.5;
    const byHand = (pressure * Math.PI * 0.016 ** 4) / (128 * fluidViscosity(c, 25) * (30 + 15));
    expect(thermosiphonFlow(query) / byHand).toBeCloseTo(1, 7);
  });

  it.each([1, 10, 300, 2000, 1e5])(
    'takes up a drive of %d Pa by friction, whatever the regime [requirement]',
    (pressure) => {
      const c = compileFluid('water', 0);
      const h = compileHydraulics(parts, c);
      for (const t of [5, 60]) {
        const density = fluidDensity(c, t);
        const viscosity = fluidViscosity(c, t);
        const flow = buoyantFlow(h, pressure, density, viscosity);
        expect((loopHead(h, flow, density, viscosity) * density * G) / pressure).toBeCloseTo(1, 7);
      }
    },
  );

  it('is nothing between equal columns, and refuses a cold column that is warmer [requirement]', () => {
    expect(thermosiphonFlow({ parts, height: 5, warm: 40, cold: 40 })).toBe(0);
    expect(() => thermosiphonFlow({ parts, height: 5, warm: 40, cold: 50 })).toThrow(DesignError);
  });
});

describe('drive of a loop', () => {
  const design = defineSystem({ ...plainInput, loop: { checkValve: false } });
  const c = compileFluid('propylene-glycol', 0.4);
  const circuit = compileCircuit(design, c, 20, { stepCounts: [1], collectorNodes: 4 });
  const tank = compileTank(design.tank, [1]);
  const rises = loopRises(design, circuit.absorber.length, circuit.pipe.length);

  it('is nothing in a loop of one temperature [definition]', () => {
    circuit.absorber.fill(35);
    circuit.pipe.fill(35);
    tank.temperature.fill(35);
    expect(Math.abs(buoyancyPressure(rises, c, circuit, tank))).toBeLessThan(1e-9);
  });

  it('is −(ρ_cold − ρ_warm) g H with collectors and cold pipe cold, hot pipe and coil warm [by hand]', () => {
    circuit.absorber.fill(5);
    circuit.pipe.fill(5).fill(50, 0, circuit.pipe.length / 2);
    tank.temperature.fill(50);
    const height = design.loop.staticHeight - design.coil.bottom * design.tank.height;
    const byHand = -(fluidDensity(c, 5) - fluidDensity(c, 50)) * G * height;
    expect(buoyancyPressure(rises, c, circuit, tank) / byHand).toBeCloseTo(1, 10);
  });
});

describe('a year without a check valve', () => {
  // The pipe that the bounds below were stated for.
  const pipe = { heatBridgeFactor: 1, insulationConductivity: 0.04 };
  const run = (loop: object) =>
    simulate(defineSystem({ ...plainInput, loop: { ...pipe, ...loop } }), weather, { stepsPerHour: 3 });
  const kept = run({});
  const open = run({ checkValve: false });
  const heat = sum(open.columns.thermosiphonHeat);

  it('loses heat from the tank at night, counted, and keeps the balance [conservation]', () => {
    expect(sum(kept.columns.thermosiphonHeat)).toBe(0);
    expect(kept.columns.thermosiphonFlow.some((flow) => flow !== 0)).toBe(false);
    expect(heat).toBeGreaterThan(0.1 * sum(open.columns.solarHeat));
    expect(open.notices.map(({ code }) => code)).toContain('runs-by-itself');
    expect(kept.notices.map(({ code }) => code)).not.toContain('runs-by-itself');
    expect(sum(open.columns.solarHeat)).toBeLessThan(sum(kept.columns.solarHeat));
    for (const balance of Object.values(open.balance)) expect(balance.worstRelative).toBeLessThan(1e-9);
    // Nothing flows backwards while the sun is strong, and most nights run backwards.
    const backwards = open.columns.thermosiphonFlow.map((flow) => (flow < 0 ? 1 : 0));
    expect(sum(backwards.filter((_, hour) => hour % 24 < 4))).toBeGreaterThan(0.8 * 4 * 365);
    const atNoon = open.columns.irradiance.map((light, hour) => (light > 600 ? backwards[hour]! : 0));
    expect(sum(atNoon)).toBeLessThan(0.05 * sum(open.columns.irradiance.map((light) => (light > 600 ? 1 : 0))));
  });

  it('is the same by half the step: 0.1 % of the energy delivered, 1 % of the heat lost, 0.2 K of the peak [convergence]', () => {
    // Ten weeks of early summer, when the tank is at its hottest.
    const weeks = (steps?: number) => liveSpan(open.design, weather, ...EARLY_SUMMER, steps);
    const [here, fine] = [weeks(), weeks(24)];
    expect(Math.abs(sum(fine.columns.solarHeat) / sum(here.columns.solarHeat) - 1)).toBeLessThan(0.001);
    expect(Math.abs(sum(fine.columns.thermosiphonHeat) / sum(here.columns.thermosiphonHeat) - 1)).toBeLessThan(0.01);
    const peak = (result: typeof here) => Math.max(...result.columns.tankMaximumTemperature);
    expect(Math.abs(peak(fine) - peak(here))).toBeLessThan(0.2);
  });
});
