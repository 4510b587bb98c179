/** Sky light on a plane by Perez et al. (1990): uniform sky, bright ring around the sun, bright band above the horizon. */
import { relativeAirMassUnchecked } from '../air-mass.ts';
import { type SkyConditions, type SkyIrradiance, type SkyKernel, skyOnPlane } from './sky.ts';

/** Upper edges of the clearness bins; the eighth has none. Perez et al. (1990) table 1. [-] */
const CLEARNESS_EDGES = Float64Array.of(1.065, 1.23, 1.5, 1.95, 2.8, 4.5, 6.2);

/** F11 F12 F13 F21 F22 F23 of each clearness bin, all sites together, three decimals. Perez et al. (1990) table 6. [-] */
// biome-ignore format: one clearness bin a line, as in the paper
const COEFFICIENTS = Float64Array.of(
  -0.008,  0.588, -0.062, -0.060,  0.072, -0.022,
   0.130,  0.683, -0.151, -0.019,  0.066, -0.029,
   0.330,  0.487, -0.221,  0.055, -0.064, -0.026,
   0.568,  0.187, -0.295,  0.109, -0.152, -0.014,
   0.873, -0.392, -0.362,  0.226, -0.462,  0.001,
   1.132, -1.237, -0.412,  0.288, -0.823,  0.056,
   1.060, -1.600, -0.359,  0.264, -1.127,  0.131,
   0.678, -0.327, -0.250,  0.156, -1.377,  0.251,
);

/** κ of the clearness, for the zenith in radians. [-] */
const KAPPA = 1.041;

/** @internal */
export const perezKernel: SkyKernel = {
  minimumCosZenith: Math.cos((85 * Math.PI) / 180),
  brightness({ dhi, dni, zenith, extraterrestrialNormal }, out, at) {
    out[at] = 0;
    out[at + 1] = 0;
    if (!(dhi > 0)) return;
    const z = (zenith * Math.PI) / 180;
    const zTerm = KAPPA * z * z * z;
    const clearness = ((dhi + dni) / dhi + zTerm) / (1 + zTerm);
    let bin = 0;
    while (bin < 7 && clearness >= CLEARNESS_EDGES[bin]!) bin++;
    const delta = (dhi * relativeAirMassUnchecked(zenith)) / extraterrestrialNormal;
    const row = 6 * bin;
    const f = COEFFICIENTS;
    out[at] = Math.max(0, f[row]! + f[row + 1]! * delta + f[row + 2]! * z);
    out[at + 1] = f[row + 3]! + f[row + 4]! * delta + f[row + 5]! * z;
  },
};

/**
 * Sky diffuse irradiance on a plane by Perez et al.
 *
 *     circumsolar = D F1 a/b,   sky = D [ (1 − F1)(1 + cos β)/2 + F2 sin β ],   their sum not below 0
 *     F1 = max(0, F11 + F12 Δ + F13 Z),   F2 = F21 + F22 Δ + F23 Z,   a = max(cos θ, 0),   b = max(cos 85°, cos Z)
 *     ε = ((D + DNI)/D + κ Z³)/(1 + κ Z³) chooses the row of coefficients,   Δ = D m / I0n
 *
 * Z in radians, m the relative air mass (Kasten & Young 1989). Where the horizon term makes the second part negative it
 * is taken from the first, so that neither is.
 *
 * @param conditions - One instant; D is `dhi`, I0n `extraterrestrialNormal`.
 * @returns Both parts on the plane. [W/m²]
 * @throws {@link DesignError} when a condition is outside its range.
 * @see Perez, Ineichen, Seals, Michalsky & Stewart (1990), Solar Energy 44(5) 271.
 */
export const perezSky = (conditions: SkyConditions): SkyIrradiance => skyOnPlane(perezKernel, conditions);
