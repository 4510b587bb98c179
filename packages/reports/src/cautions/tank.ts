/** Cautions about a tank that gets too hot. */
import { countHours, hoursNumber, type Rule, temperatureNumber, total } from './types.ts';

/** Opening temperature of relief valves in the stricter of the codes read. [°C] Chicago municipal code, 200 °F. */
const HOT_TANK = 93.3;

/** Relief valve lets water out. @internal */
export const relief: Rule = ({ result: { design }, columns, show, degrees }) => {
  const volume = total(columns.reliefVolume);
  if (volume <= 0) return null;
  const hours = countHours((hour) => columns.reliefVolume[hour]! > 0);
  return {
    code: 'relief',
    severity: 'danger',
    numbers: [{ label: 'Water let out', value: volume, kind: 'discharge' }, hoursNumber('Hours with discharge', hours)],
    source: 'ANSI Z21.22, read in Washington State code WAC 296-150V-1580',
    finding: `The tank's relief valve opens in ${show(hours, 'wholeHours')} and lets out ${show(volume, 'discharge')} of water at ${degrees(design.tank.reliefTemperature)}.`,
    advice: `A relief valve is a last guard, not an everyday limit: set a high limit below it, or fit less collector or a larger tank. Its discharge pipe must run full size, downhill, with no valve in it, to a safe place in sight. Follow the local code.`,
  };
};

/** Tank near the opening of relief valves. @internal */
export const hotTank: Rule = ({ columns, show, degrees }) => {
  const hours = countHours((hour) => columns.tankMaximumTemperature[hour]! > HOT_TANK);
  if (hours === 0) return null;
  return {
    code: 'hot-tank',
    severity: 'danger',
    numbers: [hoursNumber('Hours above it', hours)],
    source: `Chicago municipal code, read in a public copy: relief valves open at ${degrees(HOT_TANK)}`,
    finding: `The hottest part of the tank is above ${degrees(HOT_TANK)} in ${show(hours, 'wholeHours')}: near boiling, and where relief valves open under some codes.`,
    advice: 'Set a high limit well below it. Follow the local code.',
  };
};

/** Tank above its rating. @internal */
export const tankRating: Rule = ({ result: { design }, columns, show, degrees }) => {
  const rated = design.tank.ratedTemperature;
  const hours = countHours((hour) => columns.tankMaximumTemperature[hour]! > rated);
  if (hours === 0) return null;
  return {
    code: 'tank-rating',
    severity: 'warning',
    numbers: [hoursNumber('Hours above the rating', hours), temperatureNumber('Rated temperature', rated)],
    source: 'Rating given in the design (tank.ratedTemperature)',
    finding: `The hottest part of the tank is above its rated ${degrees(rated)} in ${show(hours, 'wholeHours')}.`,
    advice: `Linings, anodes and seals age fast there. Lower the high limit or choose a tank rated for more. Follow the maker's papers and the local code.`,
  };
};
