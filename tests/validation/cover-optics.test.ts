import { coverShares, coverTransmittanceAbsorptance, diffuseModifiers } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { hasMoreCases, moreCases } from './more-cases.ts';
import { referenceTable } from './reference-table.ts';

const rows = referenceTable('reference/more/cover-optics.csv') as Readonly<Record<string, number>>[];
const cover = (one: Readonly<Record<string, number>>) => ({
  covers: one.covers!,
  refractiveIndex: one.n!,
  extinction: one.K_per_m!,
  thickness: one.L_mm! / 1000,
});

describe.skipIf(!hasMoreCases)('light through covers [reference: closed forms and all fluxes solved; 1e-6]', () => {
  it('passes, returns and keeps what the table says', () => {
    expect(rows.length).toBeGreaterThan(100);
    for (const one of rows) {
      const shares = coverShares(cover(one), one.incidence_deg!);
      expect(Math.abs(shares.transmittance - one.transmittance!)).toBeLessThan(1e-6);
      expect(Math.abs(shares.reflectance - one.reflectance!)).toBeLessThan(1e-6);
      expect(Math.abs(shares.absorptance - one.absorptance!)).toBeLessThan(1e-6);
      const taken = coverTransmittanceAbsorptance(cover(one), one.plate_absorptance!, one.incidence_deg!);
      expect(Math.abs(taken - one.tau_alpha!)).toBeLessThan(1e-6);
    }
  });

  it.each(moreCases<Readonly<Record<string, number>>>('cover_hemispherical'))(
    '$covers of n $n: at 0 and 60°',
    (one) => {
      expect(Math.abs(coverShares(cover(one), 0).transmittance - one.tau_normal!)).toBeLessThan(1e-6);
      expect(Math.abs(coverShares(cover(one), 60).reflectance - one.rho_60!)).toBeLessThan(1e-6);
      // As an incidence modifier, over a whole sky: within 1e-5 by the midpoints of our integral.
      expect(Math.abs(diffuseModifiers(cover(one), 0).sky - one.K_hemispherical!)).toBeLessThan(1e-5);
    },
  );
});

describe('light along a cover [limit of Fresnel’s equations: r = 1]', () => {
  it.each([
    [1, 0, 1.526],
    [1, 16, 1.526],
    [2, 0, 1.526],
    [2, 16, 1.526],
    [1, 0, 1],
  ])('%d of K %d/m and n %f: all goes back, none through, and just above it all is finite', (covers, extinction, n) => {
    const glass = { covers, extinction, refractiveIndex: n, thickness: 0.003 };
    expect(coverShares(glass, 90)).toEqual({ transmittance: 0, reflectance: 1, absorptance: 0 });
    for (const angle of [89.99999, 89.9999999, 90 - 1e-13]) {
      const { absorptance, reflectance, transmittance } = coverShares(glass, angle);
      expect(Math.min(transmittance, reflectance, absorptance)).toBeGreaterThan(-1e-12);
      expect(transmittance + reflectance + absorptance).toBeCloseTo(1, 12);
    }
  });
});

describe('a cover that cannot be [requirement]', () => {
  it.each([
    ['covers', { covers: 3 }],
    ['covers', { covers: 1.5 }],
    ['refractiveIndex', { refractiveIndex: 0.9 }],
    ['extinction', { extinction: -1 }],
    ['thickness', { thickness: 0.2 }],
  ])('is refused by its %s', (path, wrong) => {
    const glass = { covers: 1, extinction: 16, refractiveIndex: 1.526, thickness: 0.003, ...wrong };
    expect(() => coverShares(glass, 0)).toThrow(new RegExp(`${path}: found`));
  });
});
