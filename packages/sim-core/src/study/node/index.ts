/** Studies on Node: threads, results files, a bar in the terminal, parts for many machines. */
export { type ProgressBar, progressBar } from './bar.ts';
export { type ShardPlace, shardFromEnvironment } from './environment.ts';
export type { Fingerprint } from './fingerprint.ts';
export type { ResultsHeader } from './header.ts';
export { mergeResults } from './merge.ts';
export { type PoolOptions, type StudyPool, startPool } from './pool.ts';
export { type ReadResults, readResults, resultsFile } from './results-file.ts';
export { type RunStudyOptions, runStudy } from './run-study.ts';
