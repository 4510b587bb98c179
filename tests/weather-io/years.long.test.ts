// Years in one text in finer steps than years.test.ts reads.
import { describe, it } from 'vitest';
import { keepsEnergy } from './years.ts';

describe('several years in one text [ours: invented logs]', () => {
  it.each([15, 5])('2015 to 2017 in steps of %d minutes: three years, energy kept but for 29 February', (step) => {
    keepsEnergy([2015, 2016, 2017], step);
  });
});
