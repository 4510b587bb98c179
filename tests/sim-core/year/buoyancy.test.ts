import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';
import { liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
const KWH = 3.6e6;

/** Three panels on a tank below them, no check valve, and a pump that fails for a while. */
const input = (from: string, to: string): SystemInput => ({
  array: { ...plainInput.array, panels: 3, collector: { area: '21 ft2', eta0: 0.75, a1: 3.8, a2: 0.012 } },
  tank: { volume: '80 gal' },
  draw: { dailyVolume: '200 L' },
  loop: { checkValve: false },
  control: { outages: [{ from, to, kind: 'pump' }] },
});

/** Mid-June to mid-August, begun as a year begins. */
const SUMMER = [3960, 5448] as const;

function summerBy(stepsPerHour: number, outage: readonly [string, string]) {
  const { balance, columns } = liveSpan(defineSystem(input(...outage)), weather, ...SUMMER, stepsPerHour);
  for (const part of Object.values(balance)) expect(part.worstRelative).toBeLessThan(1e-9);
  return {
    delivered: sum(columns.solarHeat) / KWH,
    taken: sum(columns.thermosiphonHeat) / KWH,
    stagnation: sum(columns.stagnation),
    columns,
  };
}

// The whole year, all year without a pump, and finer: buoyancy.long.test.ts.
describe('a summer whose pump stands in July, no check valve', () => {
  const outage = ['07-01', '07-31'] as const;
  const fine = summerBy(30, outage);

  it.each([6, 12])('by %d steps an hour is as by 30: 2 % of heat, 3 h of stagnation [convergence]', (steps) => {
    const coarse = summerBy(steps, outage);
    expect(Math.abs(coarse.delivered / fine.delivered - 1)).toBeLessThan(0.02);
    expect(Math.abs(coarse.stagnation - fine.stagnation)).toBeLessThan(3);
    // What the nights take is the more delicate.
    expect(Math.abs(coarse.taken / fine.taken - 1)).toBeLessThan(steps === 6 ? 0.06 : 0.02);
  });
});

describe('a loop whose collectors stand above the tank', () => {
  const { columns } = summerBy(12, ['01-01', '12-31']);

  it('collects nothing without its pump: hot water lies over cold [statics]', () => {
    expect(sum(columns.coilHeat)).toBeLessThan(0);
    expect(Math.max(...columns.absorberTemperature)).toBeGreaterThan(150);
  });

  it('does not call it standstill where its fluid creeps [definition of the column]', () => {
    const creeping = columns.thermosiphonFlow.map((flow, hour) =>
      flow !== 0 && columns.irradiance[hour]! > 50 ? 1 : 0,
    );
    expect(sum(creeping)).toBeGreaterThan(100);
    const still = columns.noFlowInSun.filter((share, hour) => creeping[hour] === 1 && share > 1 - 1e-9);
    expect(still.length).toBe(0);
  });
});
