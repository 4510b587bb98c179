import { compareCollectors, DesignError, defineSystem, type SystemInput, sizeArray } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { SHAPES } from '../../../packages/sim-core/src/advice/check/shapes.ts';
import { moved, plainHouse } from '../../../packages/sim-core/src/advice/check/uncertainty.ts';
import { inventedValley, plainInput } from '../../examples.ts';

const weather = await inventedValley();
const { collector } = plainInput.array;
const parted: SystemInput = {
  ...plainInput,
  array: {
    ...plainInput.array,
    groups: [{ name: 'west', panels: 2, azimuth: 270, collector: { ...collector, eta0: 0.5 } }],
  },
};
const pathOf = (run: () => unknown): string | undefined => {
  try {
    run();
  } catch (error) {
    if (error instanceof DesignError) return error.issues[0]!.path;
    throw error;
  }
  return undefined;
};

describe('advice about an array of several groups [requirement]', () => {
  const design = defineSystem(parted);
  const [group] = design.array.groups;

  it('counts panels of one kind on one plane, and refuses others', () => {
    expect(pathOf(() => sizeArray(design, weather))).toBe('array.groups');
    const candidates = [{ name: 'one', collector, panels: 1, grossArea: 2, weightFull: 40, price: 1 }];
    expect(pathOf(() => compareCollectors(parted, weather, { candidates }))).toBe('array.groups');
    expect(pathOf(() => compareCollectors(parted, weather, { candidates: [] }))).toBe('candidates');
  });

  it('takes what is uncertain of the collectors, dirt and a tree as that of all groups', () => {
    const eta0 = moved(plainHouse(design, weather), 'eta0', 0.1).design.array;
    expect([eta0.collector.eta0, eta0.groups[0]!.collector.eta0]).toEqual([0.75 * 1.1, 0.5 * 1.1]);
    const loss = moved(plainHouse(design, weather), 'collectorLoss', -0.2).design.array;
    for (const key of ['a1', 'a2'] as const)
      expect([loss.collector[key], loss.groups[0]!.collector[key]]).toEqual(
        [collector[key], collector[key]].map((one) => Number(one) * 0.8),
      );
    const dirty = SHAPES.dirty(design, 0.3).array;
    expect([dirty.collector.eta0, dirty.groups[0]!.collector.eta0]).toEqual([0.75 * 0.7, 0.5 * 0.7]);
    const shaded = SHAPES.shaded(design, 0).array;
    expect(shaded.groups[0]!.obstacle).toEqual(shaded.obstacle);
    expect(group!.obstacle).toBeNull();
  });
});
