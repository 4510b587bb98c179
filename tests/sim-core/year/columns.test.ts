import { defineSystem, type SystemInput, simulate, summarizePeriods } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { inventedValley, plainInput, sum } from '../../examples.ts';

const weather = await inventedValley();
/** A year by steps of half an hour. */
const run = (input: Partial<SystemInput>) =>
  simulate(defineSystem({ ...plainInput, ...input }), weather, { stepsPerHour: 2 });
const KWH = 3.6e6;

describe('heat given back', () => {
  const onModule = run({});
  const byDifference = run({ pump: { drive: 'mains' }, control: { mode: 'difference' } });

  it('is what the coil took, step by step: at least what an hour lost in sum [definition]', () => {
    const { coilHeat, heatGivenBack } = onModule.columns;
    const less = heatGivenBack.filter((heat, hour) => !(heat >= Math.max(-coilHeat[hour]!, 0) * (1 - 1e-12)));
    expect([...less]).toEqual([]);
  });

  it('is large for a pump that weak light keeps running, and next to nothing with a difference controller [requirement]', () => {
    expect(sum(onModule.columns.heatGivenBack)).toBeGreaterThan(20 * KWH);
    expect(sum(byDifference.columns.heatGivenBack)).toBeLessThan(0.1 * sum(onModule.columns.heatGivenBack));
  });

  it('adds up by month to the key figure [conservation]', () => {
    const { months, year } = summarizePeriods(onModule);
    expect(year.heatGivenBack).toBeCloseTo(sum(onModule.columns.heatGivenBack), -1);
    expect(months.filter((month) => month.heatGivenBack > 0)).toHaveLength(12);
  });
});

describe('hours stopped by the high limit', () => {
  const { columns } = run({ array: { ...plainInput.array, panels: 3 } });

  it('count where the module has light enough to turn the pump, and nowhere else [requirement]', () => {
    const dark = columns.highLimit.filter((share, hour) => share > 0 && columns.pvIrradiance[hour] === 0);
    expect(sum(columns.highLimit)).toBeGreaterThan(10);
    expect(sum(dark)).toBe(0);
  });

  it('never share time with the turning pump [direction that physics demands]', () => {
    const both = columns.highLimit.map((share, hour) => share + columns.pumpRunning[hour]!);
    expect(Math.max(...both)).toBeLessThanOrEqual(1 + 1e-12);
  });
});
