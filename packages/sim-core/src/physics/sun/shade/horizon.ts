/** The line of hills, trees and roofs against the sky. */

import type { HorizonPoint } from '../../../design/design.ts';
import { DesignError, quote } from '../../../input/errors.ts';

/**
 * Altitude of the horizon in a direction: linear in azimuth between the points, round the circle.
 *
 * @param horizon - Points of rising azimuth, 0 to below 360; one point is a horizon of equal height.
 * @param azimuth - Clockwise from north, 0 to 360. [°]
 * @returns [°]
 * @throws {@link DesignError} when the points are not in order.
 */
export function horizonAltitude(horizon: readonly HorizonPoint[], azimuth: number): number {
  requireHorizon(horizon);
  return horizonAt(horizon, ((azimuth % 360) + 360) % 360);
}

/** Kernel of {@link horizonAltitude}; azimuth from 0 to 360. [°] @internal */
export function horizonAt(horizon: readonly HorizonPoint[], azimuth: number): number {
  const last = horizon.length - 1;
  let next = 0;
  while (next <= last && horizon[next]!.azimuth <= azimuth) next++;
  const before = horizon[next > 0 ? next - 1 : last]!;
  const after = horizon[next <= last ? next : 0]!;
  const from = before.azimuth - (next > 0 ? 0 : 360);
  const to = after.azimuth + (next <= last ? 0 : 360);
  return before.altitude + ((after.altitude - before.altitude) * (azimuth - from)) / (to - from);
}

/** Whether points are in order: azimuths rising from 0 to below 360°, altitudes 0 to 90°. */
export const isHorizon = (horizon: readonly HorizonPoint[]): boolean =>
  horizon.length > 0 &&
  horizon.every(
    ({ azimuth, altitude }, at) =>
      azimuth >= 0 &&
      azimuth < 360 &&
      (at === 0 || azimuth > horizon[at - 1]!.azimuth) &&
      altitude >= 0 &&
      altitude <= 90,
  );

/** @throws DesignError unless {@link isHorizon}. @internal */
export function requireHorizon(horizon: readonly HorizonPoint[]): void {
  if (isHorizon(horizon)) return;
  throw new DesignError([
    {
      path: 'horizon',
      found: quote(horizon.map(({ azimuth, altitude }) => `${azimuth}/${altitude}`).join(', ')),
      expected: 'points of rising azimuth from 0 to below 360°, altitudes from 0 to 90°',
      remedy: 'Sort the points clockwise from north.',
    },
  ]);
}
