export {
  type GlycolAgeing,
  type GlycolAgeingOptions,
  type GlycolVerdict,
  glycolAgeing,
  glycolVerdict,
  type HoursAbove,
} from './ageing.ts';
export type { FreezeReport, FreezeSeason } from './ice.ts';
export { type GlycolReading, type GlycolScale, type GlycolStrength, glycolFromReading } from './reading.ts';
export { type GlycolShare, type GlycolShareOptions, glycolForSite } from './share.ts';
export { freezeAtSite, freezeOfRun } from './site.ts';
export { type Thinning, type ThinningMonth, type ThinningOptions, thinning } from './thinning.ts';
