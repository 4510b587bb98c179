import { describe, expect, it } from 'vitest';
import { hoursWithLight } from '../../../packages/sim-core/src/year/array-drivers.ts';

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
