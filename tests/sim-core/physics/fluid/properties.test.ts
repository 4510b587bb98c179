import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import {
  boilingPoint,
  burstProtection,
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidProperties,
  fluidSpecificHeat,
  fluidViscosity,
  glycolMassForFreezing,
  glycolMassFromVolume,
} from '../../../../packages/sim-core/src/physics/fluid/index.ts';
import {
  waterConductivity,
  waterDensity,
  waterExpansion,
  waterSpecificHeat,
  waterViscosity,
} from '../../../../packages/sim-core/src/physics/fluid/water.ts';

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
  ] as const)('refuses %s [requirement]', (_, query) => {
    expect(() => fluidProperties(query)).toThrow(DesignError);
  });

  it('takes each of its three fluids, pressure given or not, and says from where on it extrapolates [docstring]', () => {
    expect(fluidProperties({ fluid: 'water', temperature: 110 }).range).toBe('valid');
    expect(fluidProperties({ fluid: 'water', temperature: 110.1 }).range).toBe('extrapolated');
    for (const fluid of ['propylene-glycol', 'ethylene-glycol'] as const) {
      const at = (temperature: number) =>
        fluidProperties({ fluid, glycolMassFraction: 0.3, temperature, absolutePressure: 5e5 }).range;
      expect([at(-10), at(100), at(100.1)]).toEqual(['valid', 'valid', 'extrapolated']);
    }
  });

  // Density and specific heat: IAPWS-95; conductivity and viscosity: IAPWS 2011 and 2008; all from memory, to these digits.
  it('water at 20 °C: 998.21 kg/m³, 4184 J/(kg·K), 0.598 W/(m·K), 1.002 mPa·s [IAPWS, from memory]', () => {
    const water = fluidProperties({ fluid: 'water', temperature: 20 });
    expect(Math.abs(water.density - 998.21)).toBeLessThan(0.01);
    expect(Math.abs(water.specificHeat - 4184)).toBeLessThan(1);
    expect(Math.abs(water.conductivity - 0.598)).toBeLessThan(1e-3);
    expect(Math.abs(water.dynamicViscosity - 1.002e-3)).toBeLessThan(1e-6);
    expect(water.freezingPoint).toBe(0);
  });

  it('says where, what was found and what was expected [requirement]', () => {
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

  it('refuses a pressure outside the saturation line [requirement]', () => {
    expect(() => boilingPoint('water', 0, 100)).toThrow(DesignError);
    expect(() => boilingPoint('water', 0, 3e7)).toThrow(DesignError);
  });
});

describe('waterExpansion', () => {
  // Rounded to three digits: the correlations of Kell, of Tanaka (2001) and of IAPWS differ in the fourth.
  it('is 2.07e-4 at 20 °C and 3.03e-4 at 30 °C [tables of water, three digits, from memory]', () => {
    expect(Math.abs(waterExpansion(20) - 2.07e-4)).toBeLessThan(5e-7);
    expect(Math.abs(waterExpansion(30) - 3.03e-4)).toBeLessThan(5e-7);
  });

  it('changes its sign between 3.9 and 4.1 °C [densest at 3.98 °C, from memory]', () => {
    expect(waterExpansion(3.9)).toBeLessThan(0);
    expect(waterExpansion(4.1)).toBeGreaterThan(0);
  });
});

describe('burstProtection', () => {
  it('is 0 °C without glycol, meets the rows of its table and holds the last [its docstring]', () => {
    const at = (volume: number) =>
      burstProtection('propylene-glycol', glycolMassFromVolume('propylene-glycol', volume));
    expect(burstProtection('propylene-glycol', 0)).toBe(0);
    expect(burstProtection('ethylene-glycol', 0)).toBe(0);
    expect(burstProtection('water', 0)).toBe(0);
    expect(at(0.2)).toBeCloseTo(-12, 10);
    expect(at(0.22)).toBeCloseTo(-15, 10);
    expect(burstProtection('propylene-glycol', 0.6)).toBe(-40);
    expect(burstProtection('ethylene-glycol', 0.6)).toBe(-29);
  });
});

describe('glycolMassForFreezing', () => {
  it('refuses a cold that no mixture of the source withstands [requirement]', () => {
    expect(() => glycolMassForFreezing('propylene-glycol', -80)).toThrow(DesignError);
  });
});
