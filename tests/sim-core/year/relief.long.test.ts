import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';

const weather = await inventedValley();

/** Far too much array on far too little water, no high limit: steps that would pass the valve's setting by some to some tens of kelvins. */
function yearBy(area: number, litres: number, stepsPerHour?: number) {
  const design = defineSystem({
    ...plainInput,
    array: { ...plainInput.array, panels: area / 2 },
    tank: { volume: litres / 1000 },
    draw: { dailyVolume: 0.1 },
    control: { highLimit: null },
  });
  const { balance, columns } = simulate(design, weather, stepsPerHour === undefined ? {} : { stepsPerHour });
  for (const part of Object.values(balance)) expect(part.worstRelative).toBeLessThan(1e-9);
  const hottest = Math.max(...columns.tankMaximumTemperature) - design.tank.reliefTemperature;
  return { hottest, released: sum(columns.reliefHeat), delivered: sum(columns.solarHeat) };
}

describe.each([
  [8, 100],
  [20, 50],
  [60, 30],
])('%d m² on %d L', (area, litres) => {
  const finest = yearBy(area, litres, 240);

  it.each([undefined, 60])(
    '%s steps an hour: no water above the valve’s setting in any step [definition of the valve]',
    (steps) => {
      const coarse = yearBy(area, litres, steps);
      expect(coarse.hottest).toBeLessThan(1e-9);
      expect(finest.hottest).toBeLessThan(1e-9);
      // And what it lets out is what steps of a quarter minute let out.
      expect(Math.abs(coarse.released / finest.released - 1)).toBeLessThan(0.03);
      expect(Math.abs(coarse.delivered / finest.delivered - 1)).toBeLessThan(0.01);
    },
  );
});

/** Litres that a loop with too small a vessel and a filling valve lets out in a year. */
function lostBy(panels: number, vesselVolume: string, stepsPerHour: number, more: Partial<SystemInput> = {}): number {
  const design = defineSystem({
    ...plainInput,
    ...more,
    array: { ...plainInput.array, panels },
    loop: { vesselVolume, reliefPressure: '3 bar', makeUp: true },
  });
  return 1000 * simulate(design, weather, { stepsPerHour }).loop.relieved;
}

describe.each([
  ['relieves on most days of summer', 5, '1.5 L', { draw: { dailyVolume: 0.1 } }],
  ['relieves on the days on which it boils', 3, '5 L', {}],
] as const)('a loop that %s', (_, panels, vessel, more) => {
  const fine = lostBy(panels, vessel, 60, more);

  it.each([6, 12])('lets out by %d steps an hour what it does by 60, within 1 % [convergence]', (steps) => {
    expect(fine).toBeGreaterThan(100);
    expect(Math.abs(lostBy(panels, vessel, steps, more) / fine - 1)).toBeLessThan(0.01);
  });
});
