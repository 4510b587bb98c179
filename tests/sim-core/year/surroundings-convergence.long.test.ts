import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';

const weather = await inventedValley();

// The project's own limits: half the step moves the year's heat by less than 0.1 percent and the peak by less than 0.2 K.
const angles = [0, 20, 40, 60, 80];
const everything: SystemInput = {
  ...plainInput,
  array: {
    ...plainInput.array,
    panels: 3,
    inSeries: 3,
    skyModel: 'hay-davies',
    horizon: [
      { azimuth: 60, altitude: 3 },
      { azimuth: 120, altitude: 18 },
      { azimuth: 240, altitude: 9 },
    ],
    obstacle: { distance: 2.5, width: 3, height: 1.8, azimuth: 200 },
    collector: {
      area: 2,
      eta0: 0.7,
      a1: 3,
      a2: 0.01,
      a3: 0.15,
      a4: 0.3,
      a6: 0.01,
      incidenceModifier: {
        transversal: { angles, values: [1, 1.05, 1.2, 1.25, 0.8] },
        longitudinal: { angles, values: [1, 1, 0.96, 0.85, 0.5] },
        tubes: 'upright',
      },
    },
  },
};

describe('wind, sky, tubes, series, horizon and obstacle together', () => {
  const run = (stepsPerHour: number) => simulate(defineSystem(everything), weather, { stepsPerHour });
  const usual = run(6);

  it('half the step moves the delivered energy by less than 0.001 and the peak by less than 0.2 K [convergence]', () => {
    const finer = run(12).columns;
    expect(Math.abs(sum(finer.solarHeat) / sum(usual.columns.solarHeat) - 1)).toBeLessThan(0.001);
    const peak = (columns: typeof finer) => Math.max(...columns.tankMaximumTemperature);
    expect(Math.abs(peak(finer) - peak(usual.columns))).toBeLessThan(0.2);
  });

  it('close the balance of every part in every hour to 1e-9 [conservation]', () => {
    for (const [part, { worstRelative }] of Object.entries(usual.balance))
      expect(worstRelative, part).toBeLessThan(1e-9);
  });
});
