/** Light that the ground throws onto a plane. */
import { requireNumber } from '../../../input/errors.ts';
import { groundViewFactor } from './sky.ts';

/**
 * Ground-reflected irradiance on a plane from a level, evenly bright ground: G ρ (1 − cos β)/2.
 *
 * @param ghi - Global horizontal irradiance G, ≥ 0. [W/m²]
 * @param albedo - Ground reflectance ρ, 0 to 1. [-]
 * @param tilt - β, from the horizontal, 0 to 180. [°]
 * @returns On the plane. [W/m²]
 * @throws {@link DesignError} when an argument is outside its range.
 * @see Liu & Jordan (1963), Solar Energy 7(2) 53; Duffie & Beckman (2013) eq. 2.15.1.
 */
export function groundReflected(ghi: number, albedo: number, tilt: number): number {
  requireNumber('ghi', ghi, 0, 2000, 'W/m²');
  requireNumber('albedo', albedo, 0, 1, '');
  requireNumber('tilt', tilt, 0, 180, '°');
  return ghi * albedo * groundViewFactor(Math.cos((tilt * Math.PI) / 180));
}
