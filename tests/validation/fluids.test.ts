import { describe, expect, it } from 'vitest';
import type { LoopFluid } from '../../packages/sim-core/src/design/design.ts';
import { boilingPoint } from '../../packages/sim-core/src/physics/fluid/boiling.ts';
import {
  glycolMassForFreezing,
  glycolMassFromVolume,
  glycolVolumeFromMass,
  glycolVolumeOfMixture,
} from '../../packages/sim-core/src/physics/fluid/mixture.ts';
import { fluidProperties } from '../../packages/sim-core/src/physics/fluid/properties.ts';
import {
  waterConductivity,
  waterDensity,
  waterSpecificHeat,
  waterViscosity,
} from '../../packages/sim-core/src/physics/fluid/water.ts';
import { hasShared } from '../shared.ts';
import { number, type ReferenceRow, referenceTable } from './reference-table.ts';

const TABLE = 'reference/fluids.csv';
const COLUMNS = [
  ['density', 'density_kg_m3', 1],
  ['specificHeat', 'specific_heat_J_kgK', 1],
  ['conductivity', 'conductivity_W_mK', 1],
  ['dynamicViscosity', 'dynamic_viscosity_mPas', 1e-3],
] as const;
const rows = referenceTable(TABLE);

/** Largest relative difference from the table, by property. */
function worst(chosen: readonly ReferenceRow[]): Record<string, number> {
  const result: Record<string, number> = {};
  for (const row of chosen) {
    const ours = fluidProperties({
      fluid: row.fluid as LoopFluid,
      glycolMassFraction: number(row, 'mass_fraction'),
      temperature: number(row, 'temperature_C'),
    });
    for (const [name, column, unit] of COLUMNS) {
      result[name] = Math.max(result[name] ?? 0, Math.abs(ours[name] / (number(row, column) * unit) - 1));
    }
  }
  return result;
}

const water = (from: number, to: number) =>
  rows.filter(
    (row) => row.fluid === 'water' && number(row, 'temperature_C') >= from && number(row, 'temperature_C') <= to,
  );

describe.skipIf(!hasShared(TABLE))('fluid properties against fluids.csv', () => {
  it('water 0 to 100 °C: within 0.01 %, density 0.0005 % [IAPWS-95 with the 2008 and 2011 transport releases]', () => {
    const chosen = water(0, 100);
    expect(chosen).toHaveLength(15);
    const difference = worst(chosen);
    expect(difference.density).toBeLessThan(5e-6);
    expect(Math.max(...Object.values(difference))).toBeLessThan(1e-4);
  });

  it('water 110 to 140 °C, extrapolated: density 0.05 %, specific heat 0.9 %, conductivity and viscosity 0.2 % [IAPWS-95; how far the formula runs off, docs/theory/fluids.md]', () => {
    const chosen = water(110, 140);
    expect(chosen).toHaveLength(4);
    const difference = worst(chosen);
    expect(difference.density).toBeLessThan(5e-4);
    expect(difference.specificHeat).toBeLessThan(9e-3);
    expect(difference.conductivity).toBeLessThan(2e-3);
    expect(difference.dynamicViscosity).toBeLessThan(2e-3);
  });

  it.each(['propylene-glycol', 'ethylene-glycol'])(
    '%s: every row to its six digits [Melinder 2010, computed apart]',
    (name) => {
      const chosen = rows.filter((row) => row.fluid === name);
      expect(chosen.length).toBeGreaterThan(80);
      expect(Math.max(...Object.values(worst(chosen)))).toBeLessThan(6e-6);
    },
  );

  it('says valid and extrapolated as the table does, and its freezing points to six digits [Melinder 2010]', () => {
    const glycols = rows.filter((row) => row.fluid !== 'water');
    for (const row of glycols) {
      const ours = fluidProperties({
        fluid: row.fluid as LoopFluid,
        glycolMassFraction: number(row, 'mass_fraction'),
        temperature: number(row, 'temperature_C'),
      });
      expect(ours.range).toBe(row.range);
      expect(Math.abs(ours.freezingPoint - number(row, 'freezing_point_C'))).toBeLessThan(5e-5);
    }
    expect(glycols.length).toBeGreaterThan(160);
  });
});

describe('water by IAPWS SR6-08', () => {
  it('260 K, supercooled: 997.06836 kg/m³ [an open implementation of the release, its documented example]', () => {
    expect(waterDensity(260 - 273.15)).toBeCloseTo(997.0683602710492, 6);
  });

  it('20 °C: 998.207 kg/m³, 4184.05 J/(kg·K), 0.598012 W/(m·K), 1.00160 mPa·s [IAPWS-95 and transport releases]', () => {
    expect(waterDensity(20)).toBeCloseTo(998.207, 2);
    expect(Math.abs(waterSpecificHeat(20) / 4184.05 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(waterConductivity(20) / 0.598012 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(waterViscosity(20) / 1.0016e-3 - 1)).toBeLessThan(1e-4);
  });

  it('is densest near 4 °C: 999.975 kg/m³ [IAPWS-95]', () => {
    expect(waterDensity(3.98)).toBeCloseTo(999.975, 2);
    expect(waterDensity(3.98)).toBeGreaterThan(Math.max(waterDensity(3), waterDensity(5)));
  });
});

describe('boilingPoint', () => {
  it('0.1, 1 and 10 MPa: 372.755919, 453.035632 and 584.149488 K [IAPWS R7-97, table 36]', () => {
    expect(boilingPoint('water', 0, 1e5) + 273.15).toBeCloseTo(372.755919, 5);
    expect(boilingPoint('water', 0, 1e6) + 273.15).toBeCloseTo(453.035632, 5);
    expect(boilingPoint('water', 0, 1e7) + 273.15).toBeCloseTo(584.149488, 5);
  });

  it.each([
    [1.01325, 99.97],
    [1.5, 111.35],
    [2, 120.21],
    [3, 133.52],
    [4, 143.61],
    [5, 151.83],
    [6, 158.83],
    [7, 164.95],
  ])('water at %f bar: %f °C [IAPWS, computed apart]', (bar, boiling) => {
    expect(Math.abs(boilingPoint('water', 0, bar * 1e5) - boiling)).toBeLessThan(0.01);
  });

  it.each([
    [0.4, 1.01325, 104.1],
    [0.4, 2, 124.9],
    [0.4, 3, 138.6],
    [0.4, 4, 149],
    [0.4, 6, 164.6],
    [0.5, 1.01325, 106],
    [0.5, 2, 127.1],
    [0.5, 3, 140.9],
    [0.5, 4, 151.4],
    [0.5, 6, 167.3],
  ])('propylene glycol x = %f at %f bar: %f °C [Raoult, computed apart]', (x, bar, boiling) => {
    expect(Math.abs(boilingPoint('propylene-glycol', x, bar * 1e5) - boiling)).toBeLessThan(0.06);
  });
});

describe('glycol shares', () => {
  it.each([
    [0.1, 0.1034, 0.1004, 0.1102, 0.1002],
    [0.2, 0.206, 0.2019, 0.218, 0.2011],
    [0.3, 0.3079, 0.3044, 0.3233, 0.3025],
    [0.4, 0.409, 0.4078, 0.4264, 0.4043],
    [0.5, 0.5093, 0.511, 0.5272, 0.506],
  ])(
    '%f by volume before mixing: mass %f, mixture %f (PG); %f, %f (EG) [computed apart, to four digits]',
    (v, pg, pgV, eg, egV) => {
      for (const [glycol, x, mixture] of [
        ['propylene-glycol', pg, pgV],
        ['ethylene-glycol', eg, egV],
      ] as const) {
        const mass = glycolMassFromVolume(glycol, v);
        expect(Math.abs(mass - x)).toBeLessThan(6e-5);
        expect(glycolVolumeFromMass(glycol, mass)).toBeCloseTo(v, 12);
        expect(Math.abs(glycolVolumeOfMixture(glycol, mass) - mixture)).toBeLessThan(6e-5);
      }
    },
  );

  it('propylene glycol mass 0.20 to 0.50 is volume 0.1942, 0.2939, 0.3956, 0.4988 within 0.01 [ASHRAE-based data]', () => {
    // Their volume is neither of the two meanings exactly; the pure densities are handbook values from memory.
    for (const [x, v] of [
      [0.2, 0.1942],
      [0.3, 0.2939],
      [0.4, 0.3956],
      [0.5, 0.4988],
    ] as const) {
      expect(Math.abs(glycolVolumeFromMass('propylene-glycol', x) - v)).toBeLessThan(0.01);
    }
  });

  it.each([
    [-5, 0.153, 0.14],
    [-10, 0.254, 0.235],
    [-15, 0.332, 0.305],
    [-20, 0.394, 0.362],
    [-25, 0.443, 0.411],
    [-30, 0.484, 0.454],
    [-35, 0.519, 0.493],
    [-40, 0.549, 0.528],
  ])('freezing at %f °C takes mass %f (PG), %f (EG) [Melinder 2010, turned round apart]', (freezing, pg, eg) => {
    expect(Math.abs(glycolMassForFreezing('propylene-glycol', freezing) - pg)).toBeLessThan(6e-4);
    expect(Math.abs(glycolMassForFreezing('ethylene-glycol', freezing) - eg)).toBeLessThan(6e-4);
  });
});
