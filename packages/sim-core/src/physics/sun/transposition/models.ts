/** The sky models by name. */
import { hayDaviesKernel } from './haydavies.ts';
import { isotropicKernel } from './isotropic.ts';
import { perezKernel } from './perez.ts';
import type { SkyKernel } from './sky.ts';

/** Sky models to choose from. */
export type SkyModel = 'perez' | 'haydavies' | 'isotropic';

/** @internal */
export const SKY_KERNELS: Readonly<Record<SkyModel, SkyKernel>> = {
  perez: perezKernel,
  haydavies: hayDaviesKernel,
  isotropic: isotropicKernel,
};
