export { DrawError } from './error.ts';
export type { DateOrder, DrawLayout, DrawTime, DrawWeekday, FlowUnit, VolumeUnit, WaterUnit } from './layout.ts';
export { type DrawRecord, parseDraw, readDraw } from './read.ts';
