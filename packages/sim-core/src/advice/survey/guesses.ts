/** Sizes of a panel without papers, and the tools of the trade. All judgement. */
import type { Band } from './band.ts';
import type { ParameterName } from './parameter.ts';
import type { Survey } from './schema.ts';

const band = (low: number, likely: number, high: number): Band => ({ low, likely, high });

/** What a panel without papers is likely to be, and how far the tool of the trade is off. All judgement. */
interface Guess {
  /** Field of the survey, and name of the number. */
  readonly name: ParameterName & keyof Survey;
  readonly guess: Band;
  /** What a bare number may be off. [m] */
  readonly tool: number;
}

/** Sizes that a survey may leave out. */
export const GUESSES: readonly Guess[] = [
  { name: 'depth', guess: band(0.07, 0.09, 0.12), tool: 0.003 },
  { name: 'frame', guess: band(0.01, 0.02, 0.035), tool: 0.003 },
  { name: 'plateThickness', guess: band(0.00018, 0.0003, 0.0006), tool: 0.00005 },
  { name: 'tubeSpacing', guess: band(0.09, 0.115, 0.15), tool: 0.002 },
  { name: 'tubeDiameter', guess: band(0.008, 0.01, 0.0127), tool: 0.0005 },
  { name: 'tubeWall', guess: band(0.0004, 0.0006, 0.001), tool: 0.0001 },
  { name: 'headerDiameter', guess: band(0.018, 0.022, 0.0286), tool: 0.0005 },
  { name: 'backInsulation', guess: band(0.025, 0.045, 0.065), tool: 0.004 },
  { name: 'edgeInsulation', guess: band(0.008, 0.02, 0.03), tool: 0.003 },
];
