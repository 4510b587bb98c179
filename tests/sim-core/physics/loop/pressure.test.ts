import { DesignError } from '@noonloop/sim-core';
import { airPressureAt, boilingPoint, burstProtection, glycolMassFromVolume } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { saturationPressure, saturationTemperature } from '../../../../packages/sim-core/src/physics/fluid/boiling.ts';
import { compileFluid, fluidDensity } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import {
  changeFluid,
  compilePressure,
  makeUpWith,
  settlePressure,
  takeOut,
} from '../../../../packages/sim-core/src/physics/loop/pressure.ts';
import { vesselContent } from '../../../../packages/sim-core/src/physics/loop/vessel.ts';

const glycol = compileFluid('propylene-glycol', 0.4);

/** Four collector nodes of 1 L, four pipe sections of 1 L, a coil of 4 L, a vessel of 12 L at 1.5 bar, filled to 2.125 bar, in air of 1 bar. */
const parts = {
  fluid: glycol,
  collectorVolume: new Float64Array(4).fill(0.001),
  pipeVolume: new Float64Array(4).fill(0.001),
  coilVolume: 0.004,
  vesselVolume: 0.012,
  airPressure: 1e5,
  steamLine: { power: 0, lossPerMetre: 0.2, bore: 2e-4, length: 20 },
  precharge: 1.5e5,
  vesselTemperature: 10,
  fillPressure: 2.125e5,
  fillTemperature: 10,
  reliefPressure: 6e5,
  reseatShare: 0.9,
  staticPressure: 0.6e5,
};
const at = (t: number, count = 4) => new Float64Array(count).fill(t);

describe('content of a vessel', () => {
  // Reference table "in a chosen vessel": 18 L at 1.5 bar, 24 L at 3 bar; the contents are reserve, expansion and steam of its rows.
  it.each([
    [0.018, 1.5e5, 1.64706e5, 1],
    [0.018, 1.5e5, 1.8345e5, 1 + 1.12419],
    [0.018, 1.5e5, 2.63612e5, 1 + 1.12419 + 3.5],
    [0.024, 3e5, 3.26667e5, 1.5],
    [0.024, 3e5, 7.12759e5, 1.5 + 10.6884],
  ])(
    '%d m³ at %d Pa holds at %d Pa %d L [reference table of expansion vessels]',
    (volume, precharge, gauge, litres) => {
      expect(vesselContent(volume, precharge, gauge, 1e5) * 1000).toBeCloseTo(litres, 3);
    },
  );
});

describe('pressure of a loop', () => {
  it('is the fill pressure at the fill temperature [requirement]', () => {
    const state = compilePressure(parts);
    expect(settlePressure(state, at(10), at(10), 10, true)).toBe(0);
    expect(state.gauge).toBeCloseTo(2.125e5, 3);
    expect(state.top).toBeCloseTo(1.525e5, 3);
    expect(saturationTemperature(state.vapourPressure)).toBeCloseTo(
      boilingPoint('propylene-glycol', 0.4, 1.525e5 + 1e5),
      9,
    );
  });

  it('follows the expansion by the gas law [by hand: 12 L of loop, 2.4 L in the vessel]', () => {
    const state = compilePressure(parts);
    settlePressure(state, at(80), at(80), 80, false);
    // Mass that 12 L give up from 10 to 80 °C stands at 10 °C in the vessel.
    const pushed = 12 * (1 - fluidDensity(glycol, 80) / fluidDensity(glycol, 10));
    expect(pushed).toBeCloseTo(0.53, 1);
    expect(state.gauge).toBeCloseTo((12 * 2.5e5) / (12 - 2.4 - pushed) - 1e5, 1);
  });

  it('rises in stagnation until the hottest node just boils [Raoult: 0.8637 of 3.13 bar, saturated water at 135 °C]', () => {
    const hot = Float64Array.of(90, 90, 135, 120);
    const state = compilePressure(parts);
    settlePressure(state, hot, at(40), 40, true);
    expect(Math.abs(state.top - (0.8637 * 3.13e5 - 1e5))).toBeLessThan(0.8637 * 500); // last digit of 3.13
    expect(saturationTemperature(state.vapourPressure)).toBeCloseTo(135, 6);
    expect(state.steam).toBeGreaterThan(0);
    expect(state.steam).toBeLessThan(0.001);
    const running = compilePressure(parts);
    settlePressure(running, hot, at(40), 40, false);
    expect(running.steam).toBe(0);
    expect(running.gauge).toBeLessThan(state.gauge);
  });

  it('turns whole collectors to steam where they are hot enough [volumes by hand]', () => {
    const state = compilePressure(parts);
    const hot = at(210);
    settlePressure(state, hot, at(10), 10, true);
    expect(state.steam).toBeCloseTo(0.004, 12);
    // All but what stood in the collectors is still at 10 °C: their 4 L stand in the vessel.
    expect(state.gauge).toBeCloseTo((12 * 2.5e5) / (12 - 2.4 - 4) - 1e5, 1);
    expect(saturationTemperature(state.vapourPressure)).toBeLessThan(210);
  });

  it('with steam in the pipes as far as it gets at its own pressure [solved by bisection apart]', () => {
    const steamLine = { power: 300, lossPerMetre: 0.2, bore: 2e-4, length: 20 };
    const state = compilePressure({ ...parts, steamLine, reliefPressure: 20e5 });
    settlePressure(state, at(210), at(10), 10, true);
    expect(state.steam).toBeCloseTo(0.004, 12);
    // Vessel with 2.4 L, 4 L of collectors and A P/[U' (T_s(p) − 30 °C)] of the pipe in it.
    let low = 0;
    let high = 0.004;
    for (let round = 0; round < 60; round++) {
      const middle = (low + high) / 2;
      const top = (12e-3 * 2.5e5) / (12e-3 - 6.4e-3 - middle) - 0.6e5;
      if ((2e-4 * 300) / (0.2 * (saturationTemperature(top) - 30)) > middle) low = middle;
      else high = middle;
    }
    expect(low).toBeGreaterThan(0.002);
    expect(low).toBeLessThan(0.003);
    expect(state.pipeSteam / low).toBeCloseTo(1, 2);
    expect(state.gauge).toBeCloseTo((12e-3 * 2.5e5) / (12e-3 - 6.4e-3 - state.pipeSteam) - 1e5, 0);
    expect(state.mostPipeSteam).toBe(state.pipeSteam);
    settlePressure(state, at(10), at(10), 10, true);
    expect(state.pipeSteam).toBe(0);
    const strong = compilePressure({ ...parts, steamLine: { ...steamLine, power: 3000 }, reliefPressure: 40e5 });
    settlePressure(strong, at(260), at(10), 10, true);
    expect(strong.pipeSteam).toBeCloseTo(0.004, 12); // all of the pipe
  });

  it('boils sooner at altitude: gauge pressures stand on the air’s own [IF97, Raoult; ISO 2533]', () => {
    const air = airPressureAt(2000);
    expect(Math.abs(air - 79_495)).toBeLessThan(1); // table of ISO 2533, 2000 m of geopotential height (from memory)
    const state = compilePressure({ ...parts, airPressure: air });
    settlePressure(state, at(10), at(10), 10, true);
    expect(state.gauge).toBeCloseTo(2.125e5, 3);
    expect(saturationTemperature(state.vapourPressure)).toBeCloseTo(
      boilingPoint('propylene-glycol', 0.4, 1.525e5 + air),
      9,
    );
  });

  it('opens the relief valve, counts the litres, and is low when cold again [requirement]', () => {
    const state = compilePressure({ ...parts, vesselVolume: 0.002, precharge: 1.5e5 });
    const before = state.mass;
    const lost = settlePressure(state, at(180), at(100), 60, true);
    expect(lost).toBeGreaterThan(0);
    expect(before - state.mass).toBeCloseTo(lost * fluidDensity(glycol, 10), 9);
    expect(state.gauge).toBeGreaterThan(5.4e5 - 1);
    expect(state.gauge).toBeLessThan(6e5 + 1);
    expect(settlePressure(state, at(10), at(10), 10, true)).toBe(0);
    expect(state.gauge).toBeLessThan(2.125e5);
  });

  it('lets out liquid alone too, while the loop runs hot, until the valve shuts [requirement]', () => {
    const state = compilePressure({ ...parts, vesselVolume: 0.001 });
    expect(settlePressure(state, at(120), at(120), 120, false)).toBeGreaterThan(0);
    expect(state.steam).toBe(0);
    expect(state.gauge).toBeGreaterThan(5.4e5 - 1);
    expect(state.gauge).toBeLessThan(6e5 + 1);
  });

  it.each([1, 2, 7, 300])(
    'lets out by %d steps from 20 to 180 °C what the steam drives out, to a gulp [content of the vessel at 6 bar, and all of the collectors]',
    (steps) => {
      const state = compilePressure({ ...parts, vesselVolume: 0.002, precharge: 1.5e5 });
      const full = { mass: state.mass, opens: vesselContent(0.002, 1.5e5, 6e5, 1e5) };
      const gulp = full.opens - vesselContent(0.002, 1.5e5, 5.4e5, 1e5);
      let lost = 0;
      for (let step = 1; step <= steps; step++) {
        const hot = 20 + (160 * step) / steps;
        lost += settlePressure(state, at(hot), at(10), 10, true);
      }
      expect(state.steam).toBeCloseTo(0.004, 12);
      // Liquid is left in coil and pipe, less the pipe's steam, and in the vessel.
      const left = (0.004 + 0.004 - state.pipeSteam) * fluidDensity(glycol, 10);
      const whole = (full.mass - left) / fluidDensity(glycol, 10) - full.opens;
      expect(lost).toBeGreaterThan(whole - 1e-9);
      expect(lost).toBeLessThan(whole + gulp);
    },
  );

  it('falls to a vacuum at the top with the vessel empty [direction that physics demands]', () => {
    const state = compilePressure(parts);
    takeOut(state, 3 * 1.04);
    settlePressure(state, at(10), at(10), 10, true);
    expect(state.top).toBeCloseTo(-1e5, 6);
    const share = state.glycol / state.mass;
    expect(makeUpWith(state, 0)).toBeCloseTo((3 * 1.04) / fluidDensity(glycol, 10), 9);
    expect(state.glycol / state.mass).toBeLessThan(share);
    changeFluid(state, compileFluid('propylene-glycol', state.glycol / state.mass));
    settlePressure(state, at(10), at(10), 10, true);
    expect(state.gauge).toBeCloseTo(2.125e5, 1);
  });
});

describe('leak and make-up', () => {
  it('thin the mixture as a stirred volume, however much leaks at once [closed form x ρ = x0 ρ0 e^(−v/V)]', () => {
    for (const steps of [1, 10]) {
      const state = compilePressure(parts);
      const before = 0.4 * fluidDensity(glycol, 10);
      for (let step = 0; step < steps; step++) expect(makeUpWith(state, 0.02 / steps)).toBeCloseTo(0.02 / steps, 9);
      const x = state.glycol / state.mass;
      const after = x * fluidDensity(compileFluid('propylene-glycol', x), 10);
      expect(after / before / Math.exp(-0.02 / state.fillVolume)).toBeCloseTo(1, 6);
    }
  });

  it('brings in what was let out once the loop is below its fill pressure, and nothing while it is above [a filling valve is a pressure reducer]', () => {
    const state = compilePressure({ ...parts, vesselVolume: 0.002, precharge: 1.5e5 });
    const lost = settlePressure(state, at(180), at(100), 60, true);
    const { glycol: held, mass } = state;
    expect(makeUpWith(state, 0)).toBe(0);
    expect([state.glycol, state.mass]).toEqual([held, mass]);
    settlePressure(state, at(10), at(10), 10, true);
    expect(makeUpWith(state, 0)).toBeCloseTo(lost, 4); // at 10 °C and as strong as what left
  });

  it('a leak larger than the loop leaves a trace of its own mixture, and numbers that are finite [requirement]', () => {
    const state = compilePressure(parts);
    const lost = takeOut(state, 1000);
    expect(lost).toBeLessThan(16);
    expect(state.glycol / state.mass).toBeCloseTo(0.4, 6);
    settlePressure(state, at(10), at(10), 10, true);
    expect(makeUpWith(state, 1)).toBeGreaterThan(1);
    expect(state.glycol).toBeGreaterThanOrEqual(0);
    expect(Number.isFinite(state.mass)).toBe(true);
  });
});

describe('saturation pressure', () => {
  // Verification values of IAPWS R7-97(2012), table 35.
  it.each([
    [300, 0.353658941e4],
    [500, 0.263889776e7],
    [600, 0.123443146e8],
  ])('at %d K is %d Pa [IF97, table 35]', (kelvin, pascal) => {
    expect(saturationPressure(kelvin - 273.15) / pascal).toBeCloseTo(1, 8);
    expect(saturationTemperature(pascal)).toBeCloseTo(kelvin - 273.15, 5);
  });
});

describe('burstProtection', () => {
  it.each([
    [0.12, -7],
    [0.24, -18],
    [0.3, -29],
    [0.35, -40],
  ])('of %d propylene glycol by volume is %d °C [a maker’s guide, from memory]', (volume, temperature) => {
    const x = glycolMassFromVolume('propylene-glycol', volume);
    expect(burstProtection('propylene-glycol', x)).toBeCloseTo(temperature, 6);
  });

  it('lies below the freezing point, holds at the end of the table, and is 0 for water [requirement]', () => {
    for (const fluid of ['propylene-glycol', 'ethylene-glycol'] as const) {
      for (let x = 0.02; x <= 0.45; x += 0.01) {
        const { freezingPoint } = compileFluid(fluid, x);
        if (freezingPoint > -29) expect(burstProtection(fluid, x)).toBeLessThan(freezingPoint);
      }
    }
    expect(burstProtection('propylene-glycol', 0.6)).toBe(-40);
    expect(burstProtection('water', 0)).toBe(0);
  });

  it.each([
    ['water', 0.1],
    ['propylene-glycol', 0.7],
    ['ethylene-glycol', Number.NaN],
  ] as const)('refuses %s with %d [requirement]', (fluid, x) => {
    expect(() => burstProtection(fluid, x)).toThrow(DesignError);
  });
});
