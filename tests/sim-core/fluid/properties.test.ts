import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DesignError } from '../../../packages/sim-core/src/errors.ts';
import {
  boilingPoint,
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidProperties,
  fluidSpecificHeat,
  fluidViscosity,
  glycolMassForFreezing,
} from '../../../packages/sim-core/src/fluid/index.ts';
import {
  waterConductivity,
  waterDensity,
  waterSpecificHeat,
  waterViscosity,
} from '../../../packages/sim-core/src/fluid/water.ts';

const fluids = fc.constantFrom('propylene-glycol' as const, 'ethylene-glycol' as const);

describe('compileFluid', () => {
  it('stands for the water correlations within 1e-5 from 0 to 140 °C [stated error of the fit]', () => {
    const c = compileFluid('water', 0);
    for (let t = 0; t <= 140; t += 0.25) {
      expect(Math.abs(fluidDensity(c, t) / waterDensity(t) - 1)).toBeLessThan(1e-5);
      expect(Math.abs(fluidSpecificHeat(c, t) / waterSpecificHeat(t) - 1)).toBeLessThan(1e-5);
      expect(Math.abs(fluidConductivity(c, t) / waterConductivity(t) - 1)).toBeLessThan(1e-5);
      expect(Math.abs(fluidViscosity(c, t) / waterViscosity(t) - 1)).toBeLessThan(1e-5);
    }
  });

  it('holds properties below the freezing point and above 140 °C [its contract]', () => {
    const c = compileFluid('propylene-glycol', 0.4);
    expect(fluidViscosity(c, -60)).toBe(fluidViscosity(c, c.freezingPoint));
    expect(fluidDensity(c, 250)).toBe(fluidDensity(c, 140));
  });

  it('is thinner and lighter when warmer, for every share and temperature [liquids of this kind]', () => {
    fc.assert(
      fc.property(
        fluids,
        fc.double({ min: 0, max: 0.6, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (fluid, x, s) => {
          const c = compileFluid(fluid, x);
          const from = Math.max(c.lowest, 5); // water-like mixtures have a density maximum below
          const t = from + s * (139 - from);
          expect(fluidViscosity(c, t + 1)).toBeLessThan(fluidViscosity(c, t));
          expect(fluidDensity(c, t + 1)).toBeLessThan(fluidDensity(c, t));
        },
      ),
    );
  });
});

describe('fluidProperties', () => {
  it.each([
    ['ice', { fluid: 'water', temperature: -1 }],
    ['a slush', { fluid: 'propylene-glycol', glycolMassFraction: 0.3, temperature: -20 }],
    ['steam', { fluid: 'water', temperature: 105, absolutePressure: 101_325 }],
    ['more than 140 °C', { fluid: 'water', temperature: 141 }],
    ['no number', { fluid: 'water', temperature: Number.NaN }],
    ['glycol in water', { fluid: 'water', glycolMassFraction: 0.3, temperature: 20 }],
    ['too much glycol', { fluid: 'ethylene-glycol', glycolMassFraction: 0.7, temperature: 20 }],
    ['an unknown fluid', { fluid: 'brine' as 'water', temperature: 20 }],
  ] as const)('refuses %s', (_, query) => {
    expect(() => fluidProperties(query)).toThrow(DesignError);
  });

  it('says where, what was found and what was expected', () => {
    expect(() => fluidProperties({ fluid: 'water', temperature: -1 })).toThrow(
      /temperature: found -1, expected .* 0 to 140 °C/,
    );
  });
});

describe('boilingPoint', () => {
  it('rises with the share of glycol and the pressure [ideal solution]', () => {
    expect(boilingPoint('ethylene-glycol', 0.5, 3e5)).toBeGreaterThan(boilingPoint('ethylene-glycol', 0.3, 3e5));
    expect(boilingPoint('ethylene-glycol', 0.3, 4e5)).toBeGreaterThan(boilingPoint('ethylene-glycol', 0.3, 3e5));
    expect(boilingPoint('propylene-glycol', 0, 2e5)).toBeCloseTo(boilingPoint('water', 0, 2e5), 12);
  });

  it('refuses a pressure outside the saturation line', () => {
    expect(() => boilingPoint('water', 0, 100)).toThrow(DesignError);
    expect(() => boilingPoint('water', 0, 3e7)).toThrow(DesignError);
  });
});

describe('glycolMassForFreezing', () => {
  it('refuses a cold that no mixture of the source withstands', () => {
    expect(() => glycolMassForFreezing('propylene-glycol', -80)).toThrow(DesignError);
  });
});
