export { type FiringLimits, instantaneousOutlet } from './instantaneous.ts';
export {
  lossFromStandbyShare,
  lossFromStandingLoss,
  lossFromUniformEnergyFactor,
  lossOfLabelClass,
  type UefDrawPattern,
} from './labels.ts';
