/** One upright rectangle that stands before the array: the next row of panels, a chimney, a wall. */
import type { ArrayExtent, ObstacleDesign } from '../../../design/design.ts';
import type { PlaneOrientation } from '../incidence.ts';

const RADIANS = Math.PI / 180;
/** Corners that a rectangle cut by four lines may have. */
const CORNERS = 8;

/** An obstacle and the array behind it, ready to be asked. */
export interface CompiledObstacle {
  readonly distance: number;
  readonly halfWidth: number;
  readonly height: number;
  readonly halfArray: number;
  readonly slopeLength: number;
  /** Unit vectors: from the array to the obstacle, and along the obstacle. East and north. */
  readonly towards: Float64Array;
  readonly along: Float64Array;
  /** By how much a point moves towards, along and up per metre along the array's width, and up its slope. */
  readonly perWidth: Float64Array;
  readonly perSlope: Float64Array;
  /** Scratch: corners of the part still in shadow, and of the next cut. */
  readonly polygon: Float64Array;
  readonly cut: Float64Array;
}

/** Lays obstacle and array into one frame: origin at the middle of the array's lower edge. */
export function compileObstacle(
  obstacle: ObstacleDesign,
  plane: PlaneOrientation,
  extent: ArrayExtent,
): CompiledObstacle {
  const turn = (plane.azimuth - obstacle.azimuth) * RADIANS;
  const tilt = plane.tilt * RADIANS;
  const direction = obstacle.azimuth * RADIANS;
  return {
    distance: obstacle.distance,
    halfWidth: obstacle.width / 2,
    height: obstacle.height,
    halfArray: extent.width / 2,
    slopeLength: extent.slopeLength,
    towards: Float64Array.of(Math.sin(direction), Math.cos(direction)),
    along: Float64Array.of(Math.cos(direction), -Math.sin(direction)),
    perWidth: Float64Array.of(-Math.sin(turn), Math.cos(turn), 0),
    perSlope: Float64Array.of(-Math.cos(tilt) * Math.cos(turn), -Math.cos(tilt) * Math.sin(turn), Math.sin(tilt)),
    polygon: new Float64Array(2 * CORNERS),
    cut: new Float64Array(2 * CORNERS),
  };
}

/**
 * Share of the array that an obstacle hides from one direction.
 *
 * A ray from the point (w, s) of the array meets the obstacle's plane after t = (D − P_u)/d_u, at P_v + t d_v along it and
 * P_z + t d_z above the array's lower edge; all are linear in w and s. So the shadow is the array's rectangle cut by
 * straight lines, and its area is exact.
 *
 * @param east - Unit vector to the sun. [-]
 * @returns 0 to 1. [-]
 */
export function hiddenShare(o: CompiledObstacle, east: number, north: number, up: number): number {
  const towards = east * o.towards[0]! + north * o.towards[1]!;
  if (towards <= 1e-9) return 0;
  const slant = (east * o.along[0]! + north * o.along[1]!) / towards;
  const rise = up / towards;
  const { polygon: p, halfArray: w, slopeLength: s, perWidth, perSlope } = o;
  p[0] = -w;
  p[1] = 0;
  p[2] = w;
  p[3] = 0;
  p[4] = w;
  p[5] = s;
  p[6] = -w;
  p[7] = s;
  // t, place along the obstacle and height on it, each as value at the origin, per width and per slope.
  const alongW = perWidth[1]! - perWidth[0]! * slant;
  const alongS = perSlope[1]! - perSlope[0]! * slant;
  const along = o.distance * slant;
  const heightW = perWidth[2]! - perWidth[0]! * rise;
  const heightS = perSlope[2]! - perSlope[0]! * rise;
  let corners = keep(o, 4, o.distance, -perWidth[0]!, -perSlope[0]!);
  corners = keep(o, corners, o.halfWidth - along, -alongW, -alongS);
  corners = keep(o, corners, o.halfWidth + along, alongW, alongS);
  corners = keep(o, corners, o.height - o.distance * rise, -heightW, -heightS);
  let doubled = 0;
  for (let at = 0; at < corners; at++) {
    const next = at + 1 < corners ? at + 1 : 0;
    doubled += p[2 * at]! * p[2 * next + 1]! - p[2 * next]! * p[2 * at + 1]!;
  }
  return Math.min(Math.max(doubled / (4 * w * s), 0), 1);
}

/** Keeps the part of the polygon where c + a w + b s ≥ 0 (Sutherland & Hodgman). @returns Its corners. */
function keep(o: CompiledObstacle, corners: number, c: number, a: number, b: number): number {
  const { polygon: p, cut } = o;
  let kept = 0;
  for (let at = 0; at < corners; at++) {
    const next = at + 1 < corners ? at + 1 : 0;
    const here = c + a * p[2 * at]! + b * p[2 * at + 1]!;
    const there = c + a * p[2 * next]! + b * p[2 * next + 1]!;
    if (here >= 0) {
      cut[2 * kept] = p[2 * at]!;
      cut[2 * kept + 1] = p[2 * at + 1]!;
      kept++;
    }
    if (here >= 0 !== there >= 0) {
      const share = here / (here - there);
      cut[2 * kept] = p[2 * at]! + share * (p[2 * next]! - p[2 * at]!);
      cut[2 * kept + 1] = p[2 * at + 1]! + share * (p[2 * next + 1]! - p[2 * at + 1]!);
      kept++;
    }
  }
  p.set(cut);
  return kept;
}
