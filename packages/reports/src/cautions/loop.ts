/** Cautions about the fluid between roof and tank. */
import { coilSurface, type RunColumns, type SystemDesign } from '@noonloop/sim-core';
import { COEFFICIENTS_SHORT, dryTemperature } from '@noonloop/sim-core/formulas';
import {
  celsius,
  countHours,
  extreme,
  type Found,
  hours,
  joules,
  kelvin,
  moment,
  type Rule,
  share,
  total,
} from './types.ts';

/** Margin between the coldest absorber and the freezing point. [K] Common practice 3 to 5 K; the safer end. */
const FREEZE_MARGIN = 5;
/** Hours of sun at the high limit from which they are worth a word. [h] Judgement: two days of sun. */
const HELD = 20;
/** Share of the coil's heat from which what it takes back is worth a word. [-] Judgement. */
const GIVEN_BACK = 0.05;

/** Fluid hotter than it stands. @internal */
export const fluidLimit: Rule = ({ result: { design }, columns }) => {
  const limit = design.loop.fluidLimit;
  const count = countHours((hour) => columns.absorberTemperature[hour]! > limit);
  if (count === 0) return nearFluidLimit(design, columns);
  const hour = extreme(columns.absorberTemperature, 1);
  return {
    code: 'fluid-limit',
    severity: 'warning',
    facts: {
      hours: hours(count),
      peak: celsius(columns.absorberTemperature[hour]!),
      when: moment(hour),
      limit: celsius(limit),
    },
    finding: ['found'],
    advice: [design.loop.fluid === 'water' ? 'water' : 'glycol'],
  };
};

/** Air in which certificates state stagnation; ISO 9806 (from memory). [°C] */
const STANDARD_AIR = 30;

/** Coefficients fall short of a dry collector: a standing absorber that they leave below the limit may pass it. */
function nearFluidLimit({ array: { collector, groups }, loop }: SystemDesign, columns: RunColumns): Found | null {
  const stretches = [collector, ...groups.map((group) => group.collector)].map((one) => {
    const { eta0, a1, a2 } = one;
    const reckoned = dryTemperature({ eta0, a1, a2 }) - COEFFICIENTS_SHORT;
    return (dryTemperature(one) - STANDARD_AIR) / (reckoned - STANDARD_AIR);
  });
  const stretch = Math.max(1, ...stretches);
  const could = (hour: number): number => STANDARD_AIR + (columns.absorberTemperature[hour]! - STANDARD_AIR) * stretch;
  const stands = (hour: number): boolean => columns.pumpRunning[hour] === 0;
  const count = countHours((hour) => stands(hour) && could(hour) > loop.fluidLimit);
  if (count === 0) return null;
  const hour = extreme(columns.absorberTemperature, 1, stands);
  return {
    code: 'fluid-limit',
    severity: 'note',
    facts: {
      hours: hours(count),
      peak: celsius(columns.absorberTemperature[hour]!),
      could: celsius(could(hour)),
      when: moment(hour),
      limit: celsius(loop.fluidLimit),
    },
    finding: [collector.stagnationTemperature === undefined ? 'near' : 'nearStated'],
    advice: [loop.fluid === 'water' ? 'water' : 'glycol'],
  };
}

/** How near the fluid in collectors or outdoor pipes comes to freezing, by the mixture of each hour; said also where it is safe. @internal */
export const freezing: Rule = ({ result, columns }): Found => {
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
  const safe = margin >= FREEZE_MARGIN;
  const thins = loop.protectionEnds !== null && loop.protectionEnds !== 0 && !safe;
  return {
    code: 'freezing',
    severity: margin < 0 ? 'danger' : safe ? 'note' : 'warning',
    facts: {
      margin: kelvin(margin),
      coldest: celsius(coldest),
      when: moment(hour),
      point: celsius(point),
      hours: hours(countHours((at) => coldestAt(at) < freezingPoint[at]!)),
      burstHours: hours(loop.burstHours),
      spareWanted: kelvin(FREEZE_MARGIN),
      ...(thins ? { ends: moment(loop.protectionEnds!) } : {}),
    },
    finding: [
      absorberMinimumTemperature[hour] === coldest ? 'absorber' : 'pipe',
      safe ? 'spare' : margin < 0 ? 'frozen' : 'near',
      ...(thins ? (['thins'] as const) : []),
      ...(loop.burstHours > 0 ? (['burst'] as const) : []),
    ],
    advice: safe ? ['winter'] : [design.loop.fluid === 'water' ? 'water' : 'glycol', 'winter'],
  };
};

/** Mixture that thins in the course of the year, cold or not. @internal */
export const thinning: Rule = ({ result: { design }, columns }) => {
  const filled = design.loop.glycolMassFraction;
  const left = columns.glycolMassFraction[8759]!;
  if (design.loop.fluid === 'water' || left > filled - 0.005) return null;
  return {
    code: 'glycol-thinned',
    severity: 'warning',
    facts: { left: share(left), filled: share(filled) },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Pump held off by the high limit while the sun shines: hot collectors where stagnation may read 0. @internal */
export const heldInSun: Rule = ({ result: { stagnationLimit }, columns }) => {
  const count = total(columns.highLimit);
  if (count < HELD) return null;
  const hour = extreme(columns.absorberTemperature, 1, (at) => columns.highLimit[at]! > 0);
  const stagnation = total(columns.stagnation);
  return {
    code: 'held-in-sun',
    severity: 'warning',
    facts: {
      hours: hours(count),
      peak: celsius(columns.absorberTemperature[hour]!),
      when: moment(hour),
      stagnation: hours(stagnation),
      limit: celsius(stagnationLimit),
    },
    finding: ['found'],
    advice: [stagnation >= 0.5 ? 'stagnates' : 'short', 'act'],
  };
};

/** Ethylene glycol behind one wall. @internal */
export const poisonousFluid: Rule = ({ result: { design } }) =>
  design.loop.fluid === 'ethylene-glycol'
    ? { code: 'poisonous-fluid', severity: 'danger', facts: {}, finding: ['found'], advice: ['act'] }
    : null;

/** Coil too small for the array. @internal */
export const coilSmall: Rule = ({ result: { design } }) => {
  const coil = coilSurface(design);
  if (coil === null || coil.short <= 0) return null;
  return {
    code: 'coil-small',
    severity: 'note',
    facts: {
      surface: { value: coil.surface, unit: 'm²' },
      common: { value: coil.common, unit: 'm²' },
      short: { value: coil.short, unit: 'm²' },
    },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Loop that cools the tank. @internal */
export const givenBack: Rule = ({ result: { design }, columns }) => {
  const back = total(columns.heatGivenBack);
  const brought = total(columns.coilHeat) + back;
  // Where the pump is asked to cool the tank by night, that is no loss.
  if (design.control.nightCooling !== null) return null;
  if (!(back > 0) || back < GIVEN_BACK * brought) return null;
  return {
    code: 'heat-given-back',
    severity: 'note',
    facts: { back: joules(back), share: share(back / brought) },
    finding: ['found'],
    advice: [design.control.mode === 'difference' ? 'controller' : 'module'],
  };
};
