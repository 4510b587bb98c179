import { isDeepStrictEqual } from 'node:util';
import { checkWeather, type WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { sunTrack } from '../../../../packages/sim-core/src/physics/sun/index.ts';
import { inventedYear } from './weather.ts';

const hourMean = (steps: Float64Array, hour: number, stepsPerHour: number): number => {
  let sum = 0;
  for (let at = hour * stepsPerHour; at < (hour + 1) * stepsPerHour; at++) sum += steps[at]!;
  return sum / stepsPerHour;
};

describe('sunTrack', () => {
  it.each([1, 6, 12])(
    'keeps the DNI, DHI and GHI of every hour with sun at %i steps [conservation]',
    (stepsPerHour) => {
      const weather = inventedYear(0, 23, 300, 100);
      const track = sunTrack(weather, stepsPerHour);
      let [sunlit, farthest] = [0, 0];
      const compare = (column: Float64Array, hour: number, given: number): void => {
        farthest = Math.max(farthest, Math.abs(hourMean(column, hour, stepsPerHour) - given));
      };
      for (let hour = 0; hour < 8760; hour++) {
        compare(track.dhi, hour, 100);
        compare(track.ghi, hour, 250);
        if (hourMean(track.up, hour, stepsPerHour) === 0) continue;
        sunlit++;
        compare(track.dni, hour, 300);
      }
      expect(farthest).toBeLessThan(0.5e-10);
      expect(track.lostBeamHours).toBe(8760 - sunlit);
      expect(track.lostBeam).toBe((8760 - sunlit) * 300 * 3600);
    },
  );

  it('gives the steps of a sunrise hour nothing before the sun is up, and the rest in proportion to its height [definition]', () => {
    const track = sunTrack(inventedYear(0, 23, 300, 100), 12);
    let [partly, unequal, farthest] = [0, 0, 0];
    for (let hour = 0; hour < 8760; hour++) {
      const up = track.up.subarray(hour * 12, hour * 12 + 12);
      const sunlit = up.filter((height) => height > 0).length;
      if (sunlit === 0 || sunlit === 12) continue;
      partly++;
      const total = up.reduce((sum, height) => sum + height, 0);
      for (let step = 0; step < 12; step++) {
        if (track.dni[hour * 12 + step] !== (up[step]! > 0 ? (300 * 12) / sunlit : 0)) unequal++;
        farthest = Math.max(farthest, Math.abs(track.dhi[hour * 12 + step]! - (1200 * up[step]!) / total));
      }
    }
    expect(unequal).toBe(0);
    expect(farthest).toBeLessThan(0.5e-10);
    expect(partly).toBeGreaterThan(365);
  });

  it('looks at the sun: unit vectors in every step with sun, highest towards the south at noon [requirement]', () => {
    const track = sunTrack(inventedYear(6, 18, 300, 100), 6);
    let farthest = 0;
    for (let at = 0; at < track.up.length; at++) {
      if (track.up[at] === 0) continue;
      farthest = Math.max(farthest, Math.abs(Math.hypot(track.east[at]!, track.north[at]!, track.up[at]!) - 1));
    }
    expect(farthest).toBeLessThan(0.5e-12);
    const noon = (172 * 24 + 12) * 6; // 22 June, 12:00 to 12:10; 40° N: zenith near 40 − 23.44°
    expect((Math.acos(track.up[noon]!) * 180) / Math.PI).toBeCloseTo(16.6, 0);
    expect(track.north[noon]).toBeLessThan(-0.27);
  });

  // By hand: light of an instant on the hour stands for the half hours before and after it; of 0.1761 h, in steps of ten minutes,
  // for the hour that begins 0.1761 − 0.5 = −0.32 h, to the nearest step −2 steps, after the row's.
  it.each([
    [0, 6, -3],
    [0.1761, 6, -2],
    [0.1761, 12, -4],
    [0.1761, 1, 0],
    [0.5, 6, 0],
    [0.6761, 12, 2],
  ])(
    'light %f h into its row stands in the hours of the clock: of %i steps moved by %i [requirement]',
    (midpoint, steps, shift) => {
      const weather = { ...inventedYear(12, 12, 300, 100), irradianceMidpoint: midpoint };
      const track = sunTrack(weather, steps);
      expect(track.shift).toBe(shift);
      const noon = (172 * 24 + 12) * steps + shift;
      expect(Array.from(track.dhi.subarray(noon, noon + steps)).every((value) => value > 0)).toBe(true);
      expect([track.dhi[noon - 1], track.dhi[noon + steps]]).toEqual([0, 0]);
      expect(track.dhi.subarray(noon, noon + steps).reduce((sum, value) => sum + value, 0)).toBeCloseTo(100 * steps, 9);
    },
  );

  it('light that leaves the year at one end comes in at the other [requirement]', () => {
    const polar = inventedYear(0, 0, 0, 60);
    const track = sunTrack({ ...polar, irradianceMidpoint: 0 }, 6);
    expect(Array.from(track.dhi.subarray(-3))).toEqual([60, 60, 60]);
    expect(Array.from(track.dhi.subarray(0, 4))).toEqual([60, 60, 60, 0]);
  });

  it('is computed once for a weather year and a number of steps [requirement]', () => {
    const weather = inventedYear(6, 18, 300, 100);
    expect(sunTrack(weather, 6)).toBe(sunTrack(weather, 6));
    expect(sunTrack(weather, 12)).not.toBe(sunTrack(weather, 6));
  });

  it('a year that was looked over has the same sun to the bit; another place or instant has its own [requirement]', () => {
    const fresh = () => inventedYear(5, 19, 300, 100);
    const looked = fresh();
    checkWeather(looked);
    const same = (year: WeatherYear) => {
      const own = { ...year, calendarYears: year.calendarYears.slice() };
      for (const key of ['east', 'north', 'up', 'dni'] as const)
        expect(isDeepStrictEqual(sunTrack(year, 2)[key], sunTrack(own, 2)[key]), key).toBe(true);
    };
    same(looked);
    same({ ...looked, irradianceMidpoint: 0.25 });
    same({ ...looked, site: { ...looked.site, latitude: -20 } });
    expect(sunTrack(looked, 2).up.some((up) => up > 0.9)).toBe(true);
  });

  it.each([0, 241, 2.5, Number.NaN])('refuses %f steps an hour [requirement]', (steps) => {
    expect(() => sunTrack(inventedYear(6, 18, 300, 100), steps)).toThrow(/stepsPerHour.*from 1 to 240/);
  });
});
