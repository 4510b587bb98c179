import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';

const weather = await inventedValley();
const [JULY, AUGUST] = [4344, 5088] as const;

/** Three panels over a tank, no check valve, and a pump that stands for a while. */
const input = (from: string, to: string): SystemInput => ({
  array: { ...plainInput.array, panels: 3, collector: { area: '21 ft2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '80 gal' },
  draw: { dailyVolume: '200 L' },
  loop: { checkValve: false },
  control: { outages: [{ from, to, kind: 'pump' }] },
});

function yearBy(outage: readonly [string, string], stepsPerHour: number) {
  const { balance, columns } = simulate(defineSystem(input(...outage)), weather, { stepsPerHour });
  for (const part of Object.values(balance)) expect(part.worstRelative).toBeLessThan(1e-9);
  return {
    delivered: sum(columns.solarHeat),
    inJuly: sum(columns.solarHeat.subarray(JULY, AUGUST)),
    taken: sum(columns.thermosiphonHeat),
    stagnation: sum(columns.stagnation),
    hottest: Math.max(...columns.absorberTemperature),
  };
}

// The flow by buoyancy is solved with the temperatures that it makes: held over a step, it once carried a July's heat that was not there.
describe.each([
  ['a pump that stands in July', ['07-01', '07-31']],
  ['no pump all year', ['01-01', '12-31']],
] as const)('%s, no check valve, against 240 steps an hour', (_, outage) => {
  const finest = yearBy(outage, 240);
  const fine = yearBy(outage, 60);

  it.each([6, 12, 60])(
    '%d steps: 2 % of the heat, 3 h of stagnation, 0.5 K of the hottest absorber [convergence]',
    (steps) => {
      const coarse = steps === 60 ? fine : yearBy(outage, steps);
      expect(Math.abs(coarse.delivered / finest.delivered - 1)).toBeLessThan(0.02);
      expect(Math.abs(coarse.inJuly / finest.inJuly - 1)).toBeLessThan(0.02);
      // What the nights take is the more delicate, and set against 60 steps.
      expect(Math.abs(coarse.taken / fine.taken - 1)).toBeLessThan(steps === 6 ? 0.06 : 0.02);
      expect(Math.abs(coarse.stagnation - finest.stagnation)).toBeLessThan(3);
      expect(Math.abs(coarse.hottest - finest.hottest)).toBeLessThan(0.5);
    },
  );
});
