/** Incidence angle modifiers of tubes: one table across them, one along them. */

import type { IncidenceModifierBiaxial } from '../../design/design.ts';
import { requireNumber } from '../../input/errors.ts';
import { type PlaneOrientation, planeEast, planeNorth, planeUp } from '../sun/incidence.ts';
import type { PlaneIrradiance } from '../sun/plane-irradiance.ts';
import type { SunTrack } from '../sun/track.ts';
import { type DiffuseModifiers, modifierAtAngle, requireModifier } from './incidence.ts';

const RADIANS = Math.PI / 180;

/** Panels of the midpoint rule over the angle from the normal, in each of its two parts, and over each arc around it. */
const RINGS = 120;
const ARC = 48;

/**
 * Incidence angle modifier of beam light on tubes.
 *
 *     K(θT, θL) = K_T(θT) K_L(θL)
 *
 * θT and θL are the angles of the sun's projections on the plane across the tubes and on that along them, both through the
 * normal: tan²θ = tan²θT + tan²θL. Each table is measured with the other angle 0; the product between is the rule of ISO 9806.
 *
 * @param modifier - Both tables.
 * @param transversalAngle - θT, 0 to 90. [°]
 * @param longitudinalAngle - θL, 0 to 90. [°]
 * @returns K. [-]
 * @throws {@link DesignError} when an angle is outside 0 to 90° or a table is not in order.
 * @see ISO 9806:2017 (from memory); McIntire (1982), Solar Energy 29(4) 315, for the product (from memory).
 */
export function biaxialIncidenceModifier(
  modifier: IncidenceModifierBiaxial,
  transversalAngle: number,
  longitudinalAngle: number,
): number {
  requireBiaxial(modifier);
  requireNumber('transversalAngle', transversalAngle, 0, 90, '°');
  requireNumber('longitudinalAngle', longitudinalAngle, 0, 90, '°');
  return (
    modifierAtAngle(modifier.transversal, transversalAngle) * modifierAtAngle(modifier.longitudinal, longitudinalAngle)
  );
}

/** @throws DesignError when a table is not in order. @internal */
export function requireBiaxial(modifier: IncidenceModifierBiaxial): void {
  requireModifier(modifier.transversal);
  requireModifier(modifier.longitudinal);
}

/**
 * Modifier of light from one direction, by its components on the plane: square to it, level in it, and up its slope. They need
 * no common length. [-] @internal
 */
function modifierAlong(modifier: IncidenceModifierBiaxial, normal: number, level: number, slope: number): number {
  if (normal <= 0) return 0;
  const upright = modifier.tubes === 'upright';
  const across = Math.atan(Math.abs(upright ? level : slope) / normal) / RADIANS;
  const along = Math.atan(Math.abs(upright ? slope : level) / normal) / RADIANS;
  return modifierAtAngle(modifier.transversal, across) * modifierAtAngle(modifier.longitudinal, along);
}

/**
 * Diffuse modifiers of tubes, integrated over both angles of the half-sphere before the plane.
 *
 *     K_sky = ∫∫ K cos θ dω / ∫∫ cos θ dω   over the directions above the horizon; K_ground over those below
 *
 * Around the normal the arc splits at φ = arccos(−cot θ cot β), where it dips below the horizon; each piece has its own panels,
 * so that no panel straddles the horizon. Within 1e-4 of a grid of 18 million directions.
 *
 * @param modifier - Both tables, checked.
 * @param tilt - β, 0 to 90. [°]
 * @returns Both modifiers. [-]
 * @internal
 */
export function biaxialDiffuseModifiers(modifier: IncidenceModifierBiaxial, tilt: number): DiffuseModifiers {
  const touch = Math.PI / 2 - tilt * RADIANS;
  const cotTilt = tilt > 0 ? 1 / Math.tan(tilt * RADIANS) : Number.POSITIVE_INFINITY;
  let [sky, wholeSky, ground, wholeGround] = [0, 0, 0, 0];
  for (const [from, to] of [
    [0, touch],
    [touch, Math.PI / 2],
  ] as const) {
    const width = (to - from) / RINGS;
    for (let ring = 0; ring < RINGS; ring++) {
      const theta = from + (ring + 0.5) * width;
      const horizon = Math.acos(Math.max(-1, -cotTilt / Math.tan(theta)));
      const weight = Math.sin(2 * theta) * width;
      sky += weight * arc(modifier, theta, 0, horizon);
      wholeSky += weight * horizon;
      ground += weight * arc(modifier, theta, horizon, Math.PI);
      wholeGround += weight * (Math.PI - horizon);
    }
  }
  return { sky: sky / wholeSky, ground: wholeGround > 1e-12 ? ground / wholeGround : 0 };
}

/** ∫ K dφ around the normal at θ; φ from up the slope. */
function arc(modifier: IncidenceModifierBiaxial, theta: number, from: number, to: number): number {
  if (to <= from) return 0;
  const width = (to - from) / ARC;
  const normal = Math.cos(theta);
  const radius = Math.sin(theta);
  let sum = 0;
  for (let panel = 0; panel < ARC; panel++) {
    const phi = from + (panel + 0.5) * width;
    sum += modifierAlong(modifier, normal, radius * Math.sin(phi), radius * Math.cos(phi));
  }
  return sum * width;
}

/**
 * Irradiance on tubes, each part times its modifier; as `effectiveIrradiance` for covers that treat all sides alike.
 *
 * @param plane - Irradiance on the plane, step by step.
 * @param modifier - Both tables.
 * @param diffuse - Diffuse modifiers at the plane's tilt, see `diffuseModifiers`.
 * @param track - The sun for which `plane` was computed.
 * @param orientation - The plane's tilt and azimuth.
 * @returns Shape of `plane.total`. [W/m²]
 */
export function biaxialEffectiveIrradiance(
  plane: PlaneIrradiance,
  modifier: IncidenceModifierBiaxial,
  diffuse: DiffuseModifiers,
  track: SunTrack,
  orientation: PlaneOrientation,
): Float64Array {
  const { beam, circumsolar, sky, ground, incidenceCosine } = plane;
  const { east, north, up } = track;
  const azimuth = orientation.azimuth * RADIANS;
  // Level in the plane, to the right of one who looks where it looks, and up its slope.
  const levelEast = Math.cos(azimuth);
  const levelNorth = -Math.sin(azimuth);
  const slopeEast = -planeUp(orientation) * Math.sin(azimuth);
  const slopeNorth = -planeUp(orientation) * Math.cos(azimuth);
  const slopeUp = Math.hypot(planeEast(orientation), planeNorth(orientation));
  const effective = new Float64Array(beam.length);
  for (let at = 0; at < effective.length; at++) {
    const direct = beam[at]! + circumsolar[at]!;
    let through = 0;
    if (direct > 0) {
      const level = east[at]! * levelEast + north[at]! * levelNorth;
      const slope = east[at]! * slopeEast + north[at]! * slopeNorth + up[at]! * slopeUp;
      through = modifierAlong(modifier, incidenceCosine[at]!, level, slope);
    }
    effective[at] = through * direct + diffuse.sky * sky[at]! + diffuse.ground * ground[at]!;
  }
  return effective;
}
