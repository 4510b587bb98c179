export { type CautionCount, cautions, countCautions } from './cautions.ts';
export type { Caution, CautionNumber, CautionSeverity } from './types.ts';
