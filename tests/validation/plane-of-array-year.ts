// Light on planes through a year of real files against sums of two independent scripts.
import type { WeatherYear } from '@noonloop/weather-io';
import { expect } from 'vitest';
import { type PlaneDefinition, planeOfArray } from '../../packages/sim-core/src/physics/sun/index.ts';
import { hasShared } from '../shared.ts';
import { readRealAt } from '../weather-io/real-files.ts';
import { number, referenceTable } from './reference-table.ts';

export const rows = referenceTable('reference/poa-annual-checked.csv');
export const FILES = [
  'tmy3-greensboro-nc.csv',
  'tmy3-sand-point-ak.csv',
  'pvgis-45N-8E.csv',
  'pvgis-45N-8E.epw',
  'nsrdb-tmy-40N-108W.csv',
  'nsrdb-40N-108W-2017-30min.csv',
];

export const present = rows.length > 0 && FILES.every((file) => hasShared(`weather/${file}`));

const years = new Map<string, WeatherYear>();

/** Weather as the reference took it: albedo 0.2 throughout, whatever the file has. Made once: planes share its sun. */
export async function weatherOf(file: string): Promise<WeatherYear> {
  const known = years.get(file);
  if (known !== undefined) return known;
  const weather = await readRealAt(`weather/${file}`);
  const year = { ...weather, columns: { ...weather.columns, albedo: null } };
  years.set(file, year);
  return year;
}

export const MODELS = ['perez', 'haydavies', 'isotropic'] as const;

/** Year's sums. [kWh/m²] */
export function annual(weather: WeatherYear, plane: PlaneDefinition, stepsPerHour: number) {
  const light = planeOfArray(weather, plane, { stepsPerHour });
  const sum = (part: Float64Array) => part.reduce((total, value) => total + value, 0) / stepsPerHour / 1000;
  return { beam: sum(light.beam), ground: sum(light.ground), total: sum(light.total) };
}

/** Totals of three sky models at 35 and 45° south and their beam, in steps of ten minutes, within 0.5 per cent. */
export async function tenMinutes(file: string): Promise<void> {
  const weather = await weatherOf(file);
  const mine = rows.filter((row) => row.file === file);
  expect(mine.length).toBe(2);
  for (const row of mine) {
    const plane = { tilt: number(row, 'tilt_deg'), azimuth: number(row, 'azimuth_deg') };
    for (const model of MODELS) {
      const { beam, total } = annual(weather, { ...plane, model }, 6);
      expect(Math.abs(total / number(row, `total_${model}_kWh_m2`) - 1)).toBeLessThan(0.005);
      expect(Math.abs(beam / number(row, 'beam_kWh_m2') - 1)).toBeLessThan(0.005);
    }
  }
}
