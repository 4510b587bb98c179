import type { WeatherYear } from '@noonloop/weather-io';
import type { ArrayDesign, CollectorGroupDesign, SystemDesign } from '../design/design.ts';
import { fact, type Saying, say } from '../input/saying.ts';
import { biaxialEffectiveIrradiance } from '../physics/collector/biaxial.ts';
import { diffuseModifiers } from '../physics/collector/diffuse.ts';
import { effectiveIrradiance } from '../physics/collector/effective-irradiance.ts';
import { type NightSky, nightSky } from '../physics/collector/night-sky.ts';
import {
  applyWindAndSky,
  HIGHEST_WIND,
  lossInWind,
  skyLoss,
  windOverTest,
  windShare,
} from '../physics/collector/quasi-dynamic.ts';
import { hiddenShare } from '../physics/sun/covers.ts';
import type { PlaneOrientation } from '../physics/sun/incidence.ts';
import type { PlaneIrradiance } from '../physics/sun/plane-irradiance.ts';
import { planeOfArray } from '../physics/sun/plane-of-array.ts';
import { hourlyMeans, type SnowSurface, snowCover, takeShare } from '../physics/sun/snow-cover.ts';
import { sunTrack } from '../physics/sun/track.ts';
import { recent } from './recent.ts';
import type { RunAssumptionCode } from './run-assumptions.ts';

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
  /** Whether any light falls in the hour. Shape [8760]. */
  readonly lit: Uint8Array;
  /** Hours whose beam was left out of the collector plane because the sun is down through all of them. */
  readonly lostBeamHours: number;
  /** Hours with more wind along the collectors than the wind terms follow. */
  readonly heldWindHours: number;
  /** What was taken for granted about sky and wind, in words. */
  readonly arrayAssumptions: readonly Saying<RunAssumptionCode>[];
}

// A sweep meets the same plane, sky and cover again and again: each is computed once and shared, read-only.
const planes = recent<PlaneIrradiance>(32, ({ total }) => 6 * total.byteLength);
const totals = recent<Float64Array>(24, ({ byteLength }) => byteLength);
const absorbers = recent<AbsorbedLight>(48, ({ absorbed }) => 2 * absorbed.byteLength);
const litHours = recent<Uint8Array>(1, ({ byteLength }) => byteLength);
const skies = recent<NightSky>(2, ({ deficit }) => deficit.byteLength);

/** What light on the array becomes in the absorber. */
interface AbsorbedLight {
  readonly irradiance: Float64Array;
  readonly absorbed: Float64Array;
  readonly lostBeamHours: number;
}

/**
 * Light on collectors and module, and the weather's part in the collectors' losses. Runs that share a plane, a cover or a module
 * share the columns too: they are read-only.
 *
 * @param design - The system.
 * @param weather - One year.
 * @param stepsPerHour - Steps in each hour.
 * @param group - Collectors of one kind on one plane.
 */
export function compileGroupDrivers(
  design: Pick<SystemDesign, 'array' | 'pv'>,
  weather: WeatherYear,
  stepsPerHour: number,
  group: CollectorGroupDesign,
): ArrayDrivers {
  const { array, pv } = design;
  const { windFactor } = array;
  const { collector } = group;
  const { eta0, incidenceModifier: modifier, a4, a6, a7 } = collector;
  const { windSpeed, snowDepth } = weather.columns;
  const snowFalls = array.snowOnPanels !== 'ignored';
  const ofArray = lightQuery(array, group, array.snowOnPanels, stepsPerHour);
  const ofModule = lightQuery(array, pv, snowFalls ? 'plate' : 'ignored', stepsPerHour);
  const feelsWind = collector.a3 > 0 || a6 > 0 || a7 > 0;
  const share = windShare(weather.site, windFactor);
  const over = feelsWind && windSpeed !== null ? windOverTest(windSpeed, share) : null;
  const sky = skies(weather, group.tilt, () => nightSky(weather, group.tilt));

  const { irradiance, absorbed, lostBeamHours } = absorbers(
    weather,
    [ofArray, eta0, modifier, a4, a6, a7, share],
    () => {
      const plane = lightOn(weather, ofArray);
      const diffuse = diffuseModifiers(modifier, group.tilt);
      const light =
        'tubes' in modifier
          ? biaxialEffectiveIrradiance(plane, modifier, diffuse, sunTrack(weather, stepsPerHour), group)
          : effectiveIrradiance(plane, modifier, diffuse);
      for (let step = 0; step < light.length; step++) light[step]! *= eta0;
      applyWindAndSky(light, plane.total, over, sky.deficit, collector);
      return { irradiance: plane.total, absorbed: light, lostBeamHours: plane.lostBeamHours };
    },
  );
  const pvIrradiance = totals(weather, ofModule, () => lightOn(weather, ofModule).total);

  const arrayAssumptions: Saying<RunAssumptionCode>[] = [sky.basis];
  if (weather.columns.albedo !== null) {
    arrayAssumptions.push(say(array.albedoFrom === 'weather' ? 'albedo-of-weather' : 'albedo-of-design'));
  }
  if (snowFalls && snowDepth === null) {
    arrayAssumptions.unshift(say('no-snow-depth'));
  }
  if (feelsWind) {
    arrayAssumptions.push(
      over === null
        ? say('no-wind')
        : say('wind-along-collectors', {
            factor: fact(windFactor, '1'),
            share: fact(share, '1'),
            height: fact(weather.site.windHeight ?? 10, 'm'),
          }),
    );
  }
  return {
    irradiance,
    absorbed,
    pvIrradiance,
    lit: litHours(weather, [ofArray, ofModule], () => hoursWithLight(irradiance, pvIrradiance, stepsPerHour)),
    skyLoss: skyLoss(over, sky.deficit, collector),
    lossCoefficient: lossInWind(over, collector),
    lostBeamHours,
    heldWindHours: over === null ? 0 : windSpeed!.filter((wind) => share * wind > HIGHEST_WIND).length,
    arrayAssumptions,
  };
}

/** All that the light on one plane depends on, besides the weather. */
type LightQuery = ReturnType<typeof lightQuery>;

function lightQuery(
  { albedoFrom, covers, groundAlbedo: albedo, horizon, skyModel: model, snowAlbedo }: ArrayDesign,
  plane: PlaneOrientation & Partial<Pick<CollectorGroupDesign, 'lightShare' | 'obstacle' | 'slopeLength' | 'width'>>,
  snow: SnowSurface | 'ignored',
  stepsPerHour: number,
) {
  const { azimuth, lightShare, obstacle = null, slopeLength = 1, tilt, width = 1 } = plane;
  // The size matters where something near may hide part of it.
  const extent = obstacle === null ? { width: 1, slopeLength: 1 } : { width, slopeLength };
  return {
    stepsPerHour,
    plane: { tilt, azimuth, albedo, snowAlbedo, model, shading: { horizon, obstacle, extent } },
    snow,
    albedoFrom,
    // Only collectors are under a sheet or a tree; no share is one of all the light.
    dimmed: lightShare === undefined || (lightShare === 1 && covers.length === 0) ? null : { lightShare, covers },
  };
}

/** Light on a plane, past horizon, obstacle, snow and what lies on it. */
function lightOn(weather: WeatherYear, query: LightQuery): PlaneIrradiance {
  const { albedoFrom, dimmed, plane, snow, stepsPerHour } = query;
  const { columns } = weather;
  const { dryBulb, snowDepth } = columns;
  const ownGround = albedoFrom === 'design' && columns.albedo !== null;
  return planes(weather, query, () => {
    const seen = ownGround ? { ...weather, columns: { ...columns, albedo: null } } : weather;
    const light = planeOfArray(seen, plane, { stepsPerHour });
    if (snowDepth !== null && snow !== 'ignored') {
      takeShare(light, snowCover(snowDepth, dryBulb, hourlyMeans(light.total), plane.tilt, snow));
    }
    if (dimmed !== null) takeShare(light, hiddenShare(dimmed.lightShare, dimmed.covers));
    return light;
  });
}

/** Hours in which light falls on either. */
export function hoursWithLight(first: Float64Array, second: Float64Array, stepsPerHour: number): Uint8Array {
  const lit = new Uint8Array(first.length / stepsPerHour);
  for (let step = 0; step < first.length; step++) {
    if (first[step]! > 0 || second[step]! > 0) lit[Math.trunc(step / stepsPerHour)] = 1;
  }
  return lit;
}
