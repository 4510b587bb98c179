/** Sunlight on a collector after its incidence angle modifiers: what eta0 multiplies. */
import type { PlaneIrradiance } from '../sun/plane-irradiance.ts';
import { type DiffuseModifiers, modifierAtCosine, type PlainModifier } from './incidence.ts';

/**
 * Irradiance on a plane, each part times its incidence angle modifier.
 *
 *     G' = K(θ) (beam + circumsolar) + K_sky sky + K_ground ground
 *
 * Light from around the sun takes the beam's modifier: it comes at the beam's angle.
 *
 * @param plane - Irradiance on the plane, step by step.
 * @param modifier - Beam modifier of the cover.
 * @param diffuse - Diffuse modifiers at the plane's tilt, see `diffuseModifiers`.
 * @returns Shape of `plane.total`. [W/m²]
 */
export function effectiveIrradiance(
  plane: PlaneIrradiance,
  modifier: PlainModifier,
  diffuse: DiffuseModifiers,
): Float64Array {
  const { beam, circumsolar, sky, ground, incidenceCosine } = plane;
  const effective = new Float64Array(beam.length);
  for (let step = 0; step < effective.length; step++) {
    const direct = beam[step]! + circumsolar[step]!;
    const through = direct > 0 ? modifierAtCosine(modifier, incidenceCosine[step]!) : 0;
    effective[step] = through * direct + diffuse.sky * sky[step]! + diffuse.ground * ground[step]!;
  }
  return effective;
}
