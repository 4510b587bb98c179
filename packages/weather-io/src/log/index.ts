export type { LogColumn, LogLayout, LogTime, LogUnit } from './layout.ts';
export type { GaugeKey, GaugeLog, GaugeReading } from './log.ts';
export { parseLog, readLog } from './read-log.ts';
