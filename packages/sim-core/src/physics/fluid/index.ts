export { airPressureAt } from './air-pressure.ts';
export { boilingPoint } from './boiling.ts';
export { burstProtection } from './burst.ts';
export {
  type CompiledFluid,
  compileFluid,
  fluidConductivity,
  fluidDensity,
  fluidSpecificHeat,
  fluidViscosity,
} from './compile.ts';
export type { Glycol } from './melinder.ts';
export {
  glycolMassForFreezing,
  glycolMassFromVolume,
  glycolVolumeFromMass,
  glycolVolumeOfMixture,
} from './mixture.ts';
export { type FluidProperties, type FluidQuery, fluidProperties } from './properties.ts';
