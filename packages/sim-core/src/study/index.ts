export { type PeriodSummaries, type PeriodSummary, summarizePeriods } from './measures.ts';
