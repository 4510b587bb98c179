import { describe, expect, it } from 'vitest';
import { liveSpan } from '../property/span.ts';
import { HOURS, tenDays } from './days.ts';
import { DESIGNS } from './designs.ts';
import { faults, MINUTE } from './limits.ts';
import { referenceRun } from './model.ts';
import { differing, storedRun, storeRuns } from './stored.ts';

const weather = tenDays();

describe('kept runs of the explicit model [requirement: they are what the model says]', () => {
  const runs = DESIGNS.map(([name, design]) => [name, referenceRun(design, weather)] as const);
  if (process.env.NOONLOOP_KEEP !== undefined) storeRuns(Object.fromEntries(runs));

  it.each(runs)('%s', (name, run) => {
    const kept = storedRun(name);
    expect(differing(run, kept, HOURS)).toEqual([]);
    expect({ ...run, columns: {} }).toEqual({ ...kept, columns: {} });
  });
});

describe('hour by hour against an explicit model in 30 s steps [docs/theory, written apart; see the head of model.ts]', () => {
  it.each(DESIGNS)('%s, in steps of a minute', (name, design) => {
    const minute = liveSpan(design, weather, 0, HOURS, 60);
    expect(faults(name, minute, storedRun(name), MINUTE)).toEqual([]);
  });
});
