import { describe, expect, it } from 'vitest';
import { hasShared } from '../shared.ts';
import { compareYear, isQuick, TABLE, YEARS } from './whole-system.ts';

describe.skipIf(!hasShared(TABLE))(
  'whole years against an independent model [whole-system.csv; standards and textbooks]',
  () => {
    it('has all eight, of which one is lived here', () => {
      expect([YEARS.length, YEARS.filter(isQuick).length]).toEqual([8, 1]);
    });

    it.each(YEARS.filter(isQuick))('%s, %s', compareYear);
  },
);
