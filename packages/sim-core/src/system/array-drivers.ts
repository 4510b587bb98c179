import type { WeatherYear } from '@noonloop/weather-io';
import { biaxialEffectiveIrradiance } from '../collector/biaxial.ts';
import { diffuseModifiers } from '../collector/diffuse.ts';
import { effectiveIrradiance } from '../collector/effective-irradiance.ts';
import { nightSky } from '../collector/night-sky.ts';
import { applyWindAndSky, HIGHEST_WIND, lossInWind, windOverTest } from '../collector/quasi-dynamic.ts';
import type { PlaneOrientation } from '../sun/incidence.ts';
import { planeOfArray } from '../sun/plane-of-array.ts';
import { coverWithSnow, hourlyMeans, snowCover } from '../sun/snow-cover.ts';
import { sunTrack } from '../sun/track.ts';
import type { ObstacleDesign, SystemDesign } from './design.ts';

/** What sun, wind and sky do to the array and the module; part of `Drivers`. */
export interface ArrayDrivers {
  /** Hemispherical irradiance on the collector plane. Shape [8760 × steps]. [W/m²] */
  readonly irradiance: Float64Array;
  /** Light turned into heat in the absorber with no loss, less what wind and sky take of it. Shape [8760 × steps]. [W/m²] */
  readonly absorbed: Float64Array;
  /** Irradiance on the module's plane. Shape [8760 × steps]. [W/m²] */
  readonly pvIrradiance: Float64Array;
  /** Extra loss of the absorber to the night sky, per reference area. Shape [8760]. [W/m²] */
  readonly skyLoss: Float64Array;
  /** Heat loss coefficient with the hour's wind; `null` where it is a1 all year. Shape [8760]. [W/(m²·K)] */
  readonly lossCoefficient: Float64Array | null;
  /** Hours whose beam was left out of the collector plane because the sun is down through all of them. */
  readonly lostBeamHours: number;
  /** Hours with more wind along the collectors than the wind terms follow. */
  readonly heldWindHours: number;
  /** What was taken for granted about sky and wind, in words. */
  readonly arrayAssumptions: readonly string[];
}

/**
 * Light on collectors and module, and the weather's part in the collectors' losses.
 *
 * @param design - The system.
 * @param weather - One year.
 * @param stepsPerHour - Steps in each hour.
 */
export function compileArrayDrivers(design: SystemDesign, weather: WeatherYear, stepsPerHour: number): ArrayDrivers {
  const { array } = design;
  const { collector } = array;
  const { windSpeed } = weather.columns;
  const { plane, pvPlane, snowless } = lightOnRoof(design, weather, stepsPerHour);
  const { incidenceModifier: modifier } = collector;
  const diffuse = diffuseModifiers(modifier, array.tilt);
  const absorbed =
    'tubes' in modifier
      ? biaxialEffectiveIrradiance(plane, modifier, diffuse, sunTrack(weather, stepsPerHour), array)
      : effectiveIrradiance(plane, modifier, diffuse);
  for (let step = 0; step < absorbed.length; step++) absorbed[step]! *= collector.eta0;

  const sky = nightSky(weather.columns, array.tilt);
  const feelsWind = collector.a3 > 0 || collector.a6 > 0;
  const over = feelsWind && windSpeed !== null ? windOverTest(windSpeed, array.windFactor) : null;
  applyWindAndSky(absorbed, plane.total, over, sky.deficit, collector);

  const arrayAssumptions = [...snowless, collector.a4 === null ? `Night sky: ${sky.basis}.` : `Sky: ${sky.basis}.`];
  if (feelsWind) {
    arrayAssumptions.push(
      over === null
        ? 'Wind: the weather has none; the collectors’ wind terms stand at their values for 3 m/s.'
        : `Wind along the collectors: ${array.windFactor} of the station’s.`,
    );
  }
  return {
    irradiance: plane.total,
    absorbed,
    pvIrradiance: pvPlane.total,
    skyLoss: sky.deficit.map((deficit) => collector.skyCoefficient * deficit),
    lossCoefficient: lossInWind(over, collector),
    lostBeamHours: plane.lostBeamHours,
    heldWindHours: over === null ? 0 : windSpeed!.filter((wind) => array.windFactor * wind > HIGHEST_WIND).length,
    arrayAssumptions,
  };
}

/** Light on both planes, past horizon, obstacle and snow. */
function lightOnRoof(design: SystemDesign, weather: WeatherYear, stepsPerHour: number) {
  const { array, pv } = design;
  const { dryBulb, snowDepth } = weather.columns;
  const { horizon, obstacle, width, slopeLength } = array;
  const extent = { width, slopeLength };
  const common = { albedo: array.groundAlbedo, snowAlbedo: array.snowAlbedo, model: array.skyModel };
  const light = ({ tilt, azimuth }: PlaneOrientation, near: ObstacleDesign | null) =>
    planeOfArray(weather, { tilt, azimuth, ...common, shading: { horizon, obstacle: near, extent } }, { stepsPerHour });
  const snowLies = array.snowOnPanels !== 'ignored' && snowDepth !== null;
  const sameLight = pv.tilt === array.tilt && pv.azimuth === array.azimuth && obstacle === null && !snowLies;
  const plane = light(array, obstacle);
  const pvPlane = sameLight ? plane : light(pv, null);
  if (snowDepth !== null && array.snowOnPanels !== 'ignored') {
    coverWithSnow(plane, snowCover(snowDepth, dryBulb, hourlyMeans(plane.total), array.tilt, array.snowOnPanels));
    coverWithSnow(pvPlane, snowCover(snowDepth, dryBulb, hourlyMeans(pvPlane.total), pv.tilt, 'plate'));
  }
  const snowless =
    array.snowOnPanels !== 'ignored' && !snowLies ? ['Snow on panels: the weather has no depth; none is taken.'] : [];
  return { plane, pvPlane, snowless };
}
