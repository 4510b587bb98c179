/** Cautions about the fluid between roof and tank. */
import { formatHour } from '../calendar.ts';
import { displayUnit, shownDifference } from '../units.ts';
import { countHours, extreme, hoursNumber, type Rule, temperatureNumber, total } from './types.ts';

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

/** Fluid that freezes, or nearly, in collectors or outdoor pipes, by the mixture of each hour. @internal */
export const freezing: Rule = ({ result, columns, units, show, degrees }) => {
  const { design, loop } = result;
  const { freezingPoint, absorberMinimumTemperature, pipeMinimumTemperature } = columns;
  const outdoors = design.loop.outdoorShare > 0;
  const coldestAt = (hour: number): number =>
    outdoors
      ? Math.min(absorberMinimumTemperature[hour]!, pipeMinimumTemperature[hour]!)
      : absorberMinimumTemperature[hour]!;
  let hour = 0;
  for (let at = 1; at < 8760; at++)
    if (coldestAt(at) - freezingPoint[at]! < coldestAt(hour) - freezingPoint[hour]!) hour = at;
  const coldest = coldestAt(hour);
  const point = freezingPoint[hour]!;
  const margin = coldest - point;
  if (margin >= FREEZE_MARGIN) return null;
  const hours = countHours((at) => coldestAt(at) < freezingPoint[at]!);
  const where = absorberMinimumTemperature[hour] === coldest ? 'The absorber' : 'An outdoor pipe';
  const distance =
    margin < 0
      ? `the fluid freezes at ${degrees(point)}, and it is colder than that in ${show(hours, 'wholeHours')}`
      : `the fluid freezes at ${degrees(point)}, only ${shownDifference(coldest, point, 'temperature', units)} ${displayUnit('temperatureDifference', units).symbol} below`;
  const ends =
    loop.protectionEnds === null || loop.protectionEnds === 0
      ? ''
      : ` Make-up water thins the mixture: from ${formatHour(loop.protectionEnds)} it would freeze in the coldest hour of this year.`;
  const burst =
    loop.burstHours > 0
      ? ` It is below the point down to which the mixture bursts no pipe in ${show(loop.burstHours, 'wholeHours')}.`
      : '';
  const effect =
    design.loop.fluid === 'water'
      ? 'Water swells as it freezes and bursts collectors and pipes. Use a glycol mixture or drain the loop in winter.'
      : `Slush stops the flow, and a thin mixture can burst collectors and pipes. Use a stronger mixture, with ${show(FREEZE_MARGIN, 'temperatureDifference')} to spare.`;
  return {
    code: 'freezing',
    severity: margin < 0 ? 'danger' : 'warning',
    numbers: [
      temperatureNumber('Coldest fluid', coldest),
      temperatureNumber('Freezing point of the fluid', point),
      { label: 'Margin', value: margin, kind: 'temperatureDifference' },
      hoursNumber('Hours below the freezing point', hours),
      hoursNumber('Hours below the burst point', loop.burstHours),
    ],
    source: `Margin of ${show(FREEZE_MARGIN, 'temperatureDifference')}: common practice, no source`,
    finding: `${where} falls to ${degrees(coldest)} (${formatHour(hour)}); ${distance}.${ends}${burst}`,
    advice: `${effect} A colder winter than this weather year will come. Follow the fluid maker's table and the local code.`,
  };
};

/** Mixture that thins in the course of the year, cold or not. @internal */
export const thinning: Rule = ({ result: { design }, columns, show }) => {
  const filled = design.loop.glycolMassFraction;
  const left = columns.glycolMassFraction[8759]!;
  if (design.loop.fluid === 'water' || left > filled - 0.005) return null;
  return {
    code: 'glycol-thinned',
    severity: 'warning',
    numbers: [
      { label: 'Glycol at the end of the year', value: left, kind: 'fraction' },
      { label: 'Glycol as filled', value: filled, kind: 'fraction' },
    ],
    source: 'Half a percent by mass and more (judgement)',
    finding: `Make-up water thins the glycol from ${show(filled, 'fraction')} to ${show(left, 'fraction')} by mass within the year.`,
    advice: `Find the leak, and make up with mixture instead of water. Test the strength every autumn. Follow the fluid maker's guide and the local code.`,
  };
};

/** Loop lets fluid out. @internal */
export const loopRelief: Rule = ({ result: { design, loop }, columns, show }) => {
  const volume = total(columns.loopReliefVolume);
  if (volume <= 0) return null;
  const hours = countHours((hour) => columns.loopReliefVolume[hour]! > 0);
  return {
    code: 'loop-relief',
    severity: 'danger',
    numbers: [
      { label: 'Fluid let out', value: volume, kind: 'discharge' },
      hoursNumber('Hours with discharge', hours),
      { label: 'Highest pressure', value: loop.highestPressure, kind: 'pressure' },
    ],
    source: 'Opening pressure given in the design (loop.reliefPressure)',
    finding: `The loop's relief valve opens at ${show(design.loop.reliefPressure, 'pressure')} in ${show(hours, 'wholeHours')} and lets out ${show(volume, 'discharge')} of fluid.`,
    advice: `What comes out may be steam: pipe it to a catch vessel that stands heat. A larger expansion vessel, or one with its pressure set right, keeps the valve shut. Follow the local code.`,
  };
};

/** Pump wants to run and the loop has too little pressure. @internal */
export const lowPressure: Rule = ({ result: { design, loop }, columns, show }) => {
  const hours = total(columns.lowPressure);
  if (hours <= 0) return null;
  const first = loop.circulationFails === null ? '' : `, first on ${formatHour(loop.circulationFails)}`;
  return {
    code: 'loop-pressure-low',
    severity: 'warning',
    numbers: [
      { label: 'Hours without circulation', value: hours, kind: 'hours' },
      { label: 'Lowest pressure', value: loop.lowestPressure, kind: 'pressure' },
    ],
    source: 'Limit given in the design (loop.minimumPressure)',
    finding: `The loop has less than ${show(design.loop.minimumPressure, 'pressure')} at the collectors and does not circulate for ${show(hours, 'hours')} in which the pump would run${first}; the gauge falls to ${show(loop.lowestPressure, 'pressure')}.`,
    advice: `Find the leak, bleed the air and fill up to the gauge mark; check the vessel's own pressure. Collectors without flow get very hot. Follow the local code.`,
  };
};

/** Fluid boils out of the collectors. @internal */
export const boiling: Rule = ({ result: { loop }, columns, show }) => {
  const hours = total(columns.boiling);
  if (hours <= 0) return null;
  const days = new Set(
    Array.from({ length: 8760 }, (_, hour) => hour)
      .filter((hour) => columns.boiling[hour]! > 0)
      .map((hour) => Math.floor(hour / 24)),
  ).size;
  return {
    code: 'boiling',
    severity: 'warning',
    numbers: [
      { label: 'Hours with vapour in the collectors', value: hours, kind: 'hours' },
      { label: 'Highest pressure', value: loop.highestPressure, kind: 'pressure' },
    ],
    source: 'Boiling point at the pressure of each hour, as simulated',
    finding: `The fluid boils out of the collectors on ${days} ${days === 1 ? 'day' : 'days'}, for ${show(hours, 'hours')} in all; the gauge rises to ${show(loop.highestPressure, 'pressure')}.`,
    advice: `The expansion vessel must take what the steam pushes out, and steam must not reach pump or vessel. Less collector, a larger tank or shade in summer spare the fluid. Follow the local code.`,
  };
};
