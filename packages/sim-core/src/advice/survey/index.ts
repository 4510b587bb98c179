export type { SurveyNumbers } from './assess.ts';
export type { Band } from './band.ts';
export {
  type Narrowing,
  type RatedCollector,
  rateFromSurvey,
  type SurveyBands,
  type SurveyedCollector,
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
export {
  rateFromYardTest,
  type YardCoefficient,
  type YardOrigin,
  type YardPoint,
  type YardRating,
} from './yard.ts';
export type { YardReading, YardTestInput, YardTools } from './yard-schema.ts';
