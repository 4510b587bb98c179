import { describe, expect, it } from 'vitest';
import {
  groundReflected,
  hayDaviesSky,
  incidenceCosine,
  isotropicSky,
  perezSky,
  relativeAirMass,
  type SkyConditions,
  type SkyIrradiance,
} from '../../packages/sim-core/src/physics/sun/index.ts';
import { number, type ReferenceRow, referenceTable } from './reference-table.ts';

const lit = referenceTable('reference/solar.csv').filter((row) => !Number.isNaN(number(row, 'dhi_W_m2')));
const rows = lit.filter((row) => number(row, 'dni_W_m2') >= 0);

/** Largest difference over rows between a column of the table and ours. */
function worst(column: string, ours: (row: ReferenceRow) => number, among = rows): number {
  let largest = 0;
  for (const row of among) {
    const difference = Math.abs(ours(row) - number(row, column));
    if (!(difference <= largest)) largest = difference; // NaN is the worst
  }
  return largest;
}

const cosine = (row: ReferenceRow): number =>
  incidenceCosine(
    { tilt: number(row, 'tilt_deg'), azimuth: number(row, 'surface_azimuth_deg') },
    { zenith: number(row, 'zenith_deg'), azimuth: number(row, 'azimuth_deg') },
  );

const conditions = (row: ReferenceRow): SkyConditions => ({
  dhi: number(row, 'dhi_W_m2'),
  dni: Math.max(number(row, 'dni_W_m2'), 0),
  extraterrestrialNormal: number(row, 'extraterrestrial_normal_W_m2'),
  zenith: number(row, 'zenith_deg'),
  incidenceCosine: cosine(row),
  tilt: number(row, 'tilt_deg'),
});

const sum = (light: SkyIrradiance): number => light.circumsolar + light.sky;

// Irradiance is printed to 0.0001 W/m², angles to 0.00001°, the inputs too: 0.0001 W/m² is what that leaves.
const PRINTED = 1e-4;

describe.skipIf(lit.length === 0)('transposition row by row [pvlib 6382338a7 with the NREL SPA sun, solar.csv]', () => {
  it('has 264 rows with sun and a beam that is not negative', () => {
    expect(rows.length).toBe(264);
  });

  it('gives the incidence angle within 0.00002°', () => {
    expect(worst('incidence_deg', (row) => (Math.acos(cosine(row)) * 180) / Math.PI)).toBeLessThan(2e-5);
  });

  it('gives the relative air mass within what 0.00001° of zenith is at 88°', () => {
    expect(worst('relative_airmass', (row) => relativeAirMass(number(row, 'zenith_deg')))).toBeLessThan(7e-5);
  });

  it('gives the beam within 0.0001 W/m²', () => {
    const beam = (row: ReferenceRow) => number(row, 'dni_W_m2') * Math.max(cosine(row), 0);
    expect(worst('beam_W_m2', beam)).toBeLessThan(PRINTED);
  });

  it.each([
    ['isotropic', isotropicSky],
    ['haydavies', hayDaviesSky],
    ['perez', perezSky],
  ] as const)('gives the %s sky within 0.0001 W/m²', (name, model) => {
    expect(worst(`sky_${name}_W_m2`, (row) => sum(model(conditions(row))))).toBeLessThan(PRINTED);
  });

  it('gives the light from the ground within 0.0001 W/m²', () => {
    const ground = (row: ReferenceRow) =>
      groundReflected(number(row, 'ghi_W_m2'), number(row, 'albedo'), number(row, 'tilt_deg'));
    expect(worst('ground_W_m2', ground)).toBeLessThan(PRINTED);
  });

  it('gives the skies of the ten rows whose beam is −0.001 to −0.004 W/m² by rounding, with no beam, within 0.004', () => {
    const dim = lit.filter((row) => number(row, 'dni_W_m2') < 0);
    expect(dim.length).toBe(10);
    expect(worst('sky_haydavies_W_m2', (row) => sum(hayDaviesSky(conditions(row))), dim)).toBeLessThan(0.004);
    expect(worst('sky_perez_W_m2', (row) => sum(perezSky(conditions(row))), dim)).toBeLessThan(0.004);
  });
});
