export { type ExpansionInput, type ExpansionVessel, sizeExpansionVessel } from '../../physics/loop/expansion.ts';
export { type ArrayMonth, type ArraySizing, type ArraySizingOptions, sizeArray } from './array.ts';
export { type CoilSizing, type CoilSizingOptions, sizeCoil } from './coil.ts';
export { type CoilSurface, coilSurface } from './coil-surface.ts';
export {
  type CollectorCandidate,
  type CollectorComparison,
  type CollectorComparisonInput,
  type CollectorOnRoof,
  compareCollectors,
} from './compare-collectors.ts';
export {
  type InsulationChoice,
  type PipeChoice,
  type PipeSizing,
  type PipeSizingOptions,
  sizePipe,
} from './pipe.ts';
export { type PotableExpansion, type PotableExpansionOptions, potableExpansion } from './potable.ts';
export { type PressureSizing, type PressureSizingOptions, sizeLoopPressure } from './pressure.ts';
export { type PumpInLight, type PumpSizing, type PumpSizingOptions, sizePumpDrive } from './pump.ts';
export type { BestPumpStart, PumpStart } from './pump-start.ts';
export { sizeTank, type TankSizing, type TankSizingOptions } from './tank.ts';
