import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../design/design.ts';
import { mainsColumn } from '../physics/draw/mains.ts';
import { type DrawSchedule, drawSchedule } from '../physics/draw/schedule.ts';
import type { DrawWithin } from '../physics/draw/within.ts';
import { type CollectorDrivers, compileArrayDrivers } from './group-drivers.ts';
import { compileHouseDrivers, type HouseDrivers } from './house-drivers.ts';
import { compilePumpDrivers, type PumpDrivers } from './pump-drivers.ts';
import { recent } from './recent.ts';

const HOURS = 8760;

/** All that acts on the system from outside, computed before the year starts: nothing in it depends on the state. */
export interface Drivers extends CollectorDrivers, PumpDrivers, HouseDrivers {
  /** Steps in each hour of the sub-hourly columns. */
  readonly stepsPerHour: number;
  /** Outdoor air. Shape [8760]. [°C] */
  readonly ambient: Float64Array;
  /** Cold mains. Shape [8760]. [°C] */
  readonly mains: Float64Array;
  /** Mixed water wanted at the taps. Shape [8760]. [m³] */
  readonly tapVolume: Float64Array;
  /** Where inside its hour that water is wanted; `null`: evenly. */
  readonly within: DrawWithin | null;
  /** Hours in which taps no warmer than the mains kept a draw of a tapping profile from its heat. */
  readonly heldDrawHours: number;
}

const supplies = recent<PumpDrivers>(24, ({ pumpSupply }) => pumpSupply.byteLength + 2 * HOURS);
const mainsColumns = recent<Float64Array>(2, ({ byteLength }) => byteLength);
const schedules = recent<DrawSchedule>(4, ({ volume }) => 2 * volume.byteLength);

/**
 * Turns weather and habits into what the system meets, step by step. What several runs have in common is computed once
 * (see {@link recent}); columns that leave in a result are copies.
 *
 * @param design - The system.
 * @param weather - One year.
 * @param stepsPerHour - Steps in each hour.
 */
export function compileDrivers(design: SystemDesign, weather: WeatherYear, stepsPerHour: number): Drivers {
  const { draw } = design;
  const array = compileArrayDrivers(design, weather, stepsPerHour);
  const mains = mainsColumns(weather, draw.mains, () => mainsColumn(draw.mains, weather));
  const schedule =
    draw.volumes === null ? schedules(weather, draw, () => drawSchedule(draw, mains)) : drawSchedule(draw, mains);
  const supply = supplies(weather, supplyDependsOn(design, stepsPerHour), () =>
    compilePumpDrivers(design, array.pvIrradiance, weather.columns.dryBulb, stepsPerHour),
  );
  return {
    stepsPerHour,
    ...array,
    ...supply,
    ambient: weather.columns.dryBulb,
    mains: mains.slice(),
    tapVolume: schedule.volume.slice(),
    within: schedule.within,
    ...compileHouseDrivers(design, schedule, {
      light: array.pvIrradiance,
      air: weather.columns.dryBulb,
      cellRise: supply.cellRise,
      blackout: supply.blackout,
    }),
    heldDrawHours: schedule.heldHours,
  };
}

/** All that drives the pump, besides the weather; the light on the module's plane by what it depends on in turn. */
function supplyDependsOn({ array, control, pump, pv }: SystemDesign, stepsPerHour: number): unknown {
  const { albedoFrom, groundAlbedo, horizon, skyModel, snowAlbedo, snowOnPanels, summerTilt } = array;
  const light = [albedoFrom, groundAlbedo, horizon, skyModel, snowAlbedo, snowOnPanels !== 'ignored', summerTilt];
  const drive = pump.drive === 'booster' ? pump.boosterEfficiency : pump;
  return [stepsPerHour, light, pv, drive, pump.drive, control.outages];
}
