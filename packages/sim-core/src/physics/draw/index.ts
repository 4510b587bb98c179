export { MAINS_FLOOR, type MainsClimate, mainsClimate, mainsColumn, mainsTemperature } from './mains.ts';
export { type DrawEvent, type DrawProfile, drawProfile } from './profile.ts';
export { BURN_TIMES, burnTime } from './scald.ts';
