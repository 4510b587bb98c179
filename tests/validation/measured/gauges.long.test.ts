// Gauges of a house by themselves in all windows of its log; half of them, and what the log shows as it is: measured.test.ts.
import { describe, expect, it } from 'vitest';
import { hasShared } from '../../shared.ts';
import { besideIn, gaugeTrials, LEAST_FOUND, PROOF, shareFound } from './gauge-trials.ts';
import { HOUSE_FILE } from './house.ts';

describe.skipIf(!hasShared(`measured/${HOUSE_FILE}`))('gauges of the house [faults planted into its real log]', () => {
  const trials = gaugeTrials(PROOF.seed, PROOF.first);

  it.each(LEAST_FOUND)('%s: the share found [requirement]', (name, least) => {
    expect(shareFound(trials, name)).toBeGreaterThanOrEqual(least);
  });

  it('beside the planted fault few others are named [requirement]', () => {
    expect(trials.filter((trial) => besideIn(trial).length > 0).length / trials.length).toBeLessThan(0.2);
  });
});
