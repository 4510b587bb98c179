/** Hourly columns of a run as tables name and convert them. */
import type { RunColumns, RunResult, SecondTankColumns } from '@noonloop/sim-core';
import { displayUnit, type UnitKind, type Units } from './units.ts';

/** Kind of number in each hourly column, in the order of the tables. */
export const COLUMN_KINDS: Readonly<Record<keyof RunColumns, UnitKind>> = {
  irradiance: 'irradiance',
  pvIrradiance: 'irradiance',
  ambientTemperature: 'temperature',
  absorberTemperature: 'temperature',
  absorberMinimumTemperature: 'temperature',
  collectorOutletTemperature: 'temperature',
  tankTopTemperature: 'temperature',
  tankMaximumTemperature: 'temperature',
  tankBottomTemperature: 'temperature',
  tankMeanTemperature: 'temperature',
  loopFlow: 'flow',
  pumpRunning: 'fraction',
  pumpPvEnergy: 'electricity',
  pumpElectricity: 'electricity',
  noFlowInSun: 'fraction',
  stagnation: 'fraction',
  boiling: 'fraction',
  highLimit: 'fraction',
  collectorHeat: 'energy',
  pipeLoss: 'energy',
  coilHeat: 'energy',
  heatGivenBack: 'energy',
  tankLoss: 'energy',
  loadHeat: 'energy',
  solarHeat: 'energy',
  thermosiphonFlow: 'flow',
  thermosiphonHeat: 'energy',
  loopPressure: 'pressure',
  loopMaximumPressure: 'pressure',
  loopReliefVolume: 'discharge',
  lowPressure: 'fraction',
  glycolMassFraction: 'fraction',
  freezingPoint: 'temperature',
  pipeMinimumTemperature: 'temperature',
  reliefVolume: 'discharge',
  reliefHeat: 'energy',
  mainsTemperature: 'temperature',
  tapVolume: 'volume',
  hotVolume: 'volume',
  tapHeatAsked: 'energy',
  unfiredVolume: 'volume',
  unfiredShortfall: 'energy',
  undisinfectedVolume: 'volume',
  tapHeat: 'energy',
  tapTemperature: 'temperature',
  heaterHeat: 'energy',
  heaterFuel: 'fuel',
  heaterPvEnergy: 'electricity',
  heaterLoss: 'energy',
  ringLoss: 'energy',
  hotPipeLoss: 'energy',
  heaterElectricity: 'electricity',
  baselineHeat: 'energy',
  baselineFuel: 'fuel',
  baselineElectricity: 'electricity',
};

/** Names of the hourly columns, in the order of the tables. */
export const COLUMN_NAMES = Object.keys(COLUMN_KINDS) as readonly (keyof RunColumns)[];

const SECOND_TANK_KINDS: Readonly<Record<keyof SecondTankColumns, UnitKind>> = {
  topTemperature: 'temperature',
  bottomTemperature: 'temperature',
  meanTemperature: 'temperature',
  maximumTemperature: 'temperature',
  loss: 'energy',
  coilHeat: 'energy',
};

/** Hourly columns of a second tank by the names that tables give them, such as `secondTankLoss`. */
export const SECOND_TANK_COLUMNS = (Object.keys(SECOND_TANK_KINDS) as (keyof SecondTankColumns)[]).map((key) => ({
  name: `secondTank${key[0]!.toUpperCase()}${key.slice(1)}`,
  kind: SECOND_TANK_KINDS[key],
  of: ({ secondTank }: RunResult): Float64Array | undefined => secondTank?.columns[key],
}));

/** Name with its unit, `solarHeat_kWh`. */
export const columnHeader = (name: string, kind: UnitKind, units: Units): string =>
  `${name}_${displayUnit(kind, units).key}`;

/** Name with its SI unit, as in JSON: `solarHeat_J`. */
export function siKey(name: string, kind: UnitKind): string {
  return `${name}_${SI_KEYS[kind]}`;
}

const SI_KEYS: Record<UnitKind, string> = {
  energy: 'J',
  fuel: 'J',
  electricity: 'J',
  volume: 'm3',
  discharge: 'm3',
  flow: 'm3_per_s',
  temperature: 'degC',
  temperatureDifference: 'K',
  hours: 'h',
  wholeHours: 'h',
  fraction: 'fraction',
  irradiance: 'W_per_m2',
  area: 'm2',
  length: 'm',
  pressure: 'Pa',
  mass: 'kg',
  power: 'W',
  electricPower: 'W',
  residual: 'relative',
};
