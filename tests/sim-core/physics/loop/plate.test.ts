import { DesignError, defineSystem, type SystemInput } from '@noonloop/sim-core';
import { counterflowExchange, plateConductance } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../../property/span.ts';

const weather = await inventedValley();
/** Ten weeks of early summer, when the tank is at its hottest. */
const run = (loop: SystemInput['loop'], stepsPerHour?: number) =>
  liveSpan(defineSystem({ ...plainInput, loop }), weather, ...EARLY_SUMMER, stepsPerHour);

describe('plateConductance', () => {
  it.each([
    [150, 150],
    [120, 210],
    [300, 80],
  ])('turns the effectiveness round [counterflow, %d and %d W/K]', (hotCapacityRate, coldCapacityRate) => {
    const streams = { hotCapacityRate, coldCapacityRate, hotInlet: 70, coldInlet: 20 };
    const { power } = counterflowExchange({ ...streams, conductance: 640 });
    expect(plateConductance({ ...streams, power })).toBeCloseTo(640, 6);
  });

  it('refuses more than the smaller stream can take [requirement]', () => {
    const rating = { power: 8000, hotCapacityRate: 150, coldCapacityRate: 150, hotInlet: 70, coldInlet: 20 };
    expect(() => plateConductance(rating)).toThrow(DesignError);
  });
});

describe('ten weeks with a plate exchanger', () => {
  const coil = run({});
  const plate = run({ exchanger: 'plate' });

  it('keeps the balance, and brings what a coil brings, more or less [conservation]', () => {
    for (const balance of Object.values(plate.balance)) expect(balance.worstRelative).toBeLessThan(1e-9);
    const share = sum(plate.columns.solarHeat) / sum(coil.columns.solarHeat);
    expect(share).toBeGreaterThan(0.85);
    expect(share).toBeLessThan(1.15);
  });

  it('brings more with more conductance [direction that physics demands]', () => {
    const delivered = (conductance: number) =>
      sum(run({ exchanger: 'plate', plate: { conductance } }, 2).columns.solarHeat);
    const [small, middle, large] = [delivered(50), delivered(300), delivered(3000)] as const;
    expect(middle).toBeGreaterThan(small);
    expect(large).toBeGreaterThan(middle);
  });

  it('is the same by half the step: 0.1 % of the energy delivered, 0.2 K of the peak [convergence]', () => {
    const [here, fine] = [plate.columns, run({ exchanger: 'plate' }, 12).columns];
    expect(Math.abs(sum(fine.solarHeat) / sum(here.solarHeat) - 1)).toBeLessThan(0.001);
    const peak = (of: typeof here) => Math.max(...of.tankMaximumTemperature);
    expect(Math.abs(peak(fine) - peak(here))).toBeLessThan(0.2);
  });

  it.each([
    ['loop.exchanger', { exchanger: 'shell' }],
    ['loop.plate.conductance', { plate: { conductance: 0 } }],
    ['loop.plate.secondaryFlow', { plate: { secondaryFlow: '3 L' } }],
    ['loop.plate.returnHeight', { plate: { returnHeight: 2 } }],
    ['loop.checkValve', { exchanger: 'plate', checkValve: false }],
  ])('refuses %s by path [requirement]', (path, loop) => {
    expect(() => defineSystem({ ...plainInput, loop: loop as never })).toThrow(path);
  });
});
