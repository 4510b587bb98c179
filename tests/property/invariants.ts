/** What must hold of any year of any design, whatever the numbers: found by laws, not by comparison with another program. */
import type { SystemDesign } from '@noonloop/sim-core';
import { planeOfArray } from '@noonloop/sim-core/formulas';
import type { WeatherYear } from '@noonloop/weather-io';
import { groupsOf } from '../../packages/sim-core/src/physics/collector/groups.ts';
import { nightSky } from '../../packages/sim-core/src/physics/collector/night-sky.ts';
import type { Lived } from './span.ts';

/** Share of what flowed through a part in an hour to which its balance closes. [-] */
const BALANCE = 1e-9;
/** Rounding of temperatures. [K] */
const ROUNDING = 1e-6;
/** What a step's length may add to a tank node: the agreement with the referee of tests/validation. [K] */
const STEP_ERROR = 0.05;
const KELVIN = 273.15;
/** 2019 SI. [W/(m²·K⁴)] */
const STEFAN_BOLTZMANN = 5.670374419e-8;
/** Wind of the collector test less none: how far the wind terms go down. [m/s] */
const WIND_UNDER = 3;

/** Columns that are shares of an hour. */
const SHARES = [
  'pumpRunning',
  'noFlowInSun',
  'stagnation',
  'boiling',
  'highLimit',
  'lowPressure',
  'glycolMassFraction',
] as const;
/** Columns that cannot be negative. */
const NOT_NEGATIVE = [
  'irradiance',
  'pvIrradiance',
  'loopFlow',
  'pumpPvEnergy',
  'pumpElectricity',
  'reliefVolume',
  'loopReliefVolume',
  'tapVolume',
  'hotVolume',
  'unfiredVolume',
  'unfiredShortfall',
  'undisinfectedVolume',
  'heaterHeat',
  'heaterFuel',
  'heaterElectricity',
  'heaterPvEnergy',
  'loadHeat',
  'baselineFuel',
] as const;

const most = (column: Float64Array): number => column.reduce((high, value) => Math.max(high, value), -Infinity);
const least = (column: Float64Array): number => column.reduce((low, value) => Math.min(low, value), Infinity);

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
 * Highest temperature that any absorber with no flow could ever have: the root of S = a1 d + a2 d² over the air, with all light of
 * the brightest step at its best angle and no wind; nothing around shades or covers. [°C]
 */
function hottestPossible({ array }: SystemDesign, weather: WeatherYear, stepsPerHour: number): number {
  const { albedoFrom, groundAlbedo, snowAlbedo, skyModel, summerTilt } = array;
  const seen = albedoFrom === 'design' ? { ...weather, columns: { ...weather.columns, albedo: null } } : weather;
  const [own, ...others] = groupsOf(array);
  const turned = summerTilt === null ? [] : [{ ...own!, tilt: summerTilt.tilt }];
  return Math.max(
    ...[own!, ...turned, ...others].map(({ azimuth, collector, tilt }) => {
      const plane = { tilt, azimuth, model: skyModel, albedo: groundAlbedo, snowAlbedo };
      return hottestOn(lightOn(seen, plane, stepsPerHour), collector, weather, stepsPerHour);
    }),
  );
}

/** The same of one collector in the light of its plane. */
function hottestOn(
  total: Float64Array,
  collector: SystemDesign['array']['collector'],
  weather: WeatherYear,
  stepsPerHour: number,
): number {
  const modifier = collector.incidenceModifier;
  const peak =
    'b0' in modifier || 'covers' in modifier
      ? 1
      : 'tubes' in modifier
        ? Math.max(...modifier.transversal.values) * Math.max(...modifier.longitudinal.values)
        : Math.max(...modifier.values);
  const a1 = collector.a1 - WIND_UNDER * collector.a3;
  let hottest = -Infinity;
  for (let step = 0; step < total.length; step++) {
    const absorbed = (collector.eta0 * Math.max(peak, 1) + WIND_UNDER * collector.a6) * total[step]!;
    const rise = (2 * absorbed) / (a1 + Math.sqrt(a1 * a1 + 4 * collector.a2 * absorbed));
    hottest = Math.max(hottest, weather.columns.dryBulb[Math.trunc(step / stepsPerHour)]! + rise);
  }
  return hottest;
}

/** Radiating temperature of the coldest sky of the year: what a level black plane comes to at most. [°C] */
export function coldestSky(weather: WeatherYear): number {
  const { dryBulb } = weather.columns;
  const { deficit } = nightSky(weather, 0);
  let coldest = Infinity;
  for (let hour = 0; hour < dryBulb.length; hour++) {
    const surroundings = (dryBulb[hour]! + KELVIN) ** 4 - deficit[hour]! / STEFAN_BOLTZMANN;
    coldest = Math.min(coldest, surroundings ** 0.25 - KELVIN);
  }
  return coldest;
}

/** Coldest and warmest air around the tank. [°C] */
function roomsOf({ tank }: SystemDesign, { columns: { dryBulb } }: WeatherYear): readonly number[] {
  const { roomByMonth, roomTemperature, second } = tank;
  const own = [roomTemperature, second?.roomTemperature ?? roomTemperature];
  if (roomByMonth === 'outdoors') return [...own, least(dryBulb), most(dryBulb)];
  return [...own, ...(roomByMonth ?? [])];
}

/** The loop's relief valve looks at every step: none passes its setting, and an hour in which it lets out has seen it. */
function byLoopValve({ columns, design }: Lived): string[] {
  const { reliefPressure } = design.loop;
  const highest = most(columns.loopMaximumPressure);
  const unseen = columns.loopReliefVolume.findIndex(
    (volume, hour) => volume > 0 && columns.loopMaximumPressure[hour] !== reliefPressure,
  );
  return [
    ...(highest > reliefPressure * (1 + 1e-12) ? [`loop ${highest} Pa above its relief valve`] : []),
    ...(unseen < 0 ? [] : [`loop let out below its relief pressure in hour ${unseen}`]),
  ];
}

/** What a run breaks of balance, bounds and finiteness; empty where it is sound. */
export function violations(result: Lived, weather: WeatherYear): string[] {
  const { balance, columns, design, secondTank } = result;
  const found: string[] = [];
  for (const [name, column] of Object.entries({ ...columns, ...secondTank?.columns }) as [string, Float64Array][]) {
    if (!column.every(Number.isFinite)) found.push(`${name} is not finite`);
  }
  const second = secondTank === undefined ? {} : { second: secondTank.balance };
  for (const [part, { worstRelative, worstHour }] of Object.entries({ ...balance, ...second })) {
    if (!(worstRelative < BALANCE)) found.push(`balance of ${part}: ${worstRelative} in hour ${worstHour}`);
  }
  for (const name of SHARES) {
    if (least(columns[name]) < 0 || most(columns[name]) > 1 + 1e-12) found.push(`${name} beyond 0 to 1`);
  }
  for (const name of NOT_NEGATIVE) if (least(columns[name]) < 0) found.push(`${name} below 0: ${least(columns[name])}`);

  const { tank, heater } = design;
  const stagnation = hottestPossible(design, weather, result.stepsPerHour);
  const rooms = roomsOf(design, weather);
  const begins = [
    ...(tank.initialProfile ?? [tank.initialTemperature]),
    ...(tank.second === null ? [] : [tank.second.initialTemperature]),
  ];
  const warmRoom = Math.max(...rooms, most(columns.mainsTemperature), ...begins, weather.columns.dryBulb[0]!);
  const element = heater.kind === 'element' || heater.kind === 'boiler-coil' ? heater.setTemperature : -Infinity;
  const bound = Math.max(stagnation, warmRoom, element) + ROUNDING;
  const hotTank = Math.max(tank.reliefTemperature, warmRoom) + ROUNDING;
  if (most(columns.absorberTemperature) > bound)
    found.push(`absorber ${most(columns.absorberTemperature)} °C above the stagnation bound, ${bound} °C`);
  if (most(columns.tankMaximumTemperature) > Math.max(bound, warmRoom) + STEP_ERROR)
    found.push('tank hotter than any absorber');
  // The highest of any step, not of the hour's end.
  const hottestWater = Math.max(most(columns.tankMaximumTemperature), most(columns.tankTopTemperature));
  if (hottestWater > hotTank) found.push(`tank ${hottestWater} °C above its relief valve`);
  found.push(...byLoopValve(result));

  const coldRoom = Math.min(...rooms, least(columns.mainsTemperature), ...begins, weather.columns.dryBulb[0]!);
  const cold = Math.min(coldestSky(weather), coldRoom) - ROUNDING;
  const coldestAbsorber = least(columns.absorberMinimumTemperature);
  if (least(columns.pipeMinimumTemperature) < cold) found.push('pipe below the coldest sky and room');
  if (coldestAbsorber < cold) found.push(`absorber ${coldestAbsorber} °C below the coldest sky, ${cold} °C`);
  const bottoms = [
    columns.tankBottomTemperature,
    ...(secondTank === undefined ? [] : [secondTank.columns.bottomTemperature]),
  ];
  if (bottoms.some((bottom) => least(bottom) < cold)) found.push('tank below its coldest neighbour');
  return found;
}
