export { cautions } from './cautions.ts';
export type { Caution, CautionNumber, CautionSeverity } from './types.ts';
