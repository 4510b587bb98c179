export { collectorOutlet, type FlowingCollector } from './along-flow.ts';
export { beamEfficiency } from './beam-efficiency.ts';
export { biaxialEffectiveIrradiance, biaxialIncidenceModifier } from './biaxial.ts';
export { type CoverOptics, type CoverShares, coverShares, coverTransmittanceAbsorptance } from './covers.ts';
export { diffuseModifiers } from './diffuse.ts';
export { effectiveIrradiance } from './effective-irradiance.ts';
export {
  COEFFICIENTS_SHORT,
  type CollectorConditions,
  type CollectorRating,
  collectorEfficiency,
  dryTemperature,
  stagnationTemperature,
  usefulPower,
} from './efficiency.ts';
export {
  type CollectorExchanger,
  exchangerRatio,
  type FlowCorrection,
  flowCorrection,
  type RemovalLoss,
  seriesRatio,
} from './flow-correction.ts';
export { arrayArea } from './groups.ts';
export {
  beamIncidenceModifier,
  type DiffuseModifiers,
  type IncidenceModifier,
  type PlainModifier,
} from './incidence.ts';
