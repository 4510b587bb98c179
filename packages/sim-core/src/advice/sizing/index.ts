export { type ExpansionVessel, sizeExpansionVessel } from '../../physics/loop/expansion.ts';
export type { ExpansionInput } from '../../physics/loop/expansion-rules.ts';
export type { PumpInLight } from '../../physics/loop/pump-in-light.ts';
export { type ArrayMonth, type ArraySizing, type ArraySizingOptions, sizeArray } from './array.ts';
export { type CoilSizingOptions, sizeCoil } from './coil.ts';
export { type CoilSurface, coilSurface } from './coil-surface.ts';
export {
  type CollectorCandidate,
  type CollectorComparison,
  type CollectorComparisonInput,
  type CollectorOnRoof,
  compareCollectors,
} from './compare-collectors.ts';
export {
  type PipeSizingOptions,
  sizePipe,
} from './pipe.ts';
export { type PotableExpansion, type PotableExpansionOptions, potableExpansion } from './potable.ts';
export { type PressureSizing, type PressureSizingOptions, sizeLoopPressure } from './pressure.ts';
export { type PumpSizingOptions, sizePumpDrive } from './pump.ts';
export type { BestPumpStart, PumpStart } from './pump-start.ts';
export type { CoilSizing, InsulationChoice, PipeChoice, PipeSizing, PumpSizing } from './sizings.ts';
export { sizeTank, type TankSizing, type TankSizingOptions } from './tank.ts';
