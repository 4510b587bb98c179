import { defineSystem, simulate } from '@noonloop/sim-core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { inventedValley, sum } from '../examples.ts';
import { designs } from './designs.ts';
import { violations } from './invariants.ts';
import { number } from './number.ts';
import { changeWeather, weatherChanges } from './weathers.ts';

const weather = await inventedValley();

describe('any valid design', () => {
  it('gives finite numbers, a balance that closes to 1e-9 in every hour and part, and temperatures between sky and stagnation [conservation]', () => {
    fc.assert(
      fc.property(designs, weatherChanges, (input, change) => {
        const year = changeWeather(weather, change);
        expect(violations(simulate(defineSystem(input), year), year)).toEqual([]);
      }),
      { numRuns: 16, seed: 20261125, endOnFailure: true },
    );
  });

  it('delivers no less with one panel more where nothing throws heat away [requirement]', () => {
    // No high limit, a module in the collectors' plane and an upright sun-facing array: a pump that runs in weak sun with a hot
    // tank may otherwise lose more through a larger array than it gains.
    const facing = fc.record({
      panels: fc.integer({ min: 1, max: 4 }),
      tilt: number(20, 60),
      azimuth: number(150, 210),
      volume: number(0.2, 0.6),
      dailyVolume: number(0.1, 0.4),
    });
    fc.assert(
      fc.property(facing, ({ panels, tilt, azimuth, volume, dailyVolume }) => {
        const delivered = (count: number) =>
          sum(
            simulate(
              defineSystem({
                array: { panels: count, tilt, azimuth, collector: { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012 } },
                tank: { volume, reliefTemperature: 120 },
                draw: { dailyVolume },
                control: { highLimit: null },
              }),
              weather,
            ).columns.solarHeat,
          );
        expect(delivered(panels + 1)).toBeGreaterThanOrEqual(delivered(panels));
      }),
      { numRuns: 4, seed: 20261125, endOnFailure: true },
    );
  });
});
