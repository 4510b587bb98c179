export { type CalibratedParameter, type CalibrateOptions, type Calibration, calibrate } from './calibrate.ts';
export type { FittedKey } from './calibrate-fit.ts';
export type { CauseCode } from './causes.ts';
export { type CheckedNumber, type CheckLogOptions, checkLog, type LogCheck, type RankedCause } from './check-log.ts';
export { type MaintenanceCalendar, type MaintenanceOptions, maintenanceCalendar } from './maintenance.ts';
export type { MaintenanceCode, MaintenanceTask, WearNumbers } from './maintenance-types.ts';
export type { NextTest } from './next-test.ts';
export type { MeasuredKey } from './observe.ts';
export type { ModelUncertainty, ReadingNoise } from './uncertainty.ts';
