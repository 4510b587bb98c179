import type { WeatherYear } from '@noonloop/weather-io';
import { diffuseModifiers } from '../collector/diffuse.ts';
import { effectiveIrradiance } from '../collector/effective-irradiance.ts';
import { nightSky } from '../collector/night-sky.ts';
import { mainsColumn } from '../draw/mains.ts';
import { noctRise } from '../pv/cell-temperature.ts';
import { moduleParameters } from '../pv/datasheet.ts';
import { compilePvPower, tablePower } from '../pv/power-table.ts';
import { planeOfArray } from '../sun/plane-of-array.ts';
import type { PvDesign, SystemDesign } from './design.ts';

/** All that acts on the system from outside, computed before the year starts: nothing in it depends on the state. */
export interface Drivers {
  /** Steps in each hour of the sub-hourly columns. */
  readonly stepsPerHour: number;
  /** Hemispherical irradiance on the collector plane. Shape [8760 × steps]. [W/m²] */
  readonly irradiance: Float64Array;
  /** Light turned into heat in the absorber with no loss, per reference area. Shape [8760 × steps]. [W/m²] */
  readonly absorbed: Float64Array;
  /** Irradiance on the module's plane. Shape [8760 × steps]. [W/m²] */
  readonly pvIrradiance: Float64Array;
  /** Electrical power that the booster offers the pump. Shape [8760 × steps]. [W] */
  readonly pumpPower: Float64Array;
  /** Whether any light falls in the hour. Shape [8760]. */
  readonly lit: Uint8Array;
  /** Outdoor air. Shape [8760]. [°C] */
  readonly ambient: Float64Array;
  /** Extra loss of the absorber to the night sky, per reference area. Shape [8760]. [W/m²] */
  readonly skyLoss: Float64Array;
  /** Cold mains. Shape [8760]. [°C] */
  readonly mains: Float64Array;
  /** Mixed water wanted at the taps. Shape [8760]. [m³] */
  readonly tapVolume: Float64Array;
  /** Hours whose beam was left out of the collector plane because the sun is down through all of them. */
  readonly lostBeamHours: number;
  /** What was taken for granted about the weather, in words. */
  readonly assumptions: readonly string[];
}

/**
 * Turns weather and habits into what the system meets, step by step.
 *
 * @param design - The system.
 * @param weather - One year.
 * @param stepsPerHour - Steps in each hour.
 */
export function compileDrivers(design: SystemDesign, weather: WeatherYear, stepsPerHour: number): Drivers {
  const { array, pv, draw } = design;
  const { collector } = array;
  const within = { stepsPerHour };
  const plane = planeOfArray(weather, { tilt: array.tilt, azimuth: array.azimuth, albedo: array.groundAlbedo }, within);
  const samePlane = pv.tilt === array.tilt && pv.azimuth === array.azimuth;
  const pvPlane = samePlane
    ? plane
    : planeOfArray(weather, { tilt: pv.tilt, azimuth: pv.azimuth, albedo: array.groundAlbedo }, within);
  const modifiers = diffuseModifiers(collector.incidenceModifier, array.tilt);
  const absorbed = effectiveIrradiance(plane, collector.incidenceModifier, modifiers);
  for (let step = 0; step < absorbed.length; step++) absorbed[step]! *= collector.eta0;
  const sky = nightSky(weather.columns, array.tilt);

  return {
    stepsPerHour,
    irradiance: plane.total,
    absorbed,
    pvIrradiance: pvPlane.total,
    pumpPower: pumpPower(pv, design.pump.boosterEfficiency, pvPlane.total, weather.columns.dryBulb, stepsPerHour),
    lit: litHours(plane.total, pvPlane.total, stepsPerHour),
    ambient: weather.columns.dryBulb,
    skyLoss: sky.deficit.map((deficit) => collector.skyCoefficient * deficit),
    mains: mainsColumn(draw.mains, weather),
    tapVolume: tapVolumes(draw.dailyVolume, draw.hourlyShares),
    lostBeamHours: plane.lostBeamHours,
    assumptions: [...weather.assumptions.map((assumption) => assumption.text), `Night sky: ${sky.basis}.`],
  };
}

/** What the booster offers: the modules' maximum power at their cell temperature, times its efficiency. */
function pumpPower(
  pv: PvDesign,
  efficiency: number,
  light: Float64Array,
  air: Float64Array,
  stepsPerHour: number,
): Float64Array {
  const table = compilePvPower(moduleParameters(pv.module));
  const rise = noctRise(pv.module.nominalOperatingCellTemperature, 0);
  const factor = efficiency * pv.modules;
  const power = new Float64Array(light.length);
  for (let step = 0; step < power.length; step++) {
    const irradiance = light[step]!;
    if (irradiance > 0) {
      const cell = air[Math.trunc(step / stepsPerHour)]! + irradiance * rise;
      power[step] = factor * tablePower(table, irradiance, cell);
    }
  }
  return power;
}

function litHours(first: Float64Array, second: Float64Array, stepsPerHour: number): Uint8Array {
  const lit = new Uint8Array(first.length / stepsPerHour);
  for (let step = 0; step < first.length; step++) {
    if (first[step]! > 0 || second[step]! > 0) lit[Math.trunc(step / stepsPerHour)] = 1;
  }
  return lit;
}

/** The same day, every day of the year. */
function tapVolumes(dailyVolume: number, shares: readonly number[]): Float64Array {
  const sum = shares.reduce((total, share) => total + share, 0);
  return Float64Array.from({ length: 8760 }, (_, hour) => (dailyVolume * shares[hour % 24]!) / sum);
}
