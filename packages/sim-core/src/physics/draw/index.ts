export { MAINS_FLOOR, type MainsClimate, mainsClimate, mainsColumn, mainsTemperature } from './mains.ts';
export { type DrawEvent, type DrawProfile, drawProfile } from './profile.ts';
export { type HotPipe, type RingLoss, type RingQuery, recirculationLoss } from './ring.ts';
export { BURN_TIMES, burnTime } from './scald.ts';
