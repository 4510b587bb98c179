export { type CautionCount, cautions, countCautions, SEVERITY_WORDS } from './cautions.ts';
export type { Caution, CautionCode, CautionSeverity } from './types.ts';
