export { cellTemperature, cellTemperatureInWind } from './cell-temperature.ts';
export { moduleParameters, type PvPlate } from './datasheet.ts';
export { diodeParameters, type PvConditions, type PvModuleParameters, stringOf } from './module.ts';
export {
  type MaximumPowerLoad,
  type MeasuredLoad,
  type MotorLoad,
  type OpenLoad,
  type PvLoad,
  type PvOperatingPoint,
  pvOperatingPoint,
  type ResistanceLoad,
  type VoltageLoad,
} from './operating-point.ts';
export type { DiodeParameters } from './single-diode.ts';
