// How much light an hour can have, by the height of the sun.

/**
 * Limits of the Baseline Surface Radiation Network for one quantity:
 *
 *     limit = scale S μ^power + offset,   S = irradiance at the top of the air facing the sun, μ = max(cos Z, 0)
 */
interface LightLimit {
  /** Multiplies S. [-] */
  readonly scale: number;
  /** Exponent of μ. [-] */
  readonly power: number;
  /** Added. [W/m²] */
  readonly offset: number;
}

/**
 * Upper limits of the network's recommendations (Long & Dutton 2002, BSRN Global Network recommended QC tests, V2.0, from
 * memory): `possible` is never exceeded by light, `rare` once in a great while. Made for minutes; used here for hours, whose
 * means exceed them less.
 */
export const LIGHT_LIMITS = {
  ghi: { possible: { scale: 1.5, power: 1.2, offset: 100 }, rare: { scale: 1.2, power: 1.2, offset: 50 } },
  dhi: { possible: { scale: 0.95, power: 1.2, offset: 50 }, rare: { scale: 0.75, power: 1.2, offset: 30 } },
  dni: { possible: { scale: 1, power: 0, offset: 0 }, rare: { scale: 0.95, power: 0.2, offset: 10 } },
} as const satisfies Record<string, { possible: LightLimit; rare: LightLimit }>;

/** Kernel: a limit at one height of the sun. @param normal - S. [W/m²] @param cosine - μ, 0 to 1. [-] @returns [W/m²] */
export const lightLimit = ({ scale, power, offset }: LightLimit, normal: number, cosine: number): number =>
  scale * normal * cosine ** power + offset;
