/** Light on an array of several groups, or of two tilts, put together of that on each. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SummerTiltDesign, SystemDesign } from '../design/design.ts';
import { arrayArea, groupsAlongFlow, groupsOf } from '../physics/collector/groups.ts';
import { inRange, readDayRange } from '../physics/draw/days.ts';
import { type ArrayDrivers, compileGroupDrivers, hoursWithLight } from './array-drivers.ts';

/** What sun, wind and sky do to one group of several. */
export type GroupDrivers = Pick<ArrayDrivers, 'absorbed' | 'irradiance' | 'lossCoefficient' | 'skyLoss'>;

/** What they do to all collectors together; of several groups the means by area. */
export interface CollectorDrivers extends ArrayDrivers {
  /** Each group's own, in the order of the flow; `null` where there is one. */
  readonly groups: readonly GroupDrivers[] | null;
}

/**
 * Light on all collectors and the module.
 *
 * @param design - The system.
 * @param weather - One year.
 * @param stepsPerHour - Steps in each hour.
 */
export function compileArrayDrivers(
  design: Pick<SystemDesign, 'array' | 'pv'>,
  weather: WeatherYear,
  stepsPerHour: number,
): CollectorDrivers {
  const { array } = design;
  const along = groupsAlongFlow(array);
  // The array itself is the first along the flow.
  const groups = along.map((group, at) =>
    at === 0 && array.summerTilt !== null
      ? seasonal(design, weather, stepsPerHour, array.summerTilt)
      : compileGroupDrivers(design, weather, stepsPerHour, group),
  );
  const [own] = groups as [ArrayDrivers];
  if (groups.length === 1) return { ...own, groups: null };
  const shares = along.map(({ collector, panels }) => (panels * collector.area) / arrayArea(array));
  const mean = (of: (drivers: ArrayDrivers) => Float64Array): Float64Array => {
    const sum = new Float64Array(of(own).length);
    for (const [at, drivers] of groups.entries()) addShare(sum, of(drivers), shares[at]!);
    return sum;
  };
  const irradiance = mean((drivers) => drivers.irradiance);
  return {
    irradiance,
    absorbed: mean((drivers) => drivers.absorbed),
    pvIrradiance: own.pvIrradiance,
    skyLoss: mean((drivers) => drivers.skyLoss),
    lossCoefficient: null,
    lit: hoursWithLight(irradiance, own.pvIrradiance, stepsPerHour),
    lostBeamHours: Math.max(...groups.map(({ lostBeamHours }) => lostBeamHours)),
    heldWindHours: Math.max(...groups.map(({ heldWindHours }) => heldWindHours)),
    arrayAssumptions: [
      ...new Map(
        groups.flatMap(({ arrayAssumptions }) => arrayAssumptions.map((one) => [JSON.stringify(one), one] as const)),
      ).values(),
    ],
    groups,
  };
}

function addShare(sum: Float64Array, column: Float64Array, share: number): void {
  for (let step = 0; step < sum.length; step++) sum[step]! += share * column[step]!;
}

/** The array with its summer's tilt on some days, and its own on the others. */
function seasonal(
  design: Pick<SystemDesign, 'array' | 'pv'>,
  weather: WeatherYear,
  stepsPerHour: number,
  { days, tilt, withModule }: SummerTiltDesign,
): ArrayDrivers {
  const { array, pv } = design;
  const own = groupsOf(array)[0]!;
  const winter = compileGroupDrivers(design, weather, stepsPerHour, own);
  const turned = { array, pv: withModule ? { ...pv, tilt } : pv };
  const summer = compileGroupDrivers(turned, weather, stepsPerHour, { ...own, tilt });
  const range = readDayRange(days)!;
  const ofSeason = (of: (drivers: ArrayDrivers) => Float64Array): Float64Array => {
    const column = of(winter).slice();
    const other = of(summer);
    const perDay = column.length / 365;
    for (let day = 0; day < 365; day++)
      if (inRange(range, day)) column.set(other.subarray(day * perDay, (day + 1) * perDay), day * perDay);
    return column;
  };
  const irradiance = ofSeason((drivers) => drivers.irradiance);
  const pvIrradiance = ofSeason((drivers) => drivers.pvIrradiance);
  return {
    ...winter,
    irradiance,
    absorbed: ofSeason((drivers) => drivers.absorbed),
    pvIrradiance,
    skyLoss: ofSeason((drivers) => drivers.skyLoss),
    lit: hoursWithLight(irradiance, pvIrradiance, stepsPerHour),
    lostBeamHours: Math.max(winter.lostBeamHours, summer.lostBeamHours),
  };
}
