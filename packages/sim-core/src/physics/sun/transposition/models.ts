/** The sky models by name. */
import { hayDaviesKernel } from './hay-davies.ts';
import { isotropicKernel } from './isotropic.ts';
import { perezKernel } from './perez.ts';
import type { SkyKernel } from './sky.ts';

/** Sky models to choose from. */
export type SkyModel = 'perez' | 'hay-davies' | 'isotropic';

/** Words for them: their names, and `haydavies`, which older designs have for `hay-davies`. @internal */
export const SKY_WORDS = ['perez', 'hay-davies', 'isotropic', 'haydavies'] as const;

/** The model that a word stands for. @internal */
export const skyModelOf = (word: (typeof SKY_WORDS)[number]): SkyModel => (word === 'haydavies' ? 'hay-davies' : word);

/** @internal */
export const SKY_KERNELS: Readonly<Record<SkyModel, SkyKernel>> = {
  perez: perezKernel,
  'hay-davies': hayDaviesKernel,
  isotropic: isotropicKernel,
};
