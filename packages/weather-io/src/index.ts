export * from './draw-file/index.ts';
export { WeatherError, type WeatherIssue, type WeatherIssueCode } from './errors.ts';
export { type FillOptions, fillGaps } from './fill/fill.ts';
export type { GappyColumns, GappyYear } from './gappy.ts';
export { erbsDiffuseFraction } from './irradiance/split.ts';
export { COLUMN_KEYS, type ColumnKey } from './limits.ts';
export * from './log/index.ts';
export type { GappyOptions, PlainColumn, PlainLayout, PlainTime, ReadOptions } from './options.ts';
export { qualityChart } from './quality/chart.ts';
export { checkWeather } from './quality/check.ts';
export type {
  ClockEstimate,
  QualityCode,
  QualityFinding,
  QualityReport,
  QualityRow,
  WeatherVerdict,
} from './quality/report.ts';
export { type VetOptions, vetWeather } from './quality/vet.ts';
export {
  parseWeather,
  parseWeatherYears,
  readWeather,
  readWeatherYears,
} from './read.ts';
export type { Said, SaidQuantity } from './said.ts';
export type {
  MonthlyAir,
  MonthlyExtras,
  MonthlyLight,
  SyntheticInput,
  SyntheticSite,
  TwelveMonths,
} from './synthesize/input.ts';
export { synthesizeYear } from './synthesize/synthesize.ts';
export type { PlainUnit } from './table/units.ts';
export { writeWeather } from './write.ts';
export * from './year.ts';
