/** How much air the sunlight crosses. */
import { requireNumber } from '../../input/errors.ts';

/**
 * Air mass relative to the sun overhead, at sea level.
 *
 *     m = 1 / (cos Z + 0.50572 (96.07995° − Z)^−1.6364)
 *
 * @param zenith - Z, without refraction, 0 to 90. [°]
 * @returns 1 overhead to about 38 at the horizon. [-]
 * @throws {@link DesignError} when the zenith is outside 0 to 90°.
 * @see Kasten & Young (1989), Applied Optics 28(22) 4735.
 */
export function relativeAirMass(zenith: number): number {
  requireNumber('zenith', zenith, 0, 90, '°');
  return relativeAirMassUnchecked(zenith);
}

/** Kernel of {@link relativeAirMass}; zenith below 96°. @internal */
export function relativeAirMassUnchecked(zenith: number): number {
  return 1 / (Math.cos((zenith * Math.PI) / 180) + 0.50572 * (96.07995 - zenith) ** -1.6364);
}
