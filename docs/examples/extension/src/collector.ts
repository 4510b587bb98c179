// A kind of collector of one's own: a function from what its maker states to what a design takes. The packages check the outcome as any other.
import type { CollectorInput } from '@noonloop/sim-core';

/** A field of evacuated tubes, told by the tube. Coefficients are those of the test report and count for the aperture. */
export interface TubeField {
  /** Tubes in one panel. */
  readonly tubes: number;
  /** Aperture of one tube. [m²] */
  readonly aperture: number;
  /** Zero-loss efficiency of the beam. [-] */
  readonly eta0: number;
  /** Linear loss coefficient. [W/(m²·K)] */
  readonly a1: number;
  /** Quadratic loss coefficient. [W/(m²·K²)] */
  readonly a2: number;
  /** Distance of the tubes over their diameter: how much each shades its neighbour. Default 1.5. [-] */
  readonly spacing?: number;
}

/**
 * The collector of a design. Across the tubes the modifier follows from geometry alone: a round absorber shows the sun the same face at every angle, so
 * that its share of the slanting light grows as 1/cos θ, until the next tube shades it.
 *
 * @throws RangeError for tubes that stand within each other, or less than one.
 */
export function tubeField({ tubes, aperture, eta0, a1, a2, spacing = 1.5 }: TubeField): CollectorInput {
  if (!(Number.isInteger(tubes) && tubes >= 1)) throw new RangeError(`tubes: ${tubes}, expected 1 or more.`);
  if (!(spacing >= 1)) throw new RangeError(`spacing: ${spacing}, expected 1 or more: tubes beside each other.`);
  const angles = [0, 15, 30, 45, 60, 75, 90];
  const across = angles.map((angle) => {
    const cosine = Math.cos((angle * Math.PI) / 180);
    // Light on a tube over light on the aperture: 1/cos θ while it is free; the whole gap once its neighbour shades it.
    return angle === 90 ? 0 : Number(Math.min(1 / cosine, spacing).toFixed(3));
  });
  const along = angles.map((angle) =>
    Number(Math.max(0, 1 - 0.1 * (1 / Math.cos((angle * Math.PI) / 180) - 1)).toFixed(3)),
  );
  along[along.length - 1] = 0;
  return {
    name: `${tubes} evacuated tubes`,
    area: tubes * aperture,
    eta0,
    a1,
    a2,
    incidenceModifier: {
      tubes: 'upright',
      transversal: { angles, values: across },
      longitudinal: { angles, values: along },
    },
  };
}
