import { defineSystem, type SystemInput, simulate, usefulPower } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { nightSky, radiatingTemperature } from '../../../../packages/sim-core/src/physics/collector/night-sky.ts';
import { compileArrayDrivers } from '../../../../packages/sim-core/src/year/array-drivers.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { inventedYear } from '../sun/weather.ts';

const weather = await inventedValley();

const rated = { area: 2, eta0: 0.86, a1: 9, a2: 0.01, a3: 1.4, a4: 0.5, a6: 0.03 }; // invented, unglazed
const withCollector = (collector: object, array: object = {}): SystemInput =>
  ({ ...plainInput, array: { ...plainInput.array, ...array, collector: { ...rated, ...collector } } }) as SystemInput;

const delivered = (input: SystemInput) => sum(simulate(defineSystem(input), weather).columns.solarHeat);

describe('wind and sky in the run', () => {
  it('take in every step with light what the quasi-dynamic form says [usefulPower, hour by hour]', () => {
    const design = defineSystem(withCollector({ glazed: false }));
    const drivers = compileArrayDrivers(design, weather, 1);
    const still = compileArrayDrivers(defineSystem(withCollector({ a3: 0, a4: null, a6: 0 })), weather, 1);
    const { deficit } = nightSky(weather.columns, 40);
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

  it('more wind takes heat; as much as in the test takes none', () => {
    const windy = (wind: number): WeatherYear => ({
      ...weather,
      columns: { ...weather.columns, windSpeed: new Float64Array(8760).fill(wind) },
    });
    const year = (input: SystemInput, wind: number) =>
      sum(simulate(defineSystem(input), windy(wind)).columns.solarHeat) / 3.6e6;
    const plain = delivered(withCollector({ a3: 0, a6: 0 })) / 3.6e6;
    expect(year(withCollector({}), 6)).toBeCloseTo(plain, 6); // half of 6 m/s is the test's 3 m/s
    expect(year(withCollector({}), 2)).toBeGreaterThan(plain);
    expect(year(withCollector({}), 10)).toBeLessThan(plain);
  });

  it('are off by default: the same bits with the wind taken away', () => {
    const calm = { ...weather, columns: { ...weather.columns, windSpeed: null } };
    const design = defineSystem(plainInput);
    expect(design.array.collector).toMatchObject({ a3: 0, a4: null, a6: 0, glazed: true });
    expect(simulate(design, calm).columns.solarHeat).toEqual(simulate(design, weather).columns.solarHeat);
  });

  it('of an unglazed collector hold the sky day and night, eta0 of its deficit where the report has no a4', () => {
    const { a4: _, ...bare } = rated;
    const input = { ...plainInput, array: { ...plainInput.array, collector: { ...bare, glazed: false } } };
    const { a4, skyCoefficient } = defineSystem(input).array.collector;
    expect(a4).toBe(0.86);
    expect(skyCoefficient).toBe(0.86);
    const glazed = { ...input, array: { ...input.array, collector: bare } };
    expect(delivered(input)).toBeLessThan(delivered(glazed));
  });

  it('say so where the weather has no wind, and where it is held', () => {
    const none = simulate(defineSystem(withCollector({})), inventedYear(8, 16, 500, 100), { stepsPerHour: 1 });
    expect(none.weatherAssumptions.join()).toMatch(/Wind: the weather has none/);
    const storm = simulate(defineSystem(withCollector({}, { windFactor: 2 })), weather, { stepsPerHour: 1 });
    const notice = storm.notices.find(({ code }) => code === 'wind-held');
    expect(notice?.hours).toBe(weather.columns.windSpeed!.filter((wind) => 2 * wind > 10).length);
  });

  it('say so where a1 cannot hold the radiation that a4 asks for: the absorber came out colder than its sky', () => {
    const codes = (collector: object) =>
      simulate(defineSystem(withCollector(collector)), weather, { stepsPerHour: 1 }).notices.map(({ code }) => code);
    expect(codes({ a1: 0.8, a3: 0, a4: 0.8, a6: 0 })).toContain('collector-cooled-too-far');
    expect(codes({ a1: 5.5, a3: 0, a4: 0.8, a6: 0 })).not.toContain('collector-cooled-too-far');
  });

  // By hand: a black body at 0 °C sends 315.66 W/m²; surroundings that send 100 less are those of 215.66 W/m², 248.34 K.
  it('surroundings that send 100 W/m² less than the air of 0 °C are at −24.8 °C [Stefan-Boltzmann]', () => {
    expect(radiatingTemperature(0, 100)).toBeCloseTo(248.34 - 273.15, 2);
    expect(radiatingTemperature(17, 0)).toBeCloseTo(17, 12);
  });
});
