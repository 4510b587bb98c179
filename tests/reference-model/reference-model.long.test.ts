import { describe, expect, it } from 'vitest';
import { HOURS, tenDays } from './days.ts';
import { DESIGNS } from './designs.ts';
import { referenceRun } from './model.ts';
import { differing, storedRun, storeRuns } from './stored.ts';

describe('kept runs of the explicit model [requirement: they are what the model says]', () => {
  const weather = tenDays();
  const runs = DESIGNS.map(([name, design]) => [name, referenceRun(design, weather)] as const);
  if (process.env.NOONLOOP_KEEP !== undefined) storeRuns(Object.fromEntries(runs));

  it.each(runs)('%s', (name, run) => {
    const kept = storedRun(name);
    expect(differing(run, kept, HOURS)).toEqual([]);
    expect({ ...run, columns: {} }).toEqual({ ...kept, columns: {} });
  });
});
