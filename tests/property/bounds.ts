/** How hot and how cold the parts of a design can come at most in some hours of its weather, by the light and air of these hours alone. */
import type { SystemDesign } from '@noonloop/sim-core';
import { planeOfArray } from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { RADIATION_PER_KELVIN } from '../../packages/sim-core/src/define/schema/collector-check.ts';
import { groupsOf } from '../../packages/sim-core/src/physics/collector/groups.ts';
import { nightSky } from '../../packages/sim-core/src/physics/collector/night-sky.ts';

const KELVIN = 273.15;
/** 2019 SI. [W/(m²·K⁴)] */
const STEFAN_BOLTZMANN = 5.670374419e-8;
/** Wind of the collector test less none: how far the wind terms go down. [m/s] */
const WIND_UNDER = 3;

/** Hours of the year, from `from` to before `to`. */
export interface Hours {
  readonly from: number;
  readonly to: number;
}

export const most = (column: Float64Array): number => column.reduce((high, value) => Math.max(high, value), -Infinity);
export const least = (column: Float64Array): number => column.reduce((low, value) => Math.min(low, value), Infinity);

const lights = new Map<string, Float64Array>();
let litBy: Float64Array | null = null;

/** Unshaded light on a plane; kept while the weather stays, since designs come in families on one roof. [W/m²] */
function lightOn(weather: WeatherYear, plane: Parameters<typeof planeOfArray>[1], stepsPerHour: number): Float64Array {
  if (litBy !== weather.columns.dni) lights.clear();
  litBy = weather.columns.dni;
  const key = JSON.stringify([plane, stepsPerHour, weather.columns.albedo === null]);
  const light = lights.get(key) ?? planeOfArray(weather, plane, { stepsPerHour }).total;
  lights.set(key, light);
  return light;
}

/**
 * Highest temperature that any absorber with no flow could have in these hours: the root of S = a1 d + a2 d² over the air, with all light of
 * the brightest step at its best angle and no wind; nothing around shades or covers. [°C]
 */
export function hottestPossible(
  { array }: SystemDesign,
  weather: WeatherYear,
  stepsPerHour: number,
  hours: Hours,
): number {
  const { albedoFrom, groundAlbedo, snowAlbedo, skyModel, summerTilt } = array;
  const seen = albedoFrom === 'design' ? { ...weather, columns: { ...weather.columns, albedo: null } } : weather;
  const [own, ...others] = groupsOf(array);
  const turned = summerTilt === null ? [] : [{ ...own!, tilt: summerTilt.tilt }];
  return Math.max(
    ...[own!, ...turned, ...others].map(({ azimuth, collector, tilt }) => {
      const plane = { tilt, azimuth, model: skyModel, albedo: groundAlbedo, snowAlbedo };
      return hottestOn(lightOn(seen, plane, stepsPerHour), collector, weather.columns.dryBulb, hours);
    }),
  );
}

/** The same of one collector in the light of its plane. */
function hottestOn(
  total: Float64Array,
  collector: SystemDesign['array']['collector'],
  air: Float64Array,
  { from, to }: Hours,
): number {
  const steps = total.length / air.length;
  const modifier = collector.incidenceModifier;
  const peak =
    'b0' in modifier || 'covers' in modifier
      ? 1
      : 'tubes' in modifier
        ? Math.max(...modifier.transversal.values) * Math.max(...modifier.longitudinal.values)
        : Math.max(...modifier.values);
  const a1 = collector.a1 - WIND_UNDER * collector.a3;
  let hottest = -Infinity;
  for (let step = from * steps; step < to * steps; step++) {
    const absorbed = (collector.eta0 * Math.max(peak, 1) + WIND_UNDER * collector.a6) * total[step]!;
    const rise = (2 * absorbed) / (a1 + Math.sqrt(a1 * a1 + 4 * collector.a2 * absorbed));
    hottest = Math.max(hottest, air[Math.trunc(step / steps)]! + rise);
  }
  return hottest;
}

let skyOf: Float64Array | null = null;
let sky = new Float64Array(0);

/**
 * What a level plane comes to at most: the temperature at which it sends as little as the coldest sky; or, since a panel's loss by the kelvin is
 * one number whatever the warmth, as far under the air as the least of those that are accepted lets it come. [°C]
 */
export function coldestSky(weather: WeatherYear, { from, to }: Hours): number {
  const { dryBulb } = weather.columns;
  if (skyOf !== dryBulb) {
    const { deficit } = nightSky(weather, 0);
    sky = dryBulb.map((air, hour) => {
      const radiating = ((air + KELVIN) ** 4 - deficit[hour]! / STEFAN_BOLTZMANN) ** 0.25 - KELVIN;
      return Math.min(radiating, air - deficit[hour]! / RADIATION_PER_KELVIN);
    });
  }
  skyOf = dryBulb;
  return least(sky.subarray(from, to));
}

/** Coldest and warmest air around the tank. [°C] */
export function roomsOf({ tank }: SystemDesign, { columns }: WeatherYear, { from, to }: Hours): readonly number[] {
  const dryBulb = columns.dryBulb.subarray(from, to);
  const { roomByMonth, roomTemperature, second } = tank;
  const own = [roomTemperature, second?.roomTemperature ?? roomTemperature];
  if (roomByMonth === 'outdoors') return [...own, least(dryBulb), most(dryBulb)];
  return [...own, ...(roomByMonth ?? [])];
}
