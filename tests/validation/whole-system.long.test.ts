import { describe, it } from 'vitest';
import { hasShared } from '../shared.ts';
import { compareYear, isQuick, TABLE, YEARS } from './whole-system.ts';

describe.skipIf(!hasShared(TABLE))(
  'the other whole years against an independent model [whole-system.csv; standards and textbooks]',
  () => {
    it.each(YEARS.filter((year) => !isQuick(year)))('%s, %s', compareYear);
  },
);
