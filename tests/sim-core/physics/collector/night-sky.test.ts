import type { WeatherColumns } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import {
  clearSkyEmissivity,
  cloudySkyEmissivity,
  dewPointOf,
  nightSky,
} from '../../../../packages/sim-core/src/physics/collector/night-sky.ts';

describe('clearSkyEmissivity [Berdahl & Martin 1984 from memory, its polynomial by hand]', () => {
  it.each([
    [0, 0.711],
    [10, 0.7743], // 0.711 + 0.056 + 0.0073
    [-20, 0.6282], // 0.711 − 0.112 + 0.0292
  ])('dew point %i °C: %f', (dewPoint, emissivity) => {
    expect(clearSkyEmissivity(dewPoint)).toBeCloseTo(emissivity, 12);
  });

  it('is never above 1: the polynomial is 1.31 at 60 °C', () => {
    expect(clearSkyEmissivity(60)).toBe(1);
  });

  it('is 0.013 more at midnight and as much less at noon, and 0.012 less for 100 mbar less of air [by hand]', () => {
    expect(clearSkyEmissivity(0, 0)).toBeCloseTo(0.724, 12);
    expect(clearSkyEmissivity(0, 12)).toBeCloseTo(0.698, 12);
    expect(clearSkyEmissivity(0, 6)).toBeCloseTo(0.711, 12);
    expect(clearSkyEmissivity(0, undefined, 9e4)).toBeCloseTo(0.699, 12);
  });
});

// By hand: ln(283.15/273) = 0.0365052, 0.787 + 0.764 × that = 0.8148900; ten tenths 1 + 0.224 − 0.35 + 0.28 = 1.154, five 1.0595.
describe('cloudySkyEmissivity [Clark & Allen 1978 with Walton’s clouds, data dictionary of EPW from memory, by hand]', () => {
  it.each([
    [0, 0.8149],
    [0.5, 0.8149 * 1.0595],
    [1, 0.8149 * 1.154],
  ])('dew point 10 °C, cover %f: %f', (cover, emissivity) => {
    expect(cloudySkyEmissivity(10, cover)).toBeCloseTo(emissivity, 4);
  });

  it('is never above 1', () => {
    expect(cloudySkyEmissivity(35, 1)).toBe(1);
  });
});

describe('dewPointOf [Magnus formula, Sonntag 1990]', () => {
  it('saturated air is at its dew point [definition]', () => {
    for (const air of [-20, 0, 35]) expect(dewPointOf(air, 1)).toBeCloseTo(air, 10);
  });

  // γ = ln 0.5 + 352.4/263.12 = 0.646157; 243.12 γ/(17.62 − γ) = 157.0937/16.973843
  it('20 °C and 50 %: 9.255 °C [by hand; 9.3 °C in tables, from memory]', () => {
    expect(dewPointOf(20, 0.5)).toBeCloseTo(9.255, 3);
  });

  it('takes air as no drier than 1 % [its docstring]', () => {
    expect(dewPointOf(20, 0)).toBe(dewPointOf(20, 0.01));
    expect(dewPointOf(20, 0.02)).toBeGreaterThan(dewPointOf(20, 0.01));
  });
});

/** One hour of air at 10 °C; σ T⁴ of 283.15 K is 364.4836 W/m² [by hand]. */
const BLACK = 364.4836;
const skyOf = (moisture: Partial<WeatherColumns>, elevation = 0) => ({
  columns: {
    dryBulb: Float64Array.of(10),
    cloudCover: null,
    dewPoint: null,
    pressure: Float64Array.of(1e5),
    relativeHumidity: null,
    skyLongwave: null,
    ...moisture,
  } as WeatherColumns,
  site: { name: 'by hand', latitude: 0, longitude: 0, elevation, utcOffset: 0 },
});
const deficit = (moisture: Partial<WeatherColumns>, tilt: number): number =>
  nightSky(skyOf(moisture), tilt).deficit[0]!;

describe('nightSky', () => {
  // Overcast at dew point 10 °C: 0.81489 × 1.154 = 0.940383.
  it('follows the file’s cloud cover before a cloudless sky, and the long-wave column before both [by hand]', () => {
    const clouds = { cloudCover: Float64Array.of(1), dewPoint: Float64Array.of(10) };
    expect(deficit(clouds, 0)).toBeCloseTo(BLACK * 0.059617, 2);
    expect(nightSky(skyOf(clouds), 0).basis).toEqual({ code: 'sky-cloudy', facts: { moisture: 'dew-point' } });
    expect(deficit({ ...clouds, skyLongwave: Float64Array.of(264.4836) }, 0)).toBeCloseTo(100, 3);
  });

  it.each([
    [0, 1],
    [60, 0.75],
    [90, 0.5],
  ])(
    'at a tilt of %i° sees %f of the sky, the rest ground at air temperature [isotropic view factor]',
    (tilt, share) => {
      expect(deficit({ skyLongwave: Float64Array.of(264.4836) }, tilt)).toBeCloseTo(100 * share, 3);
    },
  );

  it('without a long-wave column is that of a cloudless sky, from dew point before humidity before neither [by hand]', () => {
    const dry = Float64Array.of(0);
    // Half past midnight: 0.013 cos 7.5° = 0.0128888 more than the mean of the day.
    const hour = 0.0128888;
    expect(deficit({ dewPoint: dry }, 0)).toBeCloseTo(BLACK * (0.289 - hour), 3);
    expect(deficit({ dewPoint: dry, relativeHumidity: Float64Array.of(1) }, 0)).toBeCloseTo(BLACK * (0.289 - hour), 3);
    expect(deficit({ relativeHumidity: Float64Array.of(1) }, 60)).toBeCloseTo(0.75 * BLACK * (0.2257 - hour), 3);
    // 6 K below air: 4 °C, 0.711 + 0.0224 + 0.001168
    expect(deficit({}, 0)).toBeCloseTo(BLACK * (0.265432 - hour), 3);
    // A station 2000 m up has 794.95 mbar (ISO 2533): 0.024606 less.
    const high = nightSky(skyOf({ dewPoint: dry, pressure: null }, 2000), 0).deficit[0]!;
    expect(high).toBeCloseTo(BLACK * (0.289 - hour + 0.024606), 2);
  });

  it.each([
    [
      { skyLongwave: Float64Array.of(300), dewPoint: Float64Array.of(0) },
      { code: 'sky-longwave', facts: {} },
    ],
    [
      { dewPoint: Float64Array.of(0), relativeHumidity: Float64Array.of(1) },
      { code: 'sky-cloudless', facts: { moisture: 'dew-point' } },
    ],
    [{ relativeHumidity: Float64Array.of(1) }, { code: 'sky-cloudless', facts: { moisture: 'humidity' } }],
    [{}, { code: 'sky-cloudless-dry', facts: { spread: { value: 6, unit: 'K' } } }],
  ])('says what it came from (%#) [requirement]', (moisture, basis) => {
    expect(nightSky(skyOf(moisture), 40).basis).toEqual(basis);
  });
});
