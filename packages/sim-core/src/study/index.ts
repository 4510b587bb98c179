export type { BandPartName } from './band-parts.ts';
export type { BandShare, Bands, MeasureBand } from './band-types.ts';
export { type BandOptions, bands } from './bands.ts';
export { compare } from './compare.ts';
export type { Correlation } from './correlations.ts';
export type {
  ChoiceInput,
  NormalInput,
  TriangularInput,
  UncertainInput,
  UniformInput,
} from './distributions.ts';
export type { Bound, FieldSet } from './fields.ts';
export { type FrontierOptions, type FrontierPoint, frontier, type RowNumber } from './frontier.ts';
export {
  DEFAULT_MEASURES,
  type DefaultMeasure,
  MEASURE_UNITS,
  type Measure,
  type PeriodSummary,
} from './measures.ts';
export type { StudyRange, StudyRanges } from './ranges.ts';
export { type BestOf, type BestOfOptions, bestOf, type Search, type SearchGoal } from './search/best-of.ts';
export type { Limit, Limits } from './search/limits.ts';
export type { ElementaryEffects, Morris } from './sensitivity/morris.ts';
export type { MeasureChange, OneAtATime } from './sensitivity/one-at-a-time.ts';
export {
  type SensitivityMethod,
  type SensitivityOptions,
  type SensitivityOutcomes,
  sensitivity,
} from './sensitivity/sensitivity.ts';
export type { Sobol, SobolIndices, VarianceShare } from './sensitivity/sobol.ts';
export { collectRows, type Study, shard } from './study.ts';
export { StudyError } from './study-error.ts';
export { type PeriodSummaries, summarizePeriods } from './summarize.ts';
export { type AxisSteps, type AxisVariants, type SweepAxes, type SweepAxis, sweep } from './sweep.ts';
export type * from './types.ts';
export {
  type Spread,
  type UncertainInputs,
  type Uncertainty,
  type UncertaintyOptions,
  uncertainty,
} from './uncertainty.ts';
