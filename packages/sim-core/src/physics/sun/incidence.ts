/** How squarely the sun falls on a plane: the cosine of the incidence angle. */
import type { SunPosition } from '@noonloop/weather-io/sun';
import { requireNumber } from '../../input/errors.ts';

const RADIANS = Math.PI / 180;

/** Where a plane looks. */
export interface PlaneOrientation {
  /** From the horizontal, 0 to 180; 90 is a wall. [°] */
  readonly tilt: number;
  /** Clockwise from north: 90 east, 180 south, 270 west. [°] */
  readonly azimuth: number;
}

/**
 * Cosine of the angle between the sun and the normal of a plane; negative when the sun is behind the plane.
 *
 *     cos θ = cos Z cos β + sin Z sin β cos(γs − γ)
 *
 * Says nothing of the horizon: the sun may be in front of the plane and below the ground (Z > 90°).
 *
 * @param plane - Tilt β and azimuth γ. [°]
 * @param sun - Zenith Z and azimuth γs, see `sunPosition`. [°]
 * @returns cos θ, −1 to 1. [-]
 * @throws {@link DesignError} when tilt or zenith is outside 0 to 180° or an azimuth outside −360 to 360°.
 * @see Duffie & Beckman (2013) eq. 1.6.3, with azimuths clockwise from north.
 * @example
 * incidenceCosine({ tilt: 45, azimuth: 180 }, { zenith: 45, azimuth: 180 }); // 1
 */
export function incidenceCosine(plane: PlaneOrientation, sun: SunPosition): number {
  requirePlane(plane);
  requireNumber('sun.zenith', sun.zenith, 0, 180, '°');
  requireNumber('sun.azimuth', sun.azimuth, -360, 360, '°');
  const sinZenith = Math.sin(sun.zenith * RADIANS);
  return (
    sinZenith * Math.sin(sun.azimuth * RADIANS) * planeEast(plane) +
    sinZenith * Math.cos(sun.azimuth * RADIANS) * planeNorth(plane) +
    Math.cos(sun.zenith * RADIANS) * planeUp(plane)
  );
}

/** Throws unless tilt is 0 to 180° and azimuth −360 to 360°. @internal */
export function requirePlane(plane: PlaneOrientation): void {
  requireNumber('plane.tilt', plane.tilt, 0, 180, '°');
  requireNumber('plane.azimuth', plane.azimuth, -360, 360, '°');
}

/** East component of the plane's unit normal. [-] @internal */
export const planeEast = (plane: PlaneOrientation): number =>
  Math.sin(plane.tilt * RADIANS) * Math.sin(plane.azimuth * RADIANS);

/** North component of the plane's unit normal. [-] @internal */
export const planeNorth = (plane: PlaneOrientation): number =>
  Math.sin(plane.tilt * RADIANS) * Math.cos(plane.azimuth * RADIANS);

/** Upward component of the plane's unit normal, cos β. [-] @internal */
export const planeUp = (plane: PlaneOrientation): number => Math.cos(plane.tilt * RADIANS);
