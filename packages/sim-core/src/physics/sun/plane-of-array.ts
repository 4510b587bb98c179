/** Irradiance on a tilted plane through a year: beam, sky in two parts, and ground. */
import type { WeatherYear } from '@noonloop/weather-io';
import { DesignError, quote, requireNumber } from '../../input/errors.ts';
import { albedoColumn } from './ground-albedo.ts';
import { type PlaneOrientation, planeEast, planeNorth, planeUp, requirePlane } from './incidence.ts';
import type { PlaneIrradiance } from './plane-irradiance.ts';
import { type Shading, shadePlane } from './shade/shade.ts';
import { type SunTrack, stepOfClock, stepsFor, sunTrack } from './track.ts';
import { SKY_KERNELS, type SkyModel, skyModelOf } from './transposition/models.ts';
import { groundViewFactor, restOfSky, ringRatio, skyViewFactor } from './transposition/sky.ts';

/** Ground reflectance where neither caller nor weather has one: grass and soil, common practice, no source. [-] */
const DEFAULT_ALBEDO = 0.2;

/** A plane and how its light is computed. */
export interface PlaneDefinition extends PlaneOrientation {
  /**
   * Ground reflectance where the weather has no column of its own, which goes before it: one value, or twelve from January.
   * Default 0.2, common practice, no source. [-]
   */
  readonly albedo?: number | readonly number[];
  /** Reflectance of snow where the weather has its depth and no reflectance. Default `null`: snow is left out. [-] */
  readonly snowAlbedo?: number | null;
  /** Horizon and obstacle. Default: neither. */
  readonly shading?: Shading;
  /** Sky model; `haydavies` is read as `hay-davies`. Default `perez`. */
  readonly model?: SkyModel | 'haydavies';
}

/** How finely an hour is cut. */
export interface PlaneOptions {
  /** Steps in an hour, 1 to 60. Default 6, or the next multiple of the weather's own step: annual sums then differ from 60 by less than 0.02 %. */
  readonly stepsPerHour?: number;
}

/**
 * Irradiance on a tilted plane through a year.
 *
 *     total = DNI max(cos θ, 0) + circumsolar + sky + GHI ρ (1 − cos β)/2
 *
 * Each step has its own sun; each hour, or row of the weather's own step, keeps the file's DNI and DHI energy (see {@link sunTrack}).
 * What the sky model takes from the weather (clearness, brightness) is taken once a row, over the part with the sun up; the models
 * were fitted to hourly values. DNI, DHI and GHI are used as they stand: no closure is forced. ρ is the weather's own where it has a
 * column of reflectance: `plane.albedo` is then not used.
 *
 * @param weather - One year; not changed after the first call (see {@link sunTrack}).
 * @param plane - Tilt, azimuth, albedo ρ, sky model and what stands around.
 * @param options - Steps in an hour.
 * @returns Columns of 8760 × `stepsPerHour`.
 * @throws {@link DesignError} when an argument is outside its range.
 * @see perezSky, hayDaviesSky and isotropicSky for the models.
 */
export function planeOfArray(
  weather: WeatherYear,
  plane: PlaneDefinition,
  options: PlaneOptions = {},
): PlaneIrradiance {
  requirePlane(plane);
  const model = skyModelOf(plane.model ?? 'perez');
  const albedo = plane.albedo ?? DEFAULT_ALBEDO;
  for (const value of typeof albedo === 'number' ? [albedo] : albedo) requireNumber('plane.albedo', value, 0, 1, '');
  requireModel(model);
  const track = sunTrack(weather, options.stepsPerHour ?? stepsFor(weather, 6));
  const length = track.dni.length;
  const result: PlaneIrradiance = {
    stepsPerHour: track.stepsPerHour,
    beam: new Float64Array(length),
    circumsolar: new Float64Array(length),
    sky: new Float64Array(length),
    ground: new Float64Array(length),
    total: new Float64Array(length),
    incidenceCosine: new Float64Array(length),
    lostBeam: track.lostBeam,
    lostBeamHours: track.lostBeamHours,
  };
  const byHour = albedoColumn(weather.columns, albedo, plane.snowAlbedo ?? null);
  fillPlane(track, plane, model, byHour ?? (typeof albedo === 'number' ? albedo : DEFAULT_ALBEDO), result);
  if (plane.shading !== undefined && (plane.shading.horizon !== null || plane.shading.obstacle !== null)) {
    shadePlane(result, track, plane, plane.shading);
  }
  return result;
}

/** Writes the columns of one plane. */
function fillPlane(
  track: SunTrack,
  plane: PlaneOrientation,
  model: SkyModel,
  albedo: Float64Array | number,
  out: PlaneIrradiance,
): void {
  const { rowsPerHour, shift, stepsPerHour, east, north, up, dni, dhi, ghi } = track;
  const { beam, circumsolar, sky, ground, total, incidenceCosine } = out;
  const bright = track.brightness(model);
  const floor = SKY_KERNELS[model].minimumCosZenith;
  const normalEast = planeEast(plane);
  const normalNorth = planeNorth(plane);
  const normalUp = planeUp(plane);
  const sinTilt = Math.sin((plane.tilt * Math.PI) / 180);
  const skyView = skyViewFactor(normalUp);
  const groundView = groundViewFactor(normalUp);
  const steps = stepsPerHour / rowsPerHour;
  const rows = dni.length / steps;
  for (let row = 0; row < rows; row++) {
    const ring = bright[2 * row]!;
    const rest = restOfSky(ring, bright[2 * row + 1]!, skyView, sinTilt);
    const reflected = groundView * (typeof albedo === 'number' ? albedo : albedo[Math.trunc(row / rowsPerHour)]!);
    for (let step = 0; step < steps; step++) {
      const at = stepOfClock(row, step, shift, steps, rows);
      const diffuse = dhi[at]!;
      const fromGround = ghi[at]! * reflected;
      let direct = 0;
      let around = 0;
      if (up[at]! > 0) {
        const cosine = east[at]! * normalEast + north[at]! * normalNorth + up[at]! * normalUp;
        if (cosine > 0) {
          incidenceCosine[at] = cosine;
          direct = dni[at]! * cosine;
          around = ring * ringRatio(cosine, up[at]!, floor);
        }
      }
      // As in skyOnPlane: a negative rest is taken from the ring.
      const fromRing = rest < 0 ? diffuse * Math.max(around + rest, 0) : diffuse * around;
      const fromSky = rest < 0 ? 0 : diffuse * rest;
      beam[at] = direct;
      circumsolar[at] = fromRing;
      sky[at] = fromSky;
      ground[at] = fromGround;
      total[at] = direct + fromRing + fromSky + fromGround;
    }
  }
}

function requireModel(model: string): void {
  if (Object.hasOwn(SKY_KERNELS, model)) return;
  throw new DesignError([
    {
      path: 'plane.model',
      found: quote(model),
      expected: '"perez", "hay-davies" or "isotropic"',
      remedy: 'Choose one of these.',
    },
  ]);
}
