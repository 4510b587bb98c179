/** Cautions about a tank that gets too hot, too cold or too full. */
import { fluidProperties } from '@noonloop/sim-core/formulas';
import { celsius, countHours, cubicMetres, extreme, type Found, hours, moment, type Rule, total } from './types.ts';

/** Opening temperature of relief valves in the stricter of the codes read. [°C] Chicago municipal code, 200 °F. */
const HOT_TANK = 840 / 9;
/** [°C] */
const ICE = 0;

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
      temperature: celsius(design.tank.reliefTemperature),
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
  const rated = design.tank.ratedTemperature;
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
export const tankIce: Rule = ({ columns }) => {
  const hour = extreme(columns.tankBottomTemperature, -1);
  const coldest = columns.tankBottomTemperature[hour]!;
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
  const { volume } = design.tank;
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
