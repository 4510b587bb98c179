import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { usefulPower } from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { assumptionWords } from '../../../../packages/reports/src/words/weather.ts';
import { nightSky } from '../../../../packages/sim-core/src/physics/collector/night-sky.ts';
import { windAtHeight, windShare } from '../../../../packages/sim-core/src/physics/collector/quasi-dynamic.ts';
import { compileArrayDrivers } from '../../../../packages/sim-core/src/year/group-drivers.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { liveSpan } from '../../../property/span.ts';
import { inventedYear } from '../sun/weather.ts';

const weather = await inventedValley();

const rated = { area: 2, eta0: 0.86, a1: 9, a2: 0.01, a3: 1.4, a4: 0.5, a6: 0.03, a7: 0.01 }; // invented, unglazed
const withCollector = (collector: object, array: object = {}): SystemInput =>
  ({ ...plainInput, array: { ...plainInput.array, ...array, collector: { ...rated, ...collector } } }) as SystemInput;

/** Five weeks of spring, by coarse steps. */
const weeks = (input: SystemInput, of = weather) => liveSpan(defineSystem(input), of, 2160, 3000, 2).columns.solarHeat;

describe('wind and sky in the run', () => {
  it('take in every step with light what the quasi-dynamic form says [usefulPower, hour by hour]', () => {
    const design = defineSystem(withCollector({ glazed: false }));
    const drivers = compileArrayDrivers(design, weather, 1);
    const still = compileArrayDrivers(defineSystem(withCollector({ a3: 0, a4: null, a6: 0, a7: 0 })), weather, 1);
    const { deficit } = nightSky(weather, 40);
    let compared = 0;
    for (let hour = 0; hour < 8760; hour += 7) {
      const light = drivers.irradiance[hour]!;
      if (light < 20) continue;
      const air = weather.columns.dryBulb[hour]!;
      const power = usefulPower(rated, {
        beamIrradiance: light,
        beamModifier: still.absorbed[hour]! / (rated.eta0 * light),
        meanFluidTemperature: air + 20,
        ambientTemperature: air,
        windSpeed: 0.5 * weather.columns.windSpeed![hour]!,
        longwaveIrradiance: 5.670374419e-8 * (air + 273.15) ** 4 - deficit[hour]!,
      });
      const inRun = drivers.absorbed[hour]! - drivers.lossCoefficient![hour]! * 20 - rated.a2 * 400;
      expect(inRun).toBeCloseTo(power / rated.area, 8);
      compared++;
    }
    expect(compared).toBeGreaterThan(400);
  });

  it('take in the dark the sky by a4 − a7 u, day and night alike [usefulPower at the air’s temperature]', () => {
    const drivers = compileArrayDrivers(defineSystem(withCollector({ glazed: false })), weather, 1);
    const { deficit } = nightSky(weather, 40);
    for (let hour = 0; hour < 8760; hour += 97) {
      const air = weather.columns.dryBulb[hour]!;
      const power = usefulPower(rated, {
        beamIrradiance: 0,
        meanFluidTemperature: air,
        ambientTemperature: air,
        windSpeed: 0.5 * weather.columns.windSpeed![hour]!,
        longwaveIrradiance: 5.670374419e-8 * (air + 273.15) ** 4 - deficit[hour]!,
      });
      expect(drivers.skyLoss[hour]).toBeCloseTo(-power / rated.area, 8);
    }
  });

  // Logarithmic profile over grass of 0.03 m: ln(2/0.03)/ln(10/0.03) = 0.72295. Common practice for roofs is 0.65 to 0.7 of a wind at 2 m.
  it('of a station at 2 m are 0.69 of its wind, where that at 10 m is halved [logarithmic profile]', () => {
    expect(windShare(weather.site, 0.5)).toBe(0.5);
    expect(windShare({ ...weather.site, windHeight: 10 }, 0.5)).toBeCloseTo(0.5, 12);
    expect(windShare({ ...weather.site, windHeight: 2 }, 0.5)).toBeCloseTo(0.5 / 0.72295, 4);
    const low = { ...weather, site: { ...weather.site, windHeight: 2 } };
    const same = {
      ...weather,
      columns: { ...weather.columns, windSpeed: weather.columns.windSpeed!.map((wind) => wind / windAtHeight(2)) },
    };
    expect(sum(weeks(withCollector({}), low))).toBeCloseTo(sum(weeks(withCollector({}), same)), -1);
    const { arrayAssumptions } = compileArrayDrivers(defineSystem(withCollector({})), low, 1);
    const along = arrayAssumptions.find(({ code }) => code === 'wind-along-collectors')!;
    expect(assumptionWords(along, 'metric')).toBe(
      'Wind along the collectors: 0.50 of that at 10 m over open ground, 0.69 of the file’s at 2 m.',
    );
    expect(assumptionWords(along, 'us')).toMatch(/at 33 ft over .* file’s at [67](\.\d+)? ft/);
  });

  it('more wind takes heat; as much as in the test takes none [direction that physics demands]', () => {
    const windy = (wind: number): WeatherYear => ({
      ...weather,
      columns: { ...weather.columns, windSpeed: new Float64Array(8760).fill(wind) },
    });
    const delivered = (wind: number) => sum(weeks(withCollector({}), windy(wind))) / 3.6e6;
    const plain = sum(weeks(withCollector({ a3: 0, a6: 0, a7: 0 }))) / 3.6e6;
    expect(delivered(6)).toBeCloseTo(plain, 6); // half of 6 m/s is the test's 3 m/s
    expect(delivered(2)).toBeGreaterThan(plain);
    expect(delivered(10)).toBeLessThan(plain);
  });

  it('are off by default: the same bits with the wind taken away [requirement]', () => {
    const calm = { ...weather, columns: { ...weather.columns, windSpeed: null } };
    const design = defineSystem(plainInput);
    expect(design.array.collector).toMatchObject({
      a3: 0,
      a4: null,
      a6: 0,
      a7: 0,
      eta0: 0.75,
      eta0Basis: 'beam',
      glazed: true,
    });
    expect(weeks(plainInput, calm)).toEqual(weeks(plainInput));
  });

  it('of an unglazed collector hold the sky day and night, eta0 of its deficit where the report has no a4 [requirement]', () => {
    const { a4: _, a7: __, ...bare } = rated;
    const input = { ...plainInput, array: { ...plainInput.array, collector: { ...bare, glazed: false } } };
    const { a4, skyCoefficient } = defineSystem(input).array.collector;
    expect(a4).toBe(0.86);
    expect(skyCoefficient).toBe(0.86);
    const glazed = { ...input, array: { ...input.array, collector: bare } };
    expect(sum(weeks(input))).toBeLessThan(sum(weeks(glazed)));
  });

  it('say so where the weather has no wind, and where it is held [requirement]', () => {
    const none = simulate(defineSystem(withCollector({})), inventedYear(8, 16, 500, 100), { stepsPerHour: 1 });
    expect(none.assumptions.map(({ code }) => code)).toContain('no-wind');
    const storm = simulate(defineSystem(withCollector({}, { windFactor: 2 })), weather, { stepsPerHour: 1 });
    const notice = storm.notices.find(({ code }) => code === 'wind-held');
    expect(notice?.hours).toBe(weather.columns.windSpeed!.filter((wind) => 2 * wind > 10).length);
  });
});
