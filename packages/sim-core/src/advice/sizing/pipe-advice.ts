/** What to look at about tube and insulation. */
import { fact, type Saying, say } from '../../input/saying.ts';
import type { AdviceCode } from '../advice-codes.ts';
import type { PipeSizing } from './sizings.ts';

/** @param lowestVelocity - That carries air along. [m/s] @param lossShare - Highest loss over full-sun heat. [-] */
export function pipeNotes(
  { pipe, insulation, outdoorInsulation }: Pick<PipeSizing, 'pipe' | 'insulation' | 'outdoorInsulation'>,
  lowestVelocity: number,
  lossShare: number,
): Saying<AdviceCode>[] {
  const notes: Saying<AdviceCode>[] = [];
  if (!pipe.fits) notes.push(say('no-common-tube'));
  if (pipe.velocity < lowestVelocity) notes.push(say('too-slow-for-air', { velocity: fact(pipe.velocity, 'm/s') }));
  if (insulation.share > lossShare) notes.push(say('no-common-insulation'));
  if (!insulation.meetsCode || !outdoorInsulation.meetsCodeOutdoors) notes.push(say('insulation-below-codes'));
  notes.push(say('insulation-codes-differ'), say('insulation-near-collectors'));
  return notes;
}
