/** Cautions about a tank that gets too hot, too cold or too full. */
import type { RunColumns, RunResult, SecondTankColumns, TankDesign } from '@noonloop/sim-core';
import { fluidProperties } from '@noonloop/sim-core/formulas';
import { celsius, countHours, cubicMetres, extreme, type Found, hours, moment, type Rule, total } from './types.ts';

/** Opening temperature of relief valves in the stricter of the codes read. [°C] Chicago municipal code, 200 °F. */
const HOT_TANK = 840 / 9;
/** [°C] */
const ICE = 0;

/** Of two tanks the lower, on the safe side. */
const lowerOf = (tank: TankDesign, field: 'ratedTemperature' | 'reliefTemperature'): number =>
  Math.min(tank[field], tank.second?.[field] ?? Number.POSITIVE_INFINITY);

/** A column of the tank, and the same of a second one. @internal */
export const ofEachTank = (
  { columns, secondTank }: RunResult,
  first: keyof RunColumns,
  second: keyof SecondTankColumns,
): Float64Array[] => [columns[first], ...(secondTank === undefined ? [] : [secondTank.columns[second]])];

/** In one tank or both. @internal */
export const waterIn = ({ second, volume }: TankDesign): number => volume + (second?.volume ?? 0);

/** Relief valve lets water out. @internal */
export const relief: Rule = ({ result: { design }, columns }) => {
  const volume = total(columns.reliefVolume);
  if (volume <= 0) return null;
  return {
    code: 'relief',
    severity: 'danger',
    facts: {
      volume: cubicMetres(volume),
      hours: hours(countHours((hour) => columns.reliefVolume[hour]! > 0)),
      temperature: celsius(lowerOf(design.tank, 'reliefTemperature')),
    },
    finding: ['found'],
    advice: ['act', 'pipe'],
  };
};

/** Tank near the opening of relief valves. @internal */
export const hotTank: Rule = ({ columns }) => {
  const count = countHours((hour) => columns.tankMaximumTemperature[hour]! > HOT_TANK);
  if (count === 0) return null;
  const hour = extreme(columns.tankMaximumTemperature, 1);
  return {
    code: 'hot-tank',
    severity: 'danger',
    facts: {
      hours: hours(count),
      limit: celsius(HOT_TANK),
      peak: celsius(columns.tankMaximumTemperature[hour]!),
      when: moment(hour),
    },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Tank above its rating. @internal */
export const tankRating: Rule = ({ result: { design }, columns }) => {
  const rated = lowerOf(design.tank, 'ratedTemperature');
  const count = countHours((hour) => columns.tankMaximumTemperature[hour]! > rated);
  if (count === 0) return null;
  const peak = columns.tankMaximumTemperature[extreme(columns.tankMaximumTemperature, 1)]!;
  return {
    code: 'tank-rating',
    severity: 'warning',
    facts: { hours: hours(count), limit: celsius(rated), peak: celsius(peak) },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Tank that freezes. @internal */
export const tankIce: Rule = ({ result }) => {
  const bottoms = ofEachTank(result, 'tankBottomTemperature', 'bottomTemperature');
  const [bottom] = bottoms.toSorted((one, other) => one[extreme(one, -1)]! - other[extreme(other, -1)]!);
  const hour = extreme(bottom!, -1);
  const coldest = bottom![hour]!;
  if (coldest > ICE) return null;
  return {
    code: 'tank-ice',
    severity: 'danger',
    facts: { coldest: celsius(coldest), when: moment(hour) },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Water of the tank from the coldest mains to its own peak. @internal */
export const tankSwell: Rule = ({ result: { design }, columns }): Found => {
  const volume = waterIn(design.tank);
  const cold = columns.mainsTemperature[extreme(columns.mainsTemperature, -1)]!;
  const hot = columns.tankMaximumTemperature[extreme(columns.tankMaximumTemperature, 1)]!;
  const density = (temperature: number): number => fluidProperties({ fluid: 'water', temperature }).density;
  const swell = volume * Math.max(density(Math.max(cold, 1)) / density(Math.max(hot, 1)) - 1, 0);
  return {
    code: 'tank-swell',
    severity: 'note',
    facts: { volume: cubicMetres(volume), swell: cubicMetres(swell), cold: celsius(cold), hot: celsius(hot) },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Days on end without a draw from which hydrogen is named. [d] Manuals of water heaters: two weeks. */
const UNUSED = 14;

/** Hydrogen of an anode in a tank that nobody draws from. @internal */
export const hydrogen: Rule = ({ columns }): Found => {
  let [longest, now] = [0, 0];
  for (let hour = 0; hour < 8760; hour++) {
    now = columns.tapVolume[hour]! > 0 ? 0 : now + 1;
    if (now > longest) longest = now;
  }
  const days = longest / 24;
  return {
    code: 'hydrogen',
    severity: days >= UNUSED ? 'warning' : 'note',
    facts: { days: { value: Math.floor(days), unit: 'days' } },
    finding: days >= UNUSED ? ['found'] : [],
    advice: ['act'],
  };
};
