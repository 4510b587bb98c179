import { collectorOutlet, incidenceCosine, planeOfArray } from '@noonloop/sim-core/formulas';
import { extraterrestrialNormalOnDay } from '@noonloop/weather-io/sun';
import { describe, expect, it } from 'vitest';
import { sum } from '../examples.ts';
import { hasMoreCases, moreCase, moreCases } from './more-cases.ts';
import { STEPS, stepOf, yearOf } from './subhourly.ts';

const DEGREES = Math.PI / 180;

interface Extraterrestrial {
  readonly latitude_deg: number;
  readonly day: number;
  readonly tilt_towards_south_deg: number;
  readonly declination_deg: number;
  readonly day_kWh_m2: number;
}

/** Where the sun stands at an hour angle ω: D&B 1.6.5 and 1.6.6, azimuth clockwise from north. [°] */
function sunAt(latitude: number, declination: number, w: number): { zenith: number; azimuth: number } {
  const [φ, δ] = [latitude * DEGREES, declination * DEGREES];
  const up = Math.sin(φ) * Math.sin(δ) + Math.cos(φ) * Math.cos(δ) * Math.cos(w);
  const south = Math.sin(φ) * Math.cos(δ) * Math.cos(w) - Math.cos(φ) * Math.sin(δ);
  const azimuth = 180 + Math.atan2(Math.cos(δ) * Math.sin(w), south) / DEGREES;
  return { zenith: Math.acos(Math.min(Math.max(up, -1), 1)) / DEGREES, azimuth };
}

describe.skipIf(!hasMoreCases)('a day above the air on a tilted plane', () => {
  it.each(moreCases<Extraterrestrial>('seasonal_tilt', 'extraterrestrial'))(
    'latitude $latitude_deg°, day $day, tilt $tilt_towards_south_deg°: incidence and distance, summed, are the closed form [D&B 1.10, 2.20, shared cases; 1e-6]',
    ({ day, day_kWh_m2, declination_deg, latitude_deg, tilt_towards_south_deg }) => {
      expect(Math.abs(23.45 * Math.sin((360 * (284 + day) * DEGREES) / 365) - declination_deg)).toBeLessThan(1e-6);
      const plane = { tilt: Math.abs(tilt_towards_south_deg), azimuth: tilt_towards_south_deg < 0 ? 0 : 180 };
      const setting = (latitude: number) =>
        Math.acos(-Math.tan(latitude * DEGREES) * Math.tan(declination_deg * DEGREES));
      const last = Math.min(setting(latitude_deg), setting(latitude_deg - tilt_towards_south_deg));
      // Simpson's rule: smooth between the two sunsets.
      const parts = 2000;
      let integral = 0;
      for (let at = 0; at <= parts; at++) {
        const weight = at === 0 || at === parts ? 1 : at % 2 === 1 ? 4 : 2;
        integral +=
          weight * incidenceCosine(plane, sunAt(latitude_deg, declination_deg, last * ((2 * at) / parts - 1)));
      }
      const hours = (((2 * last) / parts / 3) * integral * 12) / Math.PI;
      expect(Math.abs((extraterrestrialNormalOnDay(day) * hours) / 1000 / day_kWh_m2 - 1)).toBeLessThan(1e-6);
    },
  );
});

interface Energies {
  readonly day: string;
  readonly sky: string;
  readonly tilt_deg: number;
  readonly azimuth_deg: number;
  readonly T_in_C: number;
  readonly collector_10min_Wh: number;
}

const lights = new Map<string, ReturnType<typeof planeOfArray>>();
/** Light on a plane through the days of one sky, made once for all inlets. */
function lightOn(sky: string, tilt: number, azimuth: number): ReturnType<typeof planeOfArray> {
  const key = `${sky} ${tilt} ${azimuth}`;
  const light = lights.get(key) ?? planeOfArray(yearOf(sky, true), { tilt, azimuth, albedo: 0.2 });
  lights.set(key, light);
  return light;
}

describe.skipIf(!hasMoreCases)('a collector’s day by steps of 10 minutes', () => {
  it.each(moreCases<Energies>('subhourly', 'energies'))(
    '$day $sky $tilt_deg°, inlet $T_in_C °C [shared cases, along the flow; 0.05 %]',
    ({ azimuth_deg, collector_10min_Wh, day, sky, T_in_C, tilt_deg }) => {
      const { a1, a2, area_m2, b0, cp_J_kgK, eta0, flow_kg_s, K_diffuse, T_ambient_C } = moreCase<
        Record<string, number>
      >('subhourly', 'collector') as Record<
        'a1' | 'a2' | 'area_m2' | 'b0' | 'cp_J_kgK' | 'eta0' | 'flow_kg_s' | 'K_diffuse' | 'T_ambient_C',
        number
      >;
      const light = lightOn(sky, tilt_deg, azimuth_deg);
      const start = stepOf({ time_utc: `${day}T12:00:00Z` }, 0) - 12 * STEPS;
      const heat = new Float64Array(24 * STEPS);
      for (let step = 0; step < heat.length; step++) {
        const at = start + step;
        const cosine = light.incidenceCosine[at]!;
        const beam = cosine > 0 ? light.beam[at]! * Math.max(1 - b0 * (1 / cosine - 1), 0) : 0;
        const diffuse = K_diffuse * (light.circumsolar[at]! + light.sky[at]! + light.ground[at]!);
        const collector = { area: area_m2, absorbed: eta0 * (beam + diffuse), a1, a2 };
        const rise = collectorOutlet(collector, T_in_C, T_ambient_C, flow_kg_s * cp_J_kgK) - T_in_C;
        heat[step] = Math.max(flow_kg_s * cp_J_kgK * rise, 0) / STEPS;
      }
      expect(Math.abs(sum(heat) / collector_10min_Wh - 1)).toBeLessThan(5e-4);
    },
  );
});
