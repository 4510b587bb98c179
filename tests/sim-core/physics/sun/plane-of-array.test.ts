import { describe, expect, it } from 'vitest';
import { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import { incidenceCosine, planeOfArray, relativeAirMass } from '../../../../packages/sim-core/src/physics/sun/index.ts';
import { inventedYear } from './weather.ts';

const sum = (column: Float64Array): number => column.reduce((total, value) => total + value, 0);

describe('planeOfArray', () => {
  it('on a level plane gives back DNI cos Z and DHI in any sky model, and sees no ground [geometry]', () => {
    const weather = inventedYear(8, 15, 500, 100);
    const perez = planeOfArray(weather, { tilt: 0, azimuth: 180, model: 'hay-davies' }, { stepsPerHour: 1 });
    const hour = 172 * 24 + 12;
    expect(perez.circumsolar[hour]! + perez.sky[hour]!).toBeCloseTo(100, 10);
    expect(perez.beam[hour]).toBeCloseTo(500 * perez.incidenceCosine[hour]!, 10);
    expect(sum(perez.ground)).toBe(0);
  });

  it('adds up: total = beam + circumsolar + sky + ground, nothing negative, in each of 52,560 steps [conservation]', () => {
    const light = planeOfArray(inventedYear(0, 23, 300, 100), { tilt: 90, azimuth: 300 });
    let [least, farthest] = [Number.POSITIVE_INFINITY, 0];
    for (let at = 0; at < light.total.length; at++) {
      const parts = [light.beam[at]!, light.circumsolar[at]!, light.sky[at]!, light.ground[at]!] as const;
      least = Math.min(least, ...parts);
      farthest = Math.max(farthest, Math.abs(light.total[at]! - (parts[0] + parts[1] + parts[2] + parts[3])));
    }
    expect(least).toBeGreaterThanOrEqual(0);
    expect(farthest).toBeLessThan(0.5e-9);
  });

  it('shines from the east in the morning and from the west in the afternoon [azimuth clockwise from north]', () => {
    const weather = inventedYear(5, 18, 500, 100);
    const half = (azimuth: number, from: number, to: number) => {
      const { beam } = planeOfArray(weather, { tilt: 90, azimuth }, { stepsPerHour: 1 });
      return sum(beam.filter((_, hour) => hour % 24 >= from && hour % 24 < to));
    };
    expect(half(90, 0, 12)).toBeGreaterThan(30 * half(90, 13, 24));
    expect(half(270, 12, 24)).toBeGreaterThan(30 * half(270, 0, 11));
  });

  it('treats diffuse light of hours without sun as a uniform sky and counts their beam as lost [requirement]', () => {
    const weather = inventedYear(0, 1, 50, 20);
    const light = planeOfArray(weather, { tilt: 60, azimuth: 180, albedo: 0 });
    expect(sum(light.beam) + sum(light.circumsolar)).toBe(0);
    expect(light.sky[0]).toBeCloseTo(20 * 0.75, 12);
    expect(light.lostBeamHours).toBe(730);
    expect(light.lostBeam).toBe(730 * 50 * 3600);
  });

  it('takes the albedo of the weather where it has one, else the argument [requirement]', () => {
    const weather = inventedYear(8, 15, 500, 100);
    const plane = { tilt: 60, azimuth: 180, albedo: 0.3 };
    const snow = { ...weather, columns: { ...weather.columns, albedo: new Float64Array(8760).fill(0.6) } };
    expect(sum(planeOfArray(snow, plane).ground)).toBeCloseTo(2 * sum(planeOfArray(weather, plane).ground), 4);
  });

  it('refuses a tilt of 200°, an unknown model and an albedo of 20 [requirement]', () => {
    const weather = inventedYear(8, 15, 500, 100);
    expect(() => planeOfArray(weather, { tilt: 200, azimuth: 180 })).toThrow(/plane\.tilt: found 200.*0 to 180 °/);
    expect(() => planeOfArray(weather, { tilt: 30, azimuth: 180, model: 'best' as 'perez' })).toThrow(/"best"/);
    expect(() => planeOfArray(weather, { tilt: 30, azimuth: 180, albedo: 20 })).toThrow(DesignError);
  });
});

describe('incidenceCosine', () => {
  it('is 1 square on, 0 edge on, −1 from behind [geometry]', () => {
    const wall = { tilt: 90, azimuth: 270 };
    expect(incidenceCosine(wall, { zenith: 90, azimuth: 270 })).toBeCloseTo(1, 15);
    expect(incidenceCosine(wall, { zenith: 0, azimuth: 0 })).toBeCloseTo(0, 15);
    expect(incidenceCosine(wall, { zenith: 90, azimuth: 90 })).toBeCloseTo(-1, 15);
  });

  it('is 0.817 at 43° N, tilt 45°, 15° west of south, 13 February 10:30 [Duffie & Beckman ex. 1.6.1, from memory]', () => {
    // Solar time; declination −14°, hour angle −22.5°; zenith and azimuth from these by hand.
    const [lat, dec, hourAngle] = [43, -14, -22.5].map((degrees) => (degrees * Math.PI) / 180) as [
      number,
      number,
      number,
    ];
    const cosZenith = Math.sin(lat) * Math.sin(dec) + Math.cos(lat) * Math.cos(dec) * Math.cos(hourAngle);
    const east = -Math.cos(dec) * Math.sin(hourAngle);
    const north = Math.cos(lat) * Math.sin(dec) - Math.sin(lat) * Math.cos(dec) * Math.cos(hourAngle);
    const sun = {
      zenith: (Math.acos(cosZenith) * 180) / Math.PI,
      azimuth: ((Math.atan2(east, north) * 180) / Math.PI + 360) % 360,
    };
    expect(incidenceCosine({ tilt: 45, azimuth: 195 }, sun)).toBeCloseTo(0.817, 3);
  });
});

describe('relativeAirMass', () => {
  it('is 1 overhead, 1.99 at 60° and 37.92 at the horizon [Kasten & Young 1989]', () => {
    expect(relativeAirMass(0)).toBeCloseTo(1, 3);
    expect(relativeAirMass(60)).toBeCloseTo(1.99, 2);
    expect(relativeAirMass(90)).toBeCloseTo(37.92, 2);
  });

  it('refuses a sun below the horizon [requirement]', () => {
    expect(() => relativeAirMass(91)).toThrow(/zenith: found 91/);
  });
});
