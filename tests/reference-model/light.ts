/** Light on a plane and what the absorber takes of it, 30 s by 30 s, from docs/theory/sun.md and collector.md. */
import type { SystemDesign } from '@noonloop/sim-core';
import { diffuseModifiers, horizonAltitude, perezSky, sunPosition, visibleSky } from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { extraterrestrialNormal } from '@noonloop/weather-io/sun';
import { HOURS } from './days.ts';

const RADIANS = Math.PI / 180;

/** Sun at one instant: unit vector to it, and whether it is up. */
interface Sun {
  readonly east: number;
  readonly north: number;
  readonly up: number;
}

/** Light on a plane in each step. [W/m²] */
export interface PlaneLight {
  readonly total: Float64Array;
  /** After the incidence modifiers: what η0 multiplies. */
  readonly effective: Float64Array;
}

type Plane = Pick<SystemDesign['array'], 'tilt' | 'azimuth'>;

/** Incidence modifier of one table: straight lines, and to 0 at 90°. */
function fromTable(
  { angles, values }: { angles: readonly number[]; values: readonly number[] },
  angle: number,
): number {
  const xs = [...angles, 90];
  const ys = [...values, 0];
  if (angle >= 90) return 0;
  let next = 1;
  while (xs[next]! < angle) next++;
  const share = (angle - xs[next - 1]!) / (xs[next]! - xs[next - 1]!);
  return ys[next - 1]! + share * (ys[next]! - ys[next - 1]!);
}

/** K of light from a direction, by its parts square to the plane, level in it and up its slope. */
function modifierOf(
  modifier: SystemDesign['array']['collector']['incidenceModifier'],
  square: number,
  level: number,
  slope: number,
) {
  if (square <= 0) return 0;
  if ('b0' in modifier) return Math.max(0, 1 - modifier.b0 * (1 / square - 1));
  if ('covers' in modifier) throw new Error('the explicit model knows no covers');
  if (!('tubes' in modifier)) return fromTable(modifier, Math.acos(square) / RADIANS);
  const [across, along] = modifier.tubes === 'upright' ? [level, slope] : [slope, level];
  const angle = (part: number) => Math.atan2(Math.abs(part), square) / RADIANS;
  return fromTable(modifier.transversal, angle(across)) * fromTable(modifier.longitudinal, angle(along));
}

const known = new Map<string, PlaneLight>();

/** Steps of an hour, and the hours that are lived through. */
interface Span {
  readonly steps: number;
  readonly hours: number;
}

/** Light on a plane of a design; designs share what is alike. */
export function lightOnPlane(design: SystemDesign, plane: Plane, weather: WeatherYear, span: Span): PlaneLight {
  const { groundAlbedo, horizon } = design.array;
  const { incidenceModifier } = design.array.collector;
  const key = JSON.stringify([plane.tilt, plane.azimuth, groundAlbedo, horizon, incidenceModifier, span]);
  const light = known.get(key) ?? computeLight(design, plane, weather, span);
  known.set(key, light);
  return light;
}

function computeLight(
  { array }: SystemDesign,
  plane: Plane,
  { columns, site, calendarYears }: WeatherYear,
  { steps, hours }: Span,
): PlaneLight {
  const { collector, groundAlbedo, horizon } = array;
  const total = new Float64Array(hours * steps);
  const effective = new Float64Array(hours * steps);
  const beta = plane.tilt * RADIANS;
  const gamma = plane.azimuth * RADIANS;
  const ofDiffuse = diffuseModifiers(collector.incidenceModifier, plane.tilt);
  const extent = { width: 1, slopeLength: 1 };
  const openSky = horizon === null ? 1 : visibleSky(plane, { horizon, obstacle: null, extent });
  const openLevel = horizon === null ? 1 : visibleSky({ tilt: 0, azimuth: 0 }, { horizon, obstacle: null, extent });
  for (let hour = 0; hour < hours; hour++) {
    const [ghi, dni, dhi] = [columns.ghi[hour]!, columns.dni[hour]!, columns.dhi[hour]!];
    if (ghi + dni + dhi === 0) continue;
    const start = Date.UTC(calendarYears[hour]!, 0, 1) + (hour - site.utcOffset) * 3_600_000;
    const suns = Array.from({ length: steps }, (_, step): Sun => {
      const time = start + ((step + 0.5) / steps) * 3_600_000;
      const { zenith, azimuth } = sunPosition({ time, latitude: site.latitude, longitude: site.longitude });
      const [z, a] = [zenith * RADIANS, azimuth * RADIANS];
      return { east: Math.sin(z) * Math.sin(a), north: Math.sin(z) * Math.cos(a), up: Math.cos(z) };
    });
    const upSteps = suns.filter(({ up }) => up > 0).length;
    const sumUp = suns.reduce((sum, { up }) => sum + Math.max(up, 0), 0);
    // The sky model sees the hour once, over its sunlit part.
    const meanZenith = upSteps > 0 ? Math.acos(sumUp / upSteps) / RADIANS : 90;
    const scale = steps / Math.max(upSteps, 1);
    const skyOf = (incidenceCosine: number) =>
      perezSky({
        dhi: dhi * scale,
        dni: dni * scale,
        extraterrestrialNormal: extraterrestrialNormal(start + 1_800_000),
        zenith: meanZenith,
        incidenceCosine,
        tilt: plane.tilt,
      });
    for (let step = 0; step < steps; step++) {
      const { east, north, up } = suns[step]!;
      const at = hour * steps + step;
      const ground = 0.5 * (1 - Math.cos(beta)) * (typeof groundAlbedo === 'number' ? groundAlbedo : groundAlbedo[0]!);
      if (upSteps === 0) {
        // Dusk: a uniform sky; what beam the file has is left out.
        total[at] = openSky * dhi * 0.5 * (1 + Math.cos(beta)) + openLevel * ghi * ground;
        effective[at] =
          ofDiffuse.sky * openSky * dhi * 0.5 * (1 + Math.cos(beta)) + ofDiffuse.ground * openLevel * ghi * ground;
        continue;
      }
      if (up <= 0) continue;
      const share = (up * steps) / sumUp;
      const square = Math.cos(beta) * up + Math.sin(beta) * (Math.sin(gamma) * east + Math.cos(gamma) * north);
      const level = Math.cos(gamma) * east - Math.sin(gamma) * north;
      const slope = Math.sin(beta) * up - Math.cos(beta) * (Math.sin(gamma) * east + Math.cos(gamma) * north);
      // Ring and horizon follow from the hour; R = cos θ/max(cos Z, cos 85°) from the instant.
      const mean = Math.max(Math.cos(meanZenith * RADIANS), Math.cos(85 * RADIANS));
      const turned = (Math.max(square, 0) * mean) / Math.max(up, Math.cos(85 * RADIANS));
      const parts = skyWithRing(skyOf, turned, dhi * scale);
      const hidden =
        horizon !== null &&
        Math.asin(up) / RADIANS <= horizonAltitude(horizon, (Math.atan2(east, north) / RADIANS + 360) % 360);
      const beam = hidden ? 0 : dni * scale * Math.max(square, 0);
      const around = hidden ? 0 : dhi * share * parts.ring;
      const sky = openSky * dhi * share * parts.rest;
      const lost = (hidden ? dni * scale * up : 0) + dhi * share * (1 - openLevel);
      const below = ground * (horizon === null ? ghi * share : Math.max(ghi * share - lost, 0));
      total[at] = beam + around + sky + below;
      const k = modifierOf(collector.incidenceModifier, square, level, slope);
      effective[at] = k * (beam + around) + ofDiffuse.sky * sky + ofDiffuse.ground * below;
    }
  }
  return { total, effective };
}

/** Both parts of the sky per diffuse light, the ring seen at R mean: the formula's incidence cosine may not pass 1, the ratio may. */
function skyWithRing(skyOf: (cosine: number) => { circumsolar: number; sky: number }, turned: number, dhi: number) {
  if (!(dhi > 0)) return { ring: 0, rest: 0 };
  if (turned <= 1) {
    const { circumsolar, sky } = skyOf(turned);
    return { ring: circumsolar / dhi, rest: sky / dhi };
  }
  const { circumsolar, sky } = skyOf(1);
  return { ring: (circumsolar * turned) / dhi, rest: sky / dhi };
}

/** Long-wave deficit of a plane in each hour: σ T⁴ less what a cloudless sky sends, by its share of the view. [W/m²] */
export function skyDeficit({ columns, site }: WeatherYear, tilt: number): Float64Array {
  const pressure = 1013.25 * (1 - 2.25577e-5 * site.elevation) ** 5.25588;
  return Float64Array.from({ length: HOURS }, (_, hour) => {
    const dew = columns.dewPoint![hour]! / 100;
    const emissivity =
      0.711 +
      0.56 * dew +
      0.73 * dew * dew +
      0.013 * Math.cos((2 * Math.PI * ((hour % 24) + 0.5)) / 24) +
      0.00012 * (pressure - 1000);
    const black = 5.670374419e-8 * (columns.dryBulb[hour]! + 273.15) ** 4;
    return 0.5 * (1 + Math.cos(tilt * RADIANS)) * black * (1 - emissivity);
  });
}

/** Wind along the array over the test's 3 m/s, held at 10 m/s. [m/s] */
export const windOver = ({ columns }: WeatherYear, factor: number, hour: number): number =>
  Math.min(factor * columns.windSpeed![hour]!, 10) - 3;
