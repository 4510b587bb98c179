export type { Band } from './band.ts';
export {
  type CollectorBuild,
  collectorFromBuild,
  type RatedLine,
  type RatingConditions,
  type RatingPoint,
} from './build.ts';
export { type CoverQuery, transmittanceAbsorptance } from './covers.ts';
export { collectorEfficiencyFactor, type Fin, type FinnedTube, finEfficiency, flowFactor } from './fin.ts';
export {
  type CollectorInput,
  type Narrowing,
  rateFromSurvey,
  type SurveyBands,
  type SurveyRating,
} from './rate.ts';
export type { Measured, SurveyInput } from './schema.ts';
export { type TopLoss, type TopLossQuery, topLossCoefficient } from './top-loss.ts';
export { verticalPlateNusselt } from './vertical-plate.ts';
export {
  rateFromYardTest,
  type YardCoefficient,
  type YardOrigin,
  type YardPoint,
  type YardRating,
} from './yard.ts';
export type { YardTestInput } from './yard-schema.ts';
