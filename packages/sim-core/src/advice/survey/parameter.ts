/** A number of a survey: what it is, its limits, and where they come from. */
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

/** How a number of a survey is known. */
export type SurveyOrigin = 'measured' | 'limits' | 'word' | 'guess' | 'model';

/** A number, its limits, and where they come from. */
export interface Parameter {
  /** Name. */
  readonly name: ParameterName;
  /** Field of the survey that it comes from; empty for the model's own. */
  readonly field: string;
  /** Limits. */
  readonly band: Band;
  /** Unit of the limits. */
  readonly unit: string;
  /** Measured, limits given, a word of the survey, a guess for want of them, or what the formulas leave open. */
  readonly origin: SurveyOrigin;
  /** The word, for the origin `'word'`. */
  readonly word?: string;
  /** What the tool may be off, for the origin `'measured'`, in {@link unit}. */
  readonly tool?: number;
}
