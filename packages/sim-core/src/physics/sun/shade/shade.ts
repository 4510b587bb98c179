/** What horizon and obstacle take from the light on a plane. */
import type { ArrayExtent, HorizonPoint, ObstacleDesign } from '../../../design/design.ts';
import { type PlaneOrientation, planeEast, planeNorth, planeUp } from '../incidence.ts';
import type { PlaneIrradiance } from '../plane-irradiance.ts';
import type { SunTrack } from '../track.ts';
import { horizonAt, requireHorizon } from './horizon.ts';
import { type CompiledObstacle, compileObstacle, hiddenShare } from './obstacle.ts';

const RADIANS = Math.PI / 180;
/** Cells of one degree in which the sky is summed. */
const ALTITUDES = 90;
const AZIMUTHS = 360;

/** What stands between a plane and sky. */
export interface Shading {
  /** Line of the horizon; `null` for a flat one. */
  readonly horizon: readonly HorizonPoint[] | null;
  /** Something near, before the array; `null` for nothing. */
  readonly obstacle: ObstacleDesign | null;
  /** Size of the array; matters with an obstacle. */
  readonly extent: ArrayExtent;
}

/**
 * Share of the sky light that reaches a plane past horizon and obstacle, for a uniform sky.
 *
 *     F = ∫ v cos θ dω / ∫ cos θ dω over the sky before the plane;   v = 0 below the horizon, else 1 − hidden share of the array
 *
 * What stands before the sky is taken as dark.
 *
 * @param plane - Tilt and azimuth. [°]
 * @param shading - Horizon and obstacle.
 * @returns 0 to 1. [-]
 * @throws {@link DesignError} when the horizon is not in order.
 */
export function visibleSky(plane: PlaneOrientation, shading: Shading): number {
  if (shading.horizon !== null) requireHorizon(shading.horizon);
  const obstacle = shading.obstacle === null ? null : compileObstacle(shading.obstacle, plane, shading.extent);
  const [east, north, up] = [planeEast(plane), planeNorth(plane), planeUp(plane)];
  let seen = 0;
  let all = 0;
  for (let column = 0; column < AZIMUTHS; column++) {
    const azimuth = ((column + 0.5) * 360) / AZIMUTHS;
    const line = shading.horizon === null ? 0 : horizonAt(shading.horizon, azimuth);
    const [sin, cos] = [Math.sin(azimuth * RADIANS), Math.cos(azimuth * RADIANS)];
    for (let row = 0; row < ALTITUDES; row++) {
      const altitude = (row + 0.5) * RADIANS;
      const flat = Math.cos(altitude);
      const cosine = flat * (sin * east + cos * north) + Math.sin(altitude) * up;
      if (cosine <= 0) continue;
      const weight = cosine * flat;
      all += weight;
      const above = Math.min(Math.max(row + 1 - line, 0), 1);
      if (above === 0) continue;
      const open = obstacle === null ? 1 : 1 - hiddenShare(obstacle, flat * sin, flat * cos, Math.sin(altitude));
      seen += weight * above * open;
    }
  }
  return all > 0 ? seen / all : 1;
}

/**
 * Takes horizon and obstacle from the light on a plane.
 *
 * Beam and circumsolar light go out with the sun behind the horizon, and with the hidden share of the array; the rest of the sky keeps
 * {@link visibleSky}. The ground loses the beam behind the horizon and its own hidden sky; that the obstacle shades ground too is left out.
 *
 * @param light - Changed in place.
 * @param track - The sun for which `light` was computed.
 * @param plane - Its tilt and azimuth.
 * @param shading - Horizon and obstacle.
 * @internal
 */
export function shadePlane(light: PlaneIrradiance, track: SunTrack, plane: PlaneOrientation, shading: Shading): void {
  const { horizon } = shading;
  const obstacle = shading.obstacle === null ? null : compileObstacle(shading.obstacle, plane, shading.extent);
  const skyShare = visibleSky(plane, shading);
  const level = { tilt: 0, azimuth: 0 };
  const groundSky = horizon === null ? 1 : visibleSky(level, { ...shading, obstacle: null });
  const { beam, circumsolar, sky, ground, total } = light;
  for (let at = 0; at < total.length; at++) {
    if (track.ghi[at] === 0 && track.dhi[at] === 0 && track.dni[at] === 0) continue;
    let open = 1;
    if (track.up[at]! > 0) {
      const sunUp = horizon === null || isUp(horizon, track, at);
      if (ground[at]! > 0) ground[at]! *= groundShare(track, at, sunUp, groundSky);
      open = sunUp ? openShare(obstacle, track, at) : 0;
    } else ground[at]! *= groundSky;
    beam[at]! *= open;
    circumsolar[at]! *= open;
    sky[at]! *= skyShare;
    total[at] = beam[at]! + circumsolar[at]! + sky[at]! + ground[at]!;
  }
}

const openShare = (obstacle: CompiledObstacle | null, { east, north, up }: SunTrack, at: number): number =>
  obstacle === null ? 1 : 1 - hiddenShare(obstacle, east[at]!, north[at]!, up[at]!);

/** Whether the sun stands above the horizon's line. */
function isUp(horizon: readonly HorizonPoint[], track: SunTrack, at: number): boolean {
  const azimuth = Math.atan2(track.east[at]!, track.north[at]!) / RADIANS;
  return Math.asin(track.up[at]!) / RADIANS > horizonAt(horizon, azimuth < 0 ? azimuth + 360 : azimuth);
}

/** Share of the ground's light that is left. */
function groundShare({ ghi, dni, dhi, up }: SunTrack, at: number, sunUp: boolean, sky: number): number {
  const lost = (sunUp ? 0 : dni[at]! * up[at]!) + dhi[at]! * (1 - sky);
  return Math.max(1 - lost / ghi[at]!, 0);
}
