/** Sizes of a panel without papers, and the tools of the trade. All judgement. */
import type { Band } from './band.ts';
import type { ParameterName } from './parameter.ts';
import type { Survey } from './schema.ts';

const band = (low: number, likely: number, high: number): Band => ({ low, likely, high });

/** What a panel without papers is likely to be, and how far the tool of the trade is off. All judgement. */
interface Guess {
  readonly field: keyof Survey;
  readonly name: ParameterName;
  readonly what: string;
  readonly guess: Band;
  /** What a bare number may be off. [m] */
  readonly tool: number;
  readonly reason: string;
  readonly how: string;
}

/** Sizes that a survey may leave out. */
export const GUESSES: readonly Guess[] = [
  {
    field: 'depth',
    name: 'depth',
    what: 'height of the box',
    guess: band(0.07, 0.09, 0.12),
    tool: 0.003,
    reason: 'common boxes are 7 to 12 cm high',
    how: 'Measure the side of the box.',
  },
  {
    field: 'frame',
    name: 'frame',
    what: 'rim that takes no light',
    guess: band(0.01, 0.02, 0.035),
    tool: 0.003,
    reason: 'common rims are 1 to 3.5 cm wide',
    how: 'Measure from the outside to where the plate can be seen.',
  },
  {
    field: 'plateThickness',
    name: 'plateThickness',
    what: 'thickness of the plate',
    guess: band(0.00018, 0.0003, 0.0006),
    tool: 0.00005,
    reason: 'common plates have 0.2 to 0.6 mm',
    how: 'Callipers on an edge of the plate, at a tube’s passage through the box.',
  },
  {
    field: 'tubeSpacing',
    name: 'tubeSpacing',
    what: 'spacing of the tubes',
    guess: band(0.09, 0.115, 0.15),
    tool: 0.002,
    reason: 'common tubes stand 9 to 15 cm apart',
    how: 'Measure across ten tubes through the glass, or from one riser to the next at the header.',
  },
  {
    field: 'tubeDiameter',
    name: 'tubeDiameter',
    what: 'outside of the tubes',
    guess: band(0.008, 0.01, 0.0127),
    tool: 0.0005,
    reason: 'common risers have 8 to 12.7 mm',
    how: 'Callipers where a tube leaves the header.',
  },
  {
    field: 'tubeWall',
    name: 'tubeWall',
    what: 'wall of the tubes',
    guess: band(0.0004, 0.0006, 0.001),
    tool: 0.0001,
    reason: 'common walls have 0.4 to 1 mm',
    how: 'Callipers at a cut end.',
  },
  {
    field: 'headerDiameter',
    name: 'headerDiameter',
    what: 'outside of the headers',
    guess: band(0.018, 0.022, 0.0286),
    tool: 0.0005,
    reason: 'common headers have 18 to 28 mm',
    how: 'Callipers on a connection.',
  },
  {
    field: 'backInsulation',
    name: 'backInsulation',
    what: 'insulation behind the plate',
    guess: band(0.025, 0.045, 0.065),
    tool: 0.004,
    reason: 'common backs have 3 to 6 cm',
    how: 'A wire through a vent hole of the back, or box height less plate, gap and glass.',
  },
  {
    field: 'edgeInsulation',
    name: 'edgeInsulation',
    what: 'insulation at the edge',
    guess: band(0.008, 0.02, 0.03),
    tool: 0.003,
    reason: 'common edges have 1 to 3 cm',
    how: 'Look along the rim, from the frame to the plate.',
  },
];
