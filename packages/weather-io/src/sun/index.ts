export { hourStarts } from '../time/hours.ts';
export * from './extraterrestrial.ts';
export * from './position.ts';
