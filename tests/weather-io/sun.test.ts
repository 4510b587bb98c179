import {
  extraterrestrialNormal,
  extraterrestrialNormalOnDay,
  SOLAR_CONSTANT,
  sunPosition,
  sunPositionInto,
} from '@noonloop/weather-io/sun';
import { describe, expect, it } from 'vitest';

const noon = { time: Date.UTC(2023, 5, 21, 12), latitude: 45, longitude: 0 };

describe('sunPosition', () => {
  it('moves through the horizon without a jump of refraction [closed form: 15°/h × cos latitude × sin azimuth]', () => {
    const out = new Float64Array(2);
    let before = Number.NaN;
    let steps = 0;
    for (let second = 0; second < 7200; second += 10) {
      sunPositionInto(out, 0, Date.UTC(2023, 2, 20, 17) + second * 1000, 45, 0);
      const expected = (15 / 360) * Math.cos(Math.PI / 4) * Math.abs(Math.sin((out[1]! * Math.PI) / 180));
      if (second > 0) {
        expect(out[0]! - before).toBeCloseTo(expected, 4);
        steps++;
      }
      before = out[0]!;
    }
    expect(steps).toBe(719);
    expect(before).toBeGreaterThan(92); // it has set meanwhile
  });

  it('has the refraction out above the horizon as below: the zeniths of both poles sum to 180° [closed form]', () => {
    for (let day = 1; day < 366; day += 7) {
      const time = Date.UTC(2023, 0, day, 6);
      const zenith = (latitude: number) => sunPosition({ time, latitude, longitude: 0 }).zenith;
      // One pole sees the sun, the other has it below the horizon; refraction left in would show as up to 0.5°.
      expect(zenith(90) + zenith(-90)).toBeCloseTo(180, 6);
    }
  });

  it('writes where it is told and nothing else [ours]', () => {
    const out = new Float64Array(5).fill(7);
    sunPositionInto(out, 2, noon.time, noon.latitude, noon.longitude);
    expect([out[0], out[1], out[4]]).toEqual([7, 7, 7]);
    expect({ zenith: out[2], azimuth: out[3] }).toEqual(sunPosition(noon));
  });

  it.each([{ time: Number.NaN }, { latitude: 90.1 }, { longitude: -181 }, { latitude: Infinity }])(
    'refuses %j [requirement]',
    (part) => {
      expect(() => sunPosition({ ...noon, ...part })).toThrow(RangeError);
    },
  );
});

describe('extraterrestrial irradiance', () => {
  it('averages to the solar constant times 1.00011 [closed form: Fourier series over whole periods]', () => {
    let sum = 0;
    for (let day = 1; day <= 365; day++) sum += extraterrestrialNormalOnDay(day);
    expect(sum / 365 / SOLAR_CONSTANT).toBeCloseTo(1.00011, 10);
  });

  it('goes by the UTC date, the whole day alike [ours]', () => {
    const value = extraterrestrialNormalOnDay(221);
    expect(extraterrestrialNormal(Date.UTC(2006, 7, 9))).toBe(value);
    expect(extraterrestrialNormal(Date.UTC(2006, 7, 9, 23, 59))).toBe(value);
    expect(() => extraterrestrialNormal(Number.NaN)).toThrow(RangeError);
  });
});
