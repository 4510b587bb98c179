/** What to look at about tube and insulation. */
import type { PipeSizing } from './sizings.ts';

/** @param lowestVelocity - That carries air along. [m/s] @param lossShare - Highest loss over full-sun heat. [-] */
export function pipeNotes(
  { pipe, insulation, outdoorInsulation }: Pick<PipeSizing, 'pipe' | 'insulation' | 'outdoorInsulation'>,
  lowestVelocity: number,
  lossShare: number,
): string[] {
  const notes: string[] = [];
  if (!pipe.fits) notes.push('No common tube keeps velocity and head: run two tubes, or ask for less flow.');
  if (pipe.velocity < lowestVelocity)
    notes.push(
      `The fluid runs at ${pipe.velocity.toFixed(2)} m/s: too slow to carry air along; give the highest point a vent that can be shut.`,
    );
  if (insulation.share > lossShare)
    notes.push('No common thickness keeps the loss: shorten the pipe, or take it indoors.');
  if (!insulation.meetsCode || !outdoorInsulation.meetsCodeOutdoors)
    notes.push('No common thickness is as thick as codes ask for this tube: lay two shells, or a better insulation.');
  notes.push(
    'Codes differ: R-3 above 105 °F, or as thick as the tube indoors and twice that out of doors. The local code decides.',
    'Insulation near the collectors must bear their stagnation temperature, and out of doors the sun and birds.',
  );
  return notes;
}
