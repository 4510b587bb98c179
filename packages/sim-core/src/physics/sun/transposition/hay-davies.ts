/** Sky light on a plane by Hay & Davies: a uniform sky and a share that comes from the sun's direction. */
import { type SkyConditions, type SkyIrradiance, type SkyKernel, skyOnPlane } from './sky.ts';

/** @internal */
export const hayDaviesKernel: SkyKernel = {
  // cos 89°: nearer to the horizon the ratio of beams means nothing.
  minimumCosZenith: 0.01745,
  brightness({ dni, extraterrestrialNormal }, out, at) {
    out[at] = dni / extraterrestrialNormal;
    out[at + 1] = 0;
  },
};

/**
 * Sky diffuse irradiance on a plane by Hay & Davies.
 *
 *     circumsolar = D A R,   sky = D (1 − A)(1 + cos β)/2
 *     A = DNI / I0n,   R = max(cos θ, 0) / max(cos Z, 0.01745)
 *
 * The bright band above the horizon is left out.
 *
 * @param conditions - One instant; D is `dhi`, I0n `extraterrestrialNormal`.
 * @returns Both parts on the plane. [W/m²]
 * @throws {@link DesignError} when a condition is outside its range.
 * @see Hay & Davies (1980); Duffie & Beckman (2013) eq. 2.16.4.
 */
export const hayDaviesSky = (conditions: SkyConditions): SkyIrradiance => skyOnPlane(hayDaviesKernel, conditions);
