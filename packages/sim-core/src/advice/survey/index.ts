export type { SurveyNumbers } from './assess.ts';
export type { Band } from './band.ts';
export type { Parameter, ParameterName, SurveyOrigin } from './parameter.ts';
export {
  type RatedCollector,
  rateFromSurvey,
  type SurveyBands,
  type SurveyedCollector,
  type SurveyedNumber,
  type SurveyRating,
} from './rate.ts';
export type { Measured, MeasuredLimits, MeasuredValue, SurveyInput } from './schema.ts';
export type {
  CoverKind,
  PanelCondition,
  PanelInsulation,
  PanelMetal,
  PlateBond,
  PlateCoating,
  TubeLayout,
} from './words.ts';
export { rateFromYardTest } from './yard.ts';
export type { YardReading, YardTestInput, YardTools } from './yard-schema.ts';
export {
  YARD_NOTES,
  YARD_REMEDIES,
  type YardCoefficient,
  type YardNoteCode,
  type YardOrigin,
  type YardPoint,
  type YardRating,
  type YardRemedyCode,
} from './yard-types.ts';
