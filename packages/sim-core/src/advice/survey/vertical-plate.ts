import { requireNumber } from '../../input/errors.ts';

/**
 * Nusselt number of natural convection on a vertical plate, such as the side of a tank or of a panel's box.
 *
 *     Nu = {0.825 + 0.387 Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}²
 *
 * @param rayleigh - Ra on the height, 0 to 1e12. [-]
 * @param prandtl - Pr, above 0. [-]
 * @returns Nu on the height. [-]
 * @throws {@link DesignError} outside these ranges.
 * @see Churchill & Chu, Int. J. Heat Mass Transfer 18 (1975) 1323.
 */
export function verticalPlateNusselt(rayleigh: number, prandtl: number): number {
  requireNumber('rayleigh', rayleigh, 0, 1e12, '');
  requireNumber('prandtl', prandtl, 1e-3, 1e5, '');
  const factor = 0.387 / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27);
  return (0.825 + factor * rayleigh ** (1 / 6)) ** 2;
}
