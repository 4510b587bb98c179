import { sweep } from '@noonloop/sim-core';
import { runStudy } from '@noonloop/sim-core/node';
import { expect, it } from 'vitest';
import { inventedValley, plainInput } from '../../examples.ts';
import { coarse, mostlyBadVolumes } from './small.ts';

// One thread, and a results file: pool.test.ts.
it('two threads give the rows of none, in order [requirement]', async () => {
  const study = sweep(plainInput, { 'tank.volume': mostlyBadVolumes }, await inventedValley(), coarse);
  const [none, two] = [
    await runStudy(study, { workers: 1, bar: false }),
    await runStudy(study, { workers: 2, bar: false }),
  ];
  expect(two).toEqual(none);
  expect(two.map(({ index }) => index)).toEqual(mostlyBadVolumes.map((_, at) => at));
});
