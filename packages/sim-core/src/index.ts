export type * from './system/design.ts';
export type * from './system/result.ts';
