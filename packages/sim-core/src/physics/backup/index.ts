export { grossEfficiency } from './fuels.ts';
export { heatPumpCop } from './heat-pump.ts';
export { type FiringLimits, instantaneousOutlet } from './instantaneous.ts';
export {
  lossFromStandbyShare,
  lossFromStandingLoss,
  lossFromUniformEnergyFactor,
  lossOfLabelClass,
  type UefDrawPattern,
} from './labels.ts';
