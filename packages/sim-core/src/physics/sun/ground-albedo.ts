/** Reflectance of the ground, hour by hour, where it changes. */
import type { WeatherColumns } from '@noonloop/weather-io';
import { MONTH_STARTS } from '../calendar.ts';

/** Depth from which snow hides the ground; below, its reflectance blends in; judgement. [m] */
const COVERING_DEPTH = 0.05;

/**
 * Ground reflectance: the weather's own where it has one; else that of the ground, blended into that of snow up to a depth of
 * 5 cm where the weather has the depth.
 *
 * @param columns - Weather.
 * @param ground - One value, or twelve from January. [-]
 * @param snow - Of snow; `null` leaves snow out. [-]
 * @returns Shape [8760]; `null` where it is `ground` all year. [-]
 */
export function albedoColumn(
  columns: WeatherColumns,
  ground: number | readonly number[],
  snow: number | null,
): Float64Array | null {
  if (columns.albedo !== null) return columns.albedo;
  const depth = snow === null ? null : columns.snowDepth;
  if (depth === null && typeof ground === 'number') return null;
  const albedo = new Float64Array(8760);
  for (let month = 0; month < 12; month++) {
    albedo.fill(typeof ground === 'number' ? ground : ground[month]!, MONTH_STARTS[month]!, MONTH_STARTS[month + 1]!);
  }
  if (depth === null || snow === null) return albedo;
  return albedo.map((bare, hour) => bare + (snow - bare) * Math.min(depth[hour]! / COVERING_DEPTH, 1));
}
