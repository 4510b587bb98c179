/** Sky light on a plane when all of the sky is equally bright. */
import { type SkyConditions, type SkyIrradiance, type SkyKernel, skyOnPlane } from './sky.ts';

/** @internal */
export const isotropicKernel: SkyKernel = {
  minimumCosZenith: 1,
  brightness(_sky, out, at) {
    out[at] = 0;
    out[at + 1] = 0;
  },
};

/**
 * Sky diffuse irradiance on a plane from a uniform sky: D (1 + cos β)/2, none of it circumsolar.
 *
 * Too low for planes that look at the sun on clear days: the year's total at 35 to 45° south is 4 to 6 % below Perez.
 *
 * @param conditions - One instant; D is `dhi`.
 * @returns Both parts on the plane. [W/m²]
 * @throws {@link DesignError} when a condition is outside its range.
 * @see Liu & Jordan (1963), Solar Energy 7(2) 53; Duffie & Beckman (2013) eq. 2.15.1.
 */
export const isotropicSky = (conditions: SkyConditions): SkyIrradiance => skyOnPlane(isotropicKernel, conditions);
