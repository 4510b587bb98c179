export type { HouseholdName } from './household.ts';
export { MAINS_FLOOR, type MainsClimate, mainsClimate, mainsColumn, mainsTemperature } from './mains.ts';
export { type DrawEvent, type DrawProfile, type DrawProfileName, drawProfile } from './profile.ts';
export type { TappingName } from './tapping-data.ts';
