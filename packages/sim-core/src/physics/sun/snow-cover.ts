/** Snow on panels: when it covers them and when it slides off. */

import type { PlaneIrradiance } from './plane-irradiance.ts';

/** Rise of the snow's depth in an hour that covers panels. Marion et al. (2013). [m] */
const COVERING_FALL = 0.01;
/** Snow slides when the air is warmer than irradiance over this. Marion et al. (2013). [W/(m²·K)] */
const SLIDE_SLOPE = -80;
/** Share of a panel's length that snow slides in an hour, for an upright plane. Marion et al. (2013). [-] */
const SLIDE_RATE = 0.197;
/** The same for tubes, between which it holds; judgement: a fifth. [-] */
const TUBE_SLIDE_RATE = SLIDE_RATE / 5;

/** What the snow lies on. */
export type SnowSurface = 'plate' | 'tubes';

/**
 * Share of panels under snow.
 *
 *     a fall of 1 cm or more in the hour covers all;  else, with t_a > G/(−80 W/(m²·K)), r sin β slides off in the hour
 *
 * r is 0.197 for smooth covers; tubes hold snow five times longer (judgement). Bare ground means clear panels (judgement). The model was
 * fitted to PV modules in Colorado and Wisconsin; collectors in use may clear sooner.
 *
 * @param depth - On the ground, hour by hour. [m]
 * @param air - [°C]
 * @param irradiance - On the plane, without snow, mean of each hour. [W/m²]
 * @param tilt - β. [°]
 * @param surface - What it lies on.
 * @returns Shape of `depth`, 0 to 1. [-]
 * @see Marion, Schaefer, Caine & Sanchez (2013), Solar Energy 97 112.
 */
export function snowCover(
  depth: Float64Array,
  air: Float64Array,
  irradiance: Float64Array,
  tilt: number,
  surface: SnowSurface,
): Float64Array {
  const slide = (surface === 'tubes' ? TUBE_SLIDE_RATE : SLIDE_RATE) * Math.sin((tilt * Math.PI) / 180);
  const cover = new Float64Array(depth.length);
  let covered = 0;
  for (let hour = 0; hour < depth.length; hour++) {
    const fall = hour === 0 ? 0 : depth[hour]! - depth[hour - 1]!;
    if (!(depth[hour]! > 0)) covered = 0;
    else if (fall >= COVERING_FALL - 1e-9) covered = 1;
    else if (air[hour]! > irradiance[hour]! / SLIDE_SLOPE) covered = Math.max(0, covered - slide);
    cover[hour] = covered;
  }
  return cover;
}

/** Takes a covered share of each hour from all light on a plane, in place. @internal */
export function takeShare(light: PlaneIrradiance, cover: Float64Array): void {
  const { stepsPerHour, beam, circumsolar, sky, ground, total } = light;
  for (const column of [beam, circumsolar, sky, ground, total]) {
    for (let at = 0; at < column.length; at++) column[at]! *= 1 - cover[Math.trunc(at / stepsPerHour)]!;
  }
}

/** Mean of each hour. Shape [8760]. @internal */
export function hourlyMeans(steps: Float64Array): Float64Array {
  const stepsPerHour = steps.length / 8760;
  const means = new Float64Array(8760);
  for (let at = 0; at < steps.length; at++) means[Math.trunc(at / stepsPerHour)]! += steps[at]! / stepsPerHour;
  return means;
}
