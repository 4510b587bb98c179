/** Incidence angle modifiers of light from the whole sky and the whole ground, by integration over what the plane sees. */
import { requireNumber } from '../../input/errors.ts';
import { biaxialDiffuseModifiers, requireBiaxial } from './biaxial.ts';
import {
  type DiffuseModifiers,
  type IncidenceModifier,
  modifierAtAngle,
  type PlainModifier,
  requireModifier,
} from './incidence.ts';

/** Panels of the midpoint rule in each of the two parts of the integral; 1e-6 from the limit, done once a design. */
const PANELS = 2000;

/**
 * Incidence angle modifiers of uniform sky light and of ground-reflected light on a tilted plane.
 *
 *     K_sky = ∫ K(θ) s(θ) sin 2θ dθ / ∫ s(θ) sin 2θ dθ,   θ from 0 to 90°;   K_ground the same with 1 − s
 *     s(θ) = arccos(−cot θ cot β)/π: share of the cone at θ around the normal that is above the horizon
 *
 * The integral over the azimuth is done in closed form; what is left has a kink at θ = 90° − β, where the cone first
 * touches the ground, and is integrated on either side of it. Tubes are integrated over both angles.
 *
 * @param modifier - Beam modifier of cover or tubes.
 * @param tilt - β of the plane, from the horizontal, 0 to 90. [°]
 * @returns Both modifiers. [-]
 * @throws {@link DesignError} when the tilt is outside 0 to 90° or the modifier cannot be used.
 * @see Brandemuehl & Beckman (1980), Solar Energy 24(5) 511; Marion (2017), Solar Energy 147 344.
 */
export function diffuseModifiers(modifier: IncidenceModifier, tilt: number): DiffuseModifiers {
  requireNumber('tilt', tilt, 0, 90, '°');
  if ('tubes' in modifier) {
    requireBiaxial(modifier);
    return biaxialDiffuseModifiers(modifier, tilt);
  }
  requireModifier(modifier);
  const sums = new Float64Array(4);
  const touch = Math.PI / 2 - (tilt * Math.PI) / 180;
  const cotTilt = tilt > 0 ? 1 / Math.tan((tilt * Math.PI) / 180) : Number.POSITIVE_INFINITY;
  addPart(modifier, cotTilt, 0, touch, sums);
  addPart(modifier, cotTilt, touch, Math.PI / 2, sums);
  return { sky: sums[0]! / sums[1]!, ground: sums[3]! > 0 ? sums[2]! / sums[3]! : 0 };
}

/** Adds one part of the integral: sky light through and before the cover, then the ground's. */
function addPart(modifier: PlainModifier, cotTilt: number, from: number, to: number, sums: Float64Array): void {
  const width = (to - from) / PANELS;
  for (let panel = 0; panel < PANELS; panel++) {
    const theta = from + (panel + 0.5) * width;
    const through = modifierAtAngle(modifier, (theta * 180) / Math.PI);
    const aboveHorizon = Math.acos(Math.max(-1, -cotTilt / Math.tan(theta))) / Math.PI;
    const weight = Math.sin(2 * theta) * width;
    sums[0]! += through * aboveHorizon * weight;
    sums[1]! += aboveHorizon * weight;
    sums[2]! += through * (1 - aboveHorizon) * weight;
    sums[3]! += (1 - aboveHorizon) * weight;
  }
}
