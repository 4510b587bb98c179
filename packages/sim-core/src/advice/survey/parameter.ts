/** A number of a survey: what it is, its limits, and how to know it better. */
import type { Band } from './band.ts';

/** Numbers that a rating is computed from. */
export type ParameterName =
  | 'length'
  | 'width'
  | 'depth'
  | 'frame'
  | 'coverExtinction'
  | 'coverThickness'
  | 'plateConductivity'
  | 'plateThickness'
  | 'tubeSpacing'
  | 'tubeDiameter'
  | 'tubeWall'
  | 'headerDiameter'
  | 'bondResistance'
  | 'absorptance'
  | 'emittance'
  | 'insulationConductivity'
  | 'backInsulation'
  | 'edgeInsulation'
  | 'light'
  | 'insulationAgeing'
  | 'boxMass'
  | 'film'
  | 'wind'
  | 'topLoss';

/** A number, its limits and how to know it better. */
export interface Parameter {
  /** Name. */
  readonly name: ParameterName;
  /** Field of the survey that it comes from; empty for the model's own. */
  readonly field: string;
  /** What it is, in words. */
  readonly what: string;
  /** Limits. */
  readonly band: Band;
  /** Unit of the limits. */
  readonly unit: string;
  /** Where they come from: measured, a word of the survey, or a guess with its reason. */
  readonly source: string;
  /** Whether the survey leaves it to a guess. */
  readonly guessed: boolean;
  /** What would narrow it. */
  readonly how: string;
}
