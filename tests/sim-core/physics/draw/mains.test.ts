import { defineSystem } from '@noonloop/sim-core';
import { HOURS_OF_YEAR, type WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import {
  MAINS_FLOOR,
  mainsClimate,
  mainsColumn,
  mainsTemperature,
} from '../../../../packages/sim-core/src/physics/draw/index.ts';
import { plainInput } from '../../../examples.ts';

/** Invented weather: air of one cosine a year, coldest at its start. */
function weather(mean: number, amplitude: number, latitude: number): WeatherYear {
  const zero = new Float64Array(HOURS_OF_YEAR);
  return {
    site: { name: 'invented', latitude, longitude: 0, elevation: 0, utcOffset: 0 },
    format: 'plain',
    source: 'invented',
    columns: {
      ghi: zero,
      dni: zero,
      dhi: zero,
      dryBulb: zero.map((_, hour) => mean - amplitude * Math.cos((2 * Math.PI * hour) / HOURS_OF_YEAR)),
      dewPoint: null,
      relativeHumidity: null,
      windSpeed: null,
      pressure: null,
      skyLongwave: null,
      cloudCover: null,
      albedo: null,
      snowDepth: null,
    },
    irradianceMidpoint: 0.5,
    calendarYears: new Int16Array(HOURS_OF_YEAR).fill(2001),
    assumptions: [],
  };
}

describe('mainsColumn', () => {
  it('from the weather: day by day the public formula, floor included [requirement]', () => {
    const year = weather(10, 12, 47);
    const column = mainsColumn('from-weather', year);
    const climate = mainsClimate(year);
    expect(column).toHaveLength(8760);
    expect(climate.annualMean).toBeCloseTo(10, 9);
    // By hand: the cosine of 12 K integrated over January, 744 h from its foot, and over July, from 36 h before its top.
    expect(climate.monthlyRange).toBeCloseTo(11.4386 + 11.5165, 2);
    expect(climate.southern).toBe(false);
    expect(mainsClimate(weather(10, 12, 0)).southern).toBe(false); // on the equator is not south of it
    expect(mainsClimate(weather(10, 12, -1)).southern).toBe(true);
    for (const day of [1, 100, 365]) {
      expect(column[24 * (day - 1)]).toBe(mainsTemperature(climate, day));
      expect(column[24 * day - 1]).toBe(mainsTemperature(climate, day));
    }
  });

  it('is warmest in the local summer on both sides of the equator [requirement]', () => {
    const warmest = (column: Float64Array) => column.indexOf(Math.max(...column)) / 24;
    expect(warmest(mainsColumn('from-weather', weather(12, 10, 40)))).toBeGreaterThan(196); // lags the air
    expect(warmest(mainsColumn('from-weather', weather(12, 10, -40)))).toBeLessThan(90);
  });

  it(`never gives less than ${MAINS_FLOOR} °C [judgement: colder is no water]`, () => {
    const column = mainsColumn('from-weather', weather(-8, 20, 65));
    expect(Math.min(...column)).toBe(MAINS_FLOOR);
  });

  it('does not turn the seasons round where the air’s mean is below −15.6 °C [requirement]', () => {
    const column = mainsColumn('from-weather', weather(-20, 20, 75));
    expect(new Set(column).size).toBe(1);
  });

  it('one number is constant [requirement]', () => {
    expect(new Set(mainsColumn(11, weather(10, 10, 40)))).toEqual(new Set([11]));
  });

  it('twelve values: met in the middle of each month, linear between, around the turn of the year [closed form]', () => {
    const months = [5, 5, 7, 9, 12, 15, 17, 18, 16, 13, 9, 6];
    const column = mainsColumn(months, weather(10, 10, 40));
    // Middle of January is hour 372: between the hours 371.5 and 372.5.
    expect((column[371]! + column[372]!) / 2).toBeCloseTo(5, 1);
    // Turn of the year is half-way from mid-December to mid-January, both of 31 days.
    expect((column[8759]! + column[0]!) / 2).toBeCloseTo(5.5, 6);
    const mean = column.reduce((sum, value) => sum + value, 0) / 8760;
    const given =
      months.reduce((sum, value, month) => sum + value * [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31][month]!, 0) /
      365;
    expect(Math.abs(mean - given)).toBeLessThan(0.1);
  });

  it.each([[[1, 2, 3]], [new Array(12).fill(50)], [-3], [Number.NaN], ['cold' as 'from-weather']])(
    'refuses %j [requirement]',
    (mains) => {
      expect(() => mainsColumn(mains, weather(10, 10, 40))).toThrow(DesignError);
    },
  );
});

describe('mains as a wave', () => {
  it('has its mean, its swing and its coldest day [closed form]', () => {
    const column = mainsColumn({ mean: 12, swing: 10, coldestDay: 40 }, weather(10, 8, 51));
    expect(column[24 * 39 + 5]).toBeCloseTo(7, 12);
    expect(Math.max(...column)).toBeCloseTo(17, 3);
    expect(column.reduce((total, value) => total + value, 0) / HOURS_OF_YEAR).toBeCloseTo(12, 6);
    const coldest = (latitude: number) => {
      const days = mainsColumn({ mean: 12, swing: 10 }, weather(10, 8, latitude));
      return 1 + Math.floor(days.indexOf(Math.min(...days)) / 24);
    };
    expect([coldest(51), coldest(-34)]).toEqual([45, 228]);
  });

  it('is refused where a day would be ice or no water of a main [requirement]', () => {
    const wrong = (mains: unknown) => () => defineSystem({ ...plainInput, draw: { dailyVolume: 0.2, mains } as never });
    for (const mains of [
      { mean: 3, swing: 10 },
      { mean: 38, swing: 10 },
      { mean: 12 },
      { mean: 12, swing: -1 },
      { mean: 12, swing: 5, coldestDay: 400 },
      { mean: 12, swing: 5, warmest: 200 },
    ])
      expect(wrong(mains), JSON.stringify(mains)).toThrow(
        /draw\.mains: found an object, expected .* \{ mean, swing \}/,
      );
    expect(
      defineSystem({ ...plainInput, draw: { dailyVolume: 0.2, mains: { mean: 12, swing: 10 } } }).draw.mains,
    ).toEqual({
      mean: 12,
      swing: 10,
    });
  });
});
