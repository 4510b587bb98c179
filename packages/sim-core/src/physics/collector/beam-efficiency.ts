/** The zero-loss efficiency of the beam from that of a blue sky: which of the two a certificate gives. */
import { requireNumber } from '../../input/errors.ts';

/** Shares of beam and diffuse light in which ISO 9806:2017 states the hemispherical zero-loss efficiency (from memory). [-] */
const BLUE_SKY = { beam: 0.85, diffuse: 0.15 } as const;

/**
 * Zero-loss efficiency of the beam from the hemispherical one.
 *
 *     η0,b = η0,hem/(0.85 + 0.15 K_d)
 *
 * @param hemispherical - η0,hem: of light that is 85 % beam and 15 % diffuse. [-]
 * @param diffuseModifier - K_d, incidence angle modifier of diffuse light. [-]
 * @returns η0,b. [-]
 * @throws {@link DesignError} for a number out of its range.
 * @see ISO 9806:2017 (from memory).
 * @example
 * beamEfficiency(0.75845, 0.9); // 0.77
 */
export function beamEfficiency(hemispherical: number, diffuseModifier: number): number {
  requireNumber('hemispherical', hemispherical, 0, 1, '');
  requireNumber('diffuseModifier', diffuseModifier, 0, 2, '');
  return hemispherical / (BLUE_SKY.beam + BLUE_SKY.diffuse * diffuseModifier);
}
