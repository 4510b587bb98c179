import { describe, it } from 'vitest';
import { FILES, present, tenMinutes } from './plane-of-array-year.ts';

describe.skipIf(!present)('plane of array through a year [two independent scripts, poa-annual-checked.csv]', () => {
  it.each(FILES)('%s: totals of three sky models at 35 and 45° south and their beam within 0.5 percent', tenMinutes);
});
