/** What a reader should know before trusting a yard test. */
import { fact, type Saying, say } from '../../input/saying.ts';
import type { YardNumbers } from './yard-fit.ts';
import type { YardTest } from './yard-schema.ts';
import type { YardNoteCode } from './yard-types.ts';

/** Rise between inlet and outlet below which the thermometers' error is much of the heat. Judgement. [K] */
const SMALL_RISE = 1.5;
/** Distance from the line from which a reading is doubtful. Judgement. [deviations] */
const DOUBTFUL = 3;
/** Scatter against the tools from which a word is said. Judgement. [-] */
const SCATTERED = 2;
/** Incidence from which the modifier has a say. Judgement. [°] */
const OBLIQUE = 30;

/** What readings and knowledge say of one coefficient, where they contradict each other. */
export interface Contradiction {
  readonly name: 'eta0' | 'a1';
  readonly unit: string;
  readonly read: number;
  readonly known: number;
}

/** @internal */
export function yardNotes(
  test: YardTest,
  points: readonly YardNumbers[],
  found: {
    readonly scatter: number | null;
    readonly residuals: readonly number[];
    /** eta0 that no glazed panel has; `null`: none such. [-] */
    readonly beyondGlass: number | null;
    readonly contradictions: readonly Contradiction[];
  },
): Saying<YardNoteCode>[] {
  const list: Saying<YardNoteCode>[] = [];
  if (found.beyondGlass !== null) list.push(say('beyond-glass', { eta0: fact(found.beyondGlass, '-') }));
  for (const { name, unit, read, known } of found.contradictions)
    list.push(say('against-known', { name, read: fact(read, unit), known: fact(known, unit) }));
  const rises = test.points.map(({ inlet, outlet }) => Math.abs(outlet - inlet));
  const small = rises.filter((rise) => rise < SMALL_RISE).length;
  if (small > 0)
    list.push(say('small-rise', { count: fact(small, '1'), of: fact(rises.length, '1'), rise: fact(SMALL_RISE, 'K') }));
  found.residuals.forEach((residual, at) => {
    if (Math.abs(residual) > DOUBTFUL)
      list.push(say('off-the-line', { reading: fact(at + 1, '1'), deviations: fact(Math.abs(residual), '1') }));
  });
  if (found.scatter === null) list.push(say('no-spare-readings'));
  else if (found.scatter > SCATTERED) list.push(say('scatter', { times: fact(Math.sqrt(found.scatter), '1') }));
  if (points.every(({ irradiance }) => irradiance === 0)) list.push(say('all-covered'));
  if (test.points.some(({ irradiance, incidence }) => irradiance > 0 && incidence > OBLIQUE))
    list.push(say('oblique-light', { incidence: fact(OBLIQUE, '°') }));
  list.push(say('never-feed-a-dry-panel'));
  return list;
}
