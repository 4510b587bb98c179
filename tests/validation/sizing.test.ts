import { describe, expect, it } from 'vitest';
import { defineSystem, simulate, sizeArray } from '../../packages/sim-core/src/index.ts';
import { inventedValley, plainInput, sum } from '../examples.ts';

// The reckoning holds the fluid at 50 °C all year; a real tank's bottom is colder in winter, and heat above the demand covers
// the heater's standby. So it errs
// low: 5 points with one panel, 14 with four (docs/theory/sizing.md). It must stay on that side and within 15.
describe('sizeArray against the simulation, invented valley', () => {
  it.each([1, 4])('%i panels: the simulated share lies 0 to 15 points above the reckoning', async (panels) => {
    const weather = await inventedValley();
    const design = defineSystem({ ...plainInput, array: { ...plainInput.array, panels } });
    const { columns } = simulate(design, weather);
    const simulated = sum(columns.solarHeat) / sum(columns.tapHeatAsked);
    const { months } = sizeArray(design, weather);
    const days = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    const demand = months.reduce((total, month, at) => total + days[at]! * month.demand, 0);
    const covered = months.reduce(
      (total, month, at) => total + days[at]! * Math.min(month.demand, panels * month.perPanel),
      0,
    );
    if (process.env.SHOW !== undefined) console.log(panels, simulated, covered / demand);
    expect(simulated).toBeGreaterThan(covered / demand);
    expect(simulated).toBeLessThan(covered / demand + 0.15);
  });
});
