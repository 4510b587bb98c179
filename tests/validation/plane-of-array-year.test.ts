import type { WeatherYear } from '@noonloop/weather-io';
import { extraterrestrialNormal, hourStarts, sunPosition } from '@noonloop/weather-io/sun';
import { describe, expect, it } from 'vitest';
import {
  groundReflected,
  incidenceCosine,
  type PlaneOrientation,
  perezSky,
  planeOfArray,
} from '../../packages/sim-core/src/physics/sun/index.ts';
import { annual, FILES, MODELS, present, rows, tenMinutes, weatherOf } from './plane-of-array-year.ts';
import { number } from './reference-table.ts';

describe.skipIf(!present)('plane of array through a year [two independent scripts, poa-annual-checked.csv]', () => {
  // The other files: plane-of-array-year.long.test.ts.
  it.each([...FILES.slice(0, 2), FILES.at(-1)!])(
    '%s: totals of three sky models at 35 and 45° south and their beam within 0.5 percent',
    tenMinutes,
  );

  // With one step the sun stands at the middle of the hour, as in the reference; what is left is the sun's position.
  // (The half-hourly file is excepted: the reference took both half-hours, the reader makes one hour of them.)
  it.each(FILES.slice(0, 5))(
    '%s: with one step an hour everything within 0.01 percent and its rounding',
    async (file) => {
      const weather = await weatherOf(file);
      for (const row of rows.filter((candidate) => candidate.file === file)) {
        const plane = { tilt: number(row, 'tilt_deg'), azimuth: number(row, 'azimuth_deg') };
        const within = (ours: number, column: string) =>
          expect(Math.abs(ours - number(row, column))).toBeLessThan(0.006 + 1e-4 * number(row, column));
        for (const model of MODELS) {
          const { beam, ground, total } = annual(weather, { ...plane, model }, 1);
          within(beam, 'beam_kWh_m2');
          within(ground, 'ground_kWh_m2');
          within(total, `total_${model}_kWh_m2`);
        }
      }
    },
  );

  it('Greensboro loses 3.45 kWh/m² of beam to hours with the sun down at mid-hour, 0.2 with six steps', async () => {
    const weather = await weatherOf('tmy3-greensboro-nc.csv');
    const south = { tilt: 35, azimuth: 180 };
    expect(planeOfArray(weather, south, { stepsPerHour: 1 }).lostBeam / 3.6e6).toBeCloseTo(3.45, 2);
    expect(planeOfArray(weather, south).lostBeam / 3.6e6).toBeLessThan(0.2);
  });
});

/** Total of a year by the row-by-row functions, with the sun at the middle of the hour: the reference's treatment. */
function rowByRow(weather: WeatherYear, plane: PlaneOrientation): number {
  const { ghi, dni, dhi } = weather.columns;
  const starts = hourStarts(weather);
  let total = 0;
  for (let hour = 0; hour < 8760; hour++) {
    const time = starts[hour]! + weather.irradianceMidpoint * 3_600_000;
    const sun = sunPosition({ time, latitude: weather.site.latitude, longitude: weather.site.longitude });
    total += groundReflected(ghi[hour]!, 0.2, plane.tilt);
    if (sun.zenith >= 90) {
      total += (dhi[hour]! * (1 + Math.cos((plane.tilt * Math.PI) / 180))) / 2;
      continue;
    }
    const cosine = incidenceCosine(plane, sun);
    const sky = perezSky({
      dhi: dhi[hour]!,
      dni: dni[hour]!,
      extraterrestrialNormal: extraterrestrialNormal(time),
      zenith: sun.zenith,
      incidenceCosine: cosine,
      tilt: plane.tilt,
    });
    total += dni[hour]! * Math.max(cosine, 0) + sky.circumsolar + sky.sky;
  }
  return total / 1000;
}

describe.skipIf(!present)(
  'planes that a south-facing check cannot see [row functions of transposition.test.ts, one by one]',
  () => {
    it.each([
      ['pvgis-45N-8E.epw', 90, 270],
      ['pvgis-45N-8E.epw', 90, 90],
      ['tmy3-greensboro-nc.csv', 90, 270],
      ['tmy3-greensboro-nc.csv', 30, 90],
      ['tmy3-sand-point-ak.csv', 60, 225],
    ] as const)(
      '%s, tilt %i, azimuth %i: equal with one step, within 0.5 percent with six',
      async (file, tilt, azimuth) => {
        const weather = await weatherOf(file);
        const expected = rowByRow(weather, { tilt, azimuth });
        expect(Math.abs(annual(weather, { tilt, azimuth }, 1).total / expected - 1)).toBeLessThan(1e-9);
        const six = annual(weather, { tilt, azimuth }, 6).total;
        expect(Math.abs(six / expected - 1)).toBeLessThan(0.005);
      },
    );
  },
);
