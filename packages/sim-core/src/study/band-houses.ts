/** Houses with every cause off at once: where they stand. */
import { Matrix } from 'ml-matrix';
import type { Mover } from './band-parts.ts';
import { correlateStrata } from './correlations.ts';
import { normalQuantile } from './distributions.ts';
import { latinStrata } from './latin-hypercube.ts';

/** Judgement: the ends of a band of 90 % then lie among them, a house or so from the outermost. */
const HOUSES = 20;
const SEED = 1;
/** Passes after which their causes hang together by less than a tenth. */
const PASSES = 3;

/**
 * Where they stand, cause by cause: a Latin hypercube, each house in the middle of its strata. These are put into an order in which no two
 * causes hang together: in so few houses light would otherwise go with losses by chance, and spread or narrow what hangs on both.
 */
export function housesOf(list: readonly Mover[]): readonly (readonly number[])[] {
  const strata = latinStrata(SEED, HOUSES, list.length);
  const apart = { columns: list.map((_, cause) => cause), target: Matrix.eye(list.length) };
  for (let pass = 0; pass < PASSES; pass++) correlateStrata(strata, apart);
  return Array.from({ length: HOUSES }, (_, house) =>
    list.map(
      ({ mean, deviation }, cause) => mean + deviation * normalQuantile((strata[cause]![house]! + 0.5) / HOUSES),
    ),
  );
}
