export { answer } from './answer/answer.ts';
export { describeSeason, describeStandby, monthsInWords } from './answer/season.ts';
export { type SystemPart, siteWords, systemLine, systemParts, systemsLine } from './answer/system.ts';
export type { Answer, AnswerRule } from './answer/types.ts';
export type { Caution, CautionCode, CautionSeverity } from './cautions/index.ts';
export { type CautionCount, cautions, countCautions } from './cautions/index.ts';
export { type ChartName, type ChartOptions, chart } from './charts/chart.ts';
export { type CheckChartOptions, checkChart } from './charts/check-log.ts';
export {
  type CollectorChartOptions,
  type CollectorLine,
  type CollectorReading,
  collectorChart,
  type EfficiencyLine,
} from './charts/collector-lines.ts';
export type { ChartTheme } from './charts/frame.ts';
export type { Comparison, ComparisonReference, ComparisonRow } from './compare.ts';
export { compareRuns, compareSummaries } from './compare.ts';
export type { Definition, NumberKey } from './definitions.ts';
export { DEFINITIONS } from './definitions.ts';
export { ReportError, type ReportIssue } from './errors.ts';
export { type CheckHtmlOptions, renderCheckHtml } from './formats/check-html.ts';
export { type CsvOptions, renderCsv } from './formats/csv.ts';
export {
  type ArrowLibrary,
  type DataColumn,
  type DataOptions,
  type DataTable,
  type DataValue,
  dataArrow,
  dataCsv,
  dataRows,
  hourData,
  studyData,
} from './formats/data.ts';
export { type HtmlOptions, renderHtml } from './formats/html.ts';
export { JSON_SCHEMA_VERSION, type JsonOptions, renderJson } from './formats/json.ts';
export { renderMarkdown } from './formats/markdown.ts';
export { renderText, type TextOptions } from './formats/text.ts';
export { type LivePageOptions, renderLivePage } from './live/render.ts';
export type { LiveExercise, Plain, Turned } from './live/types.ts';
export type { CaseKey } from './money/definitions.ts';
export {
  type BilledFuel,
  type BillUnit,
  type DesignPrices,
  type EnergyPrice,
  type Investment,
  type Money,
  type MoneyCase,
  type MoneyGiven,
  type MoneyOptions,
  type MoneySettings,
  type MoneyYear,
  money,
  type PricedCarrier,
  presentWorthFactor,
} from './money/index.ts';
export type { OwnSection, ReportOptions, Runs } from './options.ts';
export { type Ranking, type RankKey, rankDesigns } from './rank.ts';
export { describeComparison } from './sentences.ts';
export { type PeriodSummary, SUN_ALONE, type Summary, summarize, type WorstBalance } from './summary.ts';
export { formatQuantity, type UnitKind, type Units } from './units.ts';
export { adviceInWords } from './words/advice.ts';
export { type CalendarInWords, calendarInWords, type TaskInWords } from './words/calendar.ts';
export { type CalibrationInWords, calibrationInWords } from './words/calibration.ts';
export { type CauseInWords, type CheckInWords, checkInWords, type TestInWords } from './words/check.ts';
export { type GaugeFindingInWords, type GaugesInWords, gaugesInWords } from './words/gauges.ts';
export { noticeWords } from './words/notices.ts';
export { type SurveyInWords, surveyInWords } from './words/survey.ts';
export { type StepInWords, workingInWords } from './words/working.ts';
export { type YardTestInWords, yardTestInWords } from './words/yard-test.ts';
