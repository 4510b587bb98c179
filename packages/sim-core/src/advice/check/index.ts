export {
  CALIBRATION_NOTES,
  type CalibratedParameter,
  type CalibrateOptions,
  type Calibration,
  type CalibrationNoteCode,
  calibrate,
} from './calibrate.ts';
export type { FittedKey } from './calibrate-fit.ts';
export { CARDS, type CardCode, OUTCOMES, type OutcomeCode } from './card-codes.ts';
export { type Doer, TEST_CARDS, type TestCard } from './cards.ts';
export { CAUSES, type CauseCode, FORMS, type FormCode } from './causes.ts';
export { type CheckLogOptions, checkLog } from './check-log.ts';
export {
  CHECK_CAUTIONS,
  CHECK_NOTES,
  type CheckCautionCode,
  type CheckedNumber,
  type CheckNoteCode,
  type LogCheck,
  type RankedCause,
  REASONS,
  type ReasonCode,
} from './check-types.ts';
export { DOUBTS, type DoubtCode } from './doubts.ts';
export type { Evidence } from './evidence.ts';
export {
  CALENDAR_CAUTIONS,
  type CalendarCautionCode,
  type MaintenanceCalendar,
  type MaintenanceOptions,
  maintenanceCalendar,
} from './maintenance.ts';
export {
  type MaintenanceCode,
  type MaintenanceTask,
  TASK_BASES,
  TASK_DUTIES,
  TASK_REASONS,
  TASKS,
  type TaskBasisCode,
  type TaskReasonCode,
  type WearNumbers,
} from './maintenance-types.ts';
export type { NextTest } from './next-test.ts';
export type { MeasuredKey } from './observe.ts';
export type { ModelUncertainty, ReadingNoise } from './uncertainty.ts';
