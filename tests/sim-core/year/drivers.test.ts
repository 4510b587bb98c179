import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { hoursWithLight } from '../../../packages/sim-core/src/year/array-drivers.ts';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { stepHour } from '../../../packages/sim-core/src/year/step.ts';
import { plainInput } from '../../examples.ts';
import { tenDays } from '../../reference-model/days.ts';

describe('hours with light [definition: light on collectors or module in any of their steps]', () => {
  it.each([
    ['on neither', [0, 0, 0, 0], [0, 0, 0, 0], [0, 0]],
    ['on the collectors in a last step', [0, 3, 0, 0], [0, 0, 0, 0], [1, 0]],
    ['on the module alone', [0, 0, 0, 0], [0, 0, 2, 0], [0, 1]],
    ['on either in an hour of its own', [0, 0, 0, 1], [4, 0, 0, 0], [1, 1]],
  ])('%s', (_, collectors, module, lit) => {
    expect([...hoursWithLight(Float64Array.from(collectors), Float64Array.from(module), 2)]).toEqual(lit);
  });
});

describe('a mixture that make-up thins [requirement: its tables are made anew as a month ends]', () => {
  it('keeps its tables until the last hour of January is over, and has those of the thinner one from then on', () => {
    const design = defineSystem({ ...plainInput, loop: { leak: '3 L/day', makeUp: true } });
    const machine = assemble(design, tenDays(), {});
    for (let hour = 0; hour < 743; hour++) stepHour(machine, hour);
    expect(machine.loop.fluid.glycolMassFraction).toBe(design.loop.glycolMassFraction);
    stepHour(machine, 743);
    const left = machine.columns.glycolMassFraction[743]!;
    expect(left).toBeLessThan(0.9 * design.loop.glycolMassFraction);
    expect(machine.loop.fluid.glycolMassFraction).toBe(left);
  });
});
