import { DesignError, defineSystem, simulate, steps } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput } from '../../examples.ts';

const weather = await inventedValley();
const design = defineSystem(plainInput);

/** Faults by path, with what was found. */
function faults(run: () => unknown): Record<string, string> {
  try {
    run();
  } catch (error) {
    if (error instanceof DesignError) return Object.fromEntries(error.issues.map(({ path, found }) => [path, found]));
    throw error;
  }
  return {};
}

describe('what a run refuses in words [requirement]', () => {
  const { site, columns } = weather;

  it('a design as written, a path, a promise, an option it does not know: all at once', () => {
    expect(faults(() => simulate(plainInput as never, 'valley.csv' as never, { stepPerHour: 6 } as never))).toEqual({
      design: 'a design as written, not yet checked',
      weather: '"valley.csv"',
      'options.stepPerHour': 'an option of this name',
    });
    expect(faults(() => simulate(design, Promise.resolve(weather) as never))).toEqual({ weather: 'a promise' });
    expect(faults(() => simulate(design, weather, 6 as never))).toEqual({ options: '6' });
  });

  it('weather with too few hours, a number that is none, a site nowhere', () => {
    const short = { ...weather, columns: { ...columns, dryBulb: columns.dryBulb.slice(0, 8000) } };
    expect(faults(() => simulate(design, short))).toEqual({ 'weather.columns.dryBulb': '8000 values' });
    const holed = { ...weather, columns: { ...columns, ghi: columns.ghi.with(4321, Number.NaN) } };
    expect(faults(() => simulate(design, holed))).toEqual({ 'weather.columns.ghi[4321]': 'NaN' });
    const nowhere = { ...weather, site: { ...site, latitude: Number.NaN } };
    expect(faults(() => simulate(design, nowhere))).toEqual({ 'weather.site.latitude': 'NaN' });
    expect(faults(() => simulate(design, { ...weather, columns: { ...columns, dni: null } } as never))).toEqual({
      'weather.columns.dni': 'null',
    });
  });

  it('the same where the year is stepped hour by hour, which keeps no nodes', () => {
    expect(faults(() => steps(design, weather, { keepTankNodes: true } as never).next())).toEqual({
      'options.keepTankNodes': 'an option of this name',
    });
  });

  it('more nodes times steps than a computer gets through in minutes, with the number that it does', () => {
    const fine = defineSystem({
      ...plainInput,
      array: { ...plainInput.array, panels: 20, inSeries: 20 },
      tank: { volume: 0.3, nodes: 400 },
    });
    const options = { stepsPerHour: 120, collectorNodes: 100, pipeNodes: 50 };
    expect(() => simulate(fine, weather, options)).toThrow(/at most 76 with so many nodes/); // 200,000/(400 + 200 + 2000)
    expect(faults(() => simulate(fine, weather, options))).toEqual({
      stepsPerHour: '120, with 2600 nodes in tank, pipes and array',
    });
  });
});
