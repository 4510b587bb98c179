import type { HouseholdName } from '../../design/house.ts';

/**
 * Shapes of a household's day, in relative weights by hour from 00:00. Judgement, no source: they are for asking what an early or
 * a late household changes, not for describing one.
 */

export const HOUSEHOLD_SHAPES: Readonly<
  Record<HouseholdName, { readonly source: string; readonly weights: readonly number[] }>
> = {
  level: {
    source: 'judgement: the same in every hour from 06:00 to 22:00',
    weights: [0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0, 0],
  },
  morning: {
    source: 'judgement: three fifths before 09:00, showers before work',
    weights: [0, 0, 0, 0, 0, 10, 22, 20, 8, 3, 2, 2, 3, 2, 1, 1, 2, 4, 6, 5, 4, 3, 2, 0],
  },
  evening: {
    source: 'judgement: three fifths from 18:00, baths and dishes after work',
    weights: [0, 0, 0, 0, 0, 1, 5, 8, 4, 2, 2, 2, 3, 2, 2, 2, 3, 4, 12, 16, 14, 11, 6, 1],
  },
};
