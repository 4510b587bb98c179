/** Cautions about the fluid between roof and tank. */
import { formatHour } from '../calendar.ts';
import { displayUnit, shownDifference } from '../units.ts';
import { countHours, extreme, hoursNumber, type Rule, temperatureNumber } from './types.ts';

/** Margin between the coldest absorber and the freezing point. [K] Common practice 3 to 5 K; the safer end. */
const FREEZE_MARGIN = 5;

/** Fluid hotter than it stands. @internal */
export const fluidLimit: Rule = ({ result: { design }, columns, show, degrees }) => {
  const limit = design.loop.fluidLimit;
  const hours = countHours((hour) => columns.absorberTemperature[hour]! > limit);
  if (hours === 0) return null;
  const hour = extreme(columns.absorberTemperature, 1);
  const peak = columns.absorberTemperature[hour]!;
  const effect =
    design.loop.fluid === 'water'
      ? 'Water turns to steam there and pushes the loop empty: the relief valve and the expansion vessel must be made for it.'
      : 'Glycol turns acid faster there: check its pH and strength every year and renew it when it is dark or sour.';
  return {
    code: 'fluid-limit',
    severity: 'warning',
    numbers: [hoursNumber('Hours above the limit', hours), temperatureNumber('Hottest absorber', peak)],
    source: 'Limit given in the design (loop.fluidLimit)',
    finding: `The absorber is hotter than the fluid's limit of ${degrees(limit)} in ${show(hours, 'wholeHours')} and reaches ${degrees(peak)} (${formatHour(hour)}).`,
    advice: `${effect} Follow the fluid maker's guide and the local code.`,
  };
};

/** Fluid that freezes, or nearly. @internal */
export const freezing: Rule = ({ result, columns, units, show, degrees }) => {
  const { freezingPoint } = result;
  const hour = extreme(columns.absorberMinimumTemperature, -1);
  const coldest = columns.absorberMinimumTemperature[hour]!;
  const margin = coldest - freezingPoint;
  if (margin >= FREEZE_MARGIN) return null;
  const hours = countHours((at) => columns.absorberMinimumTemperature[at]! < freezingPoint);
  const distance =
    margin < 0
      ? `the fluid freezes at ${degrees(freezingPoint)}, and the absorber is colder than that in ${show(hours, 'wholeHours')}`
      : `the fluid freezes at ${degrees(freezingPoint)}, only ${shownDifference(coldest, freezingPoint, 'temperature', units)} ${displayUnit('temperatureDifference', units).symbol} below`;
  const water = result.design.loop.fluid === 'water';
  const effect = water
    ? 'Water swells as it freezes and bursts collectors and pipes. Use a glycol mixture or drain the loop in winter.'
    : `Slush stops the flow, and a thin mixture can burst collectors and pipes. Use a stronger mixture, with ${show(FREEZE_MARGIN, 'temperatureDifference')} to spare.`;
  return {
    code: 'freezing',
    severity: margin < 0 ? 'danger' : 'warning',
    numbers: [
      temperatureNumber('Coldest absorber', coldest),
      temperatureNumber('Freezing point of the fluid', freezingPoint),
      { label: 'Margin', value: margin, kind: 'temperatureDifference' },
      hoursNumber('Hours below the freezing point', hours),
    ],
    source: `Margin of ${show(FREEZE_MARGIN, 'temperatureDifference')}: common practice, no source`,
    finding: `The absorber falls to ${degrees(coldest)} (${formatHour(hour)}); ${distance}.`,
    advice: `${effect} A colder winter than this weather year will come. Follow the fluid maker's table and the local code.`,
  };
};
