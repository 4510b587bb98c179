import { describe, expect, it } from 'vitest';
import { planeOfArray } from '../../../../packages/sim-core/src/physics/sun/plane-of-array.ts';
import { scaledLight } from '../../../../packages/sim-core/src/physics/sun/scaled-light.ts';
import { inventedValley } from '../../../examples.ts';

const weather = await inventedValley();
const plane = { tilt: 40, azimuth: 190 };

describe('a year of scaled light', () => {
  it.each([
    ['every day by 1.07', () => 1.07],
    ['one day dark', (day: number) => (day === 100 ? 0 : 1)],
  ] as const)('%s: the same to the bit, its sun shared or computed anew [requirement]', (_, factor) => {
    const scaled = scaledLight(weather, factor);
    expect(planeOfArray(scaled, plane)).toEqual(planeOfArray({ ...scaled }, plane));
  });
});
