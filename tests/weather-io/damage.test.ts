// What is wrong with a whole file is caught, on the invented valley; for real files see tests/bench/weather-damage.ts.
import { checkWeather, vetWeather, WeatherError } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { inventedValley } from '../examples.ts';
import { climateYear, DAMAGES } from './damage.ts';

const valley = await inventedValley();
const spoilt = (kind: string, name: string) => DAMAGES[kind]!.find(([other]) => other === name)![1](valley)!;

describe('faults of a whole year [planted; requirement: a run stops at what changes its result]', () => {
  it.each([
    ['place', 'longitude of the wrong sign', 'clock', 'a longitude of the wrong sign: -77.5'],
    ['place', 'latitude of the wrong sign', 'hemisphere', 'the sun of latitude 41.2°'],
    ['place', 'zone 1 h off', 'clock', 'a wrong time zone: UTC-5 would fit'],
    ['place', 'elevation 5000 m too high', 'elevation', 'the elevation is stated as 5300 m'],
    ['light', 'kW/m² for W/m²', 'light-sum', 'the unit may be kW/m²'],
    ['light', 'halved', 'light-sum', 'light may be missing, halved or in another unit'],
    ['light', '20 W/m² more at all hours', 'light-at-night', 'while the sun is down'],
    ['light', '20 W/m² more in GHI while there is light', 'light-offset', 'GHI is 21 W/m² above'],
    ['light', 'DNI and DHI changed about', 'columns-swapped', 'DNI and DHI may have changed places'],
    ['light', 'GHI and DNI changed about', 'columns-swapped', 'GHI and DNI may have changed places'],
    ['light', 'GHI and DHI changed about', 'columns-swapped', 'GHI and DHI may have changed places'],
    ['light', 'GHI 0', 'column-empty', 'next to no global'],
    ['light', 'DNI 0', 'column-empty', 'next to no beam'],
    ['light', 'DHI 0', 'column-empty', 'next to no diffuse'],
    ['light', 'none for two weeks', 'no-light-by-day', '13 days'],
    ['light', 'a month copied into the next', 'repeated-day', '30 days'],
    ['air', 'dew point for dry bulb', 'dew-point', 'The dry bulb is the dew point all year'],
    ['air', 'dry bulb with the wrong sign', 'air', 'the dry bulb may have the wrong sign'],
    ['air', 'half a year off', 'air', 'warm when the sun is low'],
    ['air', '5 K too warm', 'dew-point', 'do not go together'],
    ['air', '0 °C all year', 'air', '0.0 °C all year'],
    ['air', 'relative humidity as a fraction', 'humidity', 'never passes 1.0 %'],
    ['air', 'wind in km/h', 'wind', 'may be km/h'],
  ])('%s: %s', (kind, name, code, words) => {
    // Insisted upon, a year carries its faults as assumptions; that it stops at them otherwise: below.
    const { assumptions } = vetWeather(spoilt(kind, name), { insist: true });
    expect(assumptions.find((found) => found.code === `fault-${code}`)?.text).toContain(words);
  });
});

describe('vetWeather [requirement]', () => {
  it('hands a sound year on as it is', () => {
    expect(vetWeather(valley)).toBe(valley);
    expect(checkWeather(valley).verdict).toEqual({ usable: true, faults: 0, doubts: 0, text: 'usable' });
  });

  it('carries a doubt with its numbers', () => {
    const dim = spoilt('light', 'a fifth less');
    const less = {
      ...dim,
      columns: {
        ...dim.columns,
        ghi: dim.columns.ghi.map((v) => v * 0.95),
        dni: dim.columns.dni.map((v) => v * 0.95),
        dhi: dim.columns.dhi.map((v) => v * 0.95),
      },
    };
    const { assumptions } = vetWeather(less);
    const doubt = assumptions.find(({ code }) => code === 'doubt-light-sum')!;
    // The valley's five clearest days have 75.5 % by a script of its own; × 0.8 × 0.95.
    expect(doubt.numbers!.clearness).toBeCloseTo(0.755 * 0.76, 2);
    expect(doubt.text).toContain('57.4 %');
    expect(checkWeather(less).verdict.text).toBe('usable; one doubt');
  });

  it('stops with each fault in words, and goes on where it is insisted, saying so', () => {
    const halved = spoilt('light', 'halved');
    try {
      vetWeather(halved);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(WeatherError);
      const { issues } = error as WeatherError;
      expect(issues.every(({ code, line }) => code === 'implausible' && line === null)).toBe(true);
      expect(issues[0]!.remedy).toContain('insist');
    }
    const insisted = vetWeather(halved, { insist: true });
    expect(insisted.columns).toBe(halved.columns);
    expect(insisted.assumptions.map(({ code }) => code)).toContain('fault-light-sum');
    expect(vetWeather(insisted, { insist: true }).assumptions).toEqual(insisted.assumptions);
  });
});

// Three more: damage.long.test.ts.
describe('years that are no fault of anyone [synthetic climates; real files: docs/theory/weather-quality.md]', () => {
  it.each([
    [-35, 18, -6, 0.55, 0.6],
    [5, 27, 0.5, 0.5, 0.85],
    [69, -5, 14, 0.45, 0.75],
  ] as const)('latitude %f°: usable, no doubt', (latitude, mean, swing, clearness, humidity) => {
    expect(checkWeather(climateYear(latitude, mean, swing, clearness, humidity)).verdict.text).toBe('usable');
  });
});
