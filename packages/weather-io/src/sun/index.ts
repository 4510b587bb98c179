export { hourStarts } from '../time/hours.ts';
export * from './extraterrestrial.ts';
export { INSTANTS, keptInstants } from './instants.ts';
export * from './position.ts';
