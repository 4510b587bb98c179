import { defineSystem, type RunColumns, type SystemInput, simulate } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { describe, expect, it } from 'vitest';
import { usefulPower } from '../../packages/sim-core/src/collector/index.ts';
import { inventedValley, plainInput } from '../examples.ts';
import { hasShared } from '../shared.ts';
import { CLIMATES, readClimate } from './standard-system.ts';

/**
 * A large black-painted plate under one glass, computed from its build (Hottel, Whillier, Klein: plate emittance 0.95, transmittance
 * times absorptance 0.82, W 0.15 m, bond 20 W/(m·K)) and fitted, independently: collector-and-tank.json, second build.
 */
const blackPlate = { area: 2.88, eta0: 0.6636899467, a1: 5.668461581, a2: 0.009978072546 };

const [, greensboroFile] = CLIMATES[0];
const years: [string, () => Promise<WeatherYear>][] = [['invented valley', inventedValley]];
if (hasShared(greensboroFile)) years.push(['Greensboro', () => readClimate(greensboroFile)]);

const run = (weather: WeatherYear, change: Partial<SystemInput>): RunColumns =>
  simulate(defineSystem({ ...plainInput, ...change }), weather, { stepsPerHour: 6 }).columns;

const hoursWhere = (chosen: (hour: number) => boolean): number[] =>
  Array.from({ length: 8760 }, (_, hour) => hour).filter(chosen);

const middle = (values: number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!;

describe('large black-painted single-glazed flat plate [common practice, no source: 0.6 to 0.75 kW/m² in full sun with a cool tank]', () => {
  it.each([0, 5, 10])('gives it with fluid %f K above the air in 1000 W/m²', (over) => {
    const conditions = { beamIrradiance: 1000, meanFluidTemperature: 20 + over, ambientTemperature: 20 };
    const perArea = usefulPower(blackPlate, conditions) / blackPlate.area;
    expect(perArea).toBeGreaterThan(600);
    expect(perArea).toBeLessThan(750);
  });

  it.each(years)('gives it in the hours of full sun of a year in %s, tank no warmer than the air', async (_, year) => {
    // One plate on a tank so large that it stays cool.
    const array = { panels: 1, tilt: 36, azimuth: 180, collector: blackPlate };
    const columns = run(await year(), { array, tank: { volume: 1.5 }, draw: { dailyVolume: 1 } });
    const bright = hoursWhere(
      (hour) =>
        columns.irradiance[hour]! > 900 &&
        columns.pumpRunning[hour]! > 0.99 &&
        columns.tankMeanTemperature[hour]! < columns.ambientTemperature[hour]!,
    );
    expect(bright.length).toBeGreaterThan(20);
    // Per 1000 W/m² of the hour's own light, which comes at up to 40° from the normal.
    const shares = bright.map(
      (hour) => columns.collectorHeat[hour]! / 3600 / blackPlate.area / columns.irradiance[hour]!,
    );
    expect(middle(shares)).toBeGreaterThan(0.6);
    expect(Math.max(...shares)).toBeLessThan(0.75);
  });
});

describe('a module of 10 to 20 W runs the pump of a small domestic array [common practice, no source]', () => {
  it.each(years.flatMap(([name, year]) => [10, 20].map((watts) => [watts, name, year] as const)))(
    '%i W, %s: nearly always in sun above 300 W/m², 1 L/min and more for each square metre in bright sun',
    async (watts, _, year) => {
      const size = watts / 20;
      const module = {
        shortCircuitCurrent: 1.24 * size,
        maximumPowerCurrent: 1.14 * size,
        currentTemperatureCoefficient: 0.0007 * size,
      };
      const columns = run(await year(), { pv: { module }, control: { highLimit: null } });
      const sunny = hoursWhere((hour) => columns.irradiance[hour]! > 300);
      const running = sunny.reduce((sum, hour) => sum + columns.pumpRunning[hour]!, 0) / sunny.length;
      expect(running).toBeGreaterThan(0.98);
      const bright = hoursWhere((hour) => columns.irradiance[hour]! > 800);
      expect(middle(bright.map((hour) => columns.loopFlow[hour]! * 6e4)) / 4).toBeGreaterThan(1);
    },
  );
});

describe('a generous array on a PV-run pump without a high limit takes its tank past 85 °C in summer [common practice, no source]', () => {
  it.each(years)('8 m² on 300 L, %s', async (_, year) => {
    const columns = run(await year(), {
      array: { ...plainInput.array, panels: 4 },
      control: { highLimit: null },
    });
    const summer = columns.tankMaximumTemperature.subarray(151 * 24, 243 * 24);
    expect(Math.max(...summer)).toBeGreaterThan(85);
  });
});
