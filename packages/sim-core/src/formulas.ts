// Single formulas, to be called alone: each checks its input and calls the kernel that the year calls.
export { type SunPosition, type SunQuery, sunPosition } from '@noonloop/weather-io/sun';
export {
  type CollectorBuild,
  collectorFromBuild,
  type RatedLine,
  type RatingConditions,
  type RatingPoint,
} from './advice/survey/build.ts';
export { type CoverQuery, transmittanceAbsorptance } from './advice/survey/covers.ts';
export {
  collectorEfficiencyFactor,
  type Fin,
  type FinnedTube,
  finEfficiency,
  flowFactor,
} from './advice/survey/fin.ts';
export { type TopLoss, type TopLossQuery, topLossCoefficient } from './advice/survey/top-loss.ts';
export { verticalPlateNusselt } from './advice/survey/vertical-plate.ts';
export { DesignError, type DesignIssue } from './input/errors.ts';
export * from './physics/backup/index.ts';
export * from './physics/collector/index.ts';
export * from './physics/draw/index.ts';
export * from './physics/fluid/index.ts';
export * from './physics/loop/index.ts';
export { throughPoints } from './physics/monotone-cubic.ts';
export * from './physics/pv/index.ts';
export * from './physics/sun/index.ts';
