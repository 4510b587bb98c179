/** Cautions about the fluid between roof and tank. */
import { coilSurface } from '@noonloop/sim-core';
import {
  celsius,
  countHours,
  cubicMetres,
  extreme,
  type Found,
  hours,
  joules,
  kelvin,
  metres,
  moment,
  pascal,
  type Rule,
  share,
  total,
} from './types.ts';

/** Margin between the coldest absorber and the freezing point. [K] Common practice 3 to 5 K; the safer end. */
const FREEZE_MARGIN = 5;
/** Vessels are sold in steps; one that is short by less than this is as good. [-] Judgement. */
const VESSEL_GRAIN = 0.02;
/** Hours of sun at the high limit from which they are worth a word. [h] Judgement: two days of sun. */
const HELD = 20;
/** Share of the coil's heat from which what it takes back is worth a word. [-] Judgement. */
const GIVEN_BACK = 0.05;

/** Fluid hotter than it stands. @internal */
export const fluidLimit: Rule = ({ result: { design }, columns }) => {
  const limit = design.loop.fluidLimit;
  const count = countHours((hour) => columns.absorberTemperature[hour]! > limit);
  if (count === 0) return null;
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

/** Loop lets fluid out. @internal */
export const loopRelief: Rule = ({ result: { design, loop }, columns }) => {
  const volume = total(columns.loopReliefVolume);
  if (volume <= 0) return null;
  return {
    code: 'loop-relief',
    severity: 'danger',
    facts: {
      volume: cubicMetres(volume),
      hours: hours(countHours((hour) => columns.loopReliefVolume[hour]! > 0)),
      relief: pascal(design.loop.reliefPressure),
      peak: pascal(loop.highestPressure),
    },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Pressure near the relief valve: the end pressure of EN 12828 is passed, and nothing let out. @internal */
export const loopPressureHigh: Rule = ({ result: { design, loop }, columns }) => {
  const { reliefPressure } = design.loop;
  const allowed = loop.steam.endPressure;
  const hour = extreme(columns.loopMaximumPressure, 1);
  const peak = columns.loopMaximumPressure[hour]!;
  if (peak <= allowed || total(columns.loopReliefVolume) > 0) return null;
  return {
    code: 'loop-pressure-high',
    severity: 'warning',
    facts: { peak: pascal(peak), when: moment(hour), relief: pascal(reliefPressure), allowed: pascal(allowed) },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Vessel that cannot take what steam pushes out. @internal */
export const vesselSmall: Rule = ({ result: { loop } }) => {
  const { vessel, vesselNeeded, vesselSold, volume } = loop.steam;
  if (vessel >= (1 - VESSEL_GRAIN) * vesselNeeded) return null;
  return {
    code: 'vessel-small',
    severity: 'warning',
    facts: {
      vessel: cubicMetres(vessel),
      needed: cubicMetres(vesselNeeded),
      sold: cubicMetres(vesselSold),
      steam: cubicMetres(volume),
    },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Steam that gets down the pipe to pump and vessel: in this year, or in full sun without flow. @internal */
export const steamReach: Rule = ({ result: { loop } }) => {
  const { length, pipeLength, powerLeft } = loop.steam;
  const reached = loop.longestSteam >= pipeLength && loop.longestSteam > 0;
  if (!reached && length < pipeLength) return null;
  return {
    code: 'steam-reach',
    severity: 'warning',
    facts: {
      length: metres(length),
      pipe: metres(pipeLength),
      power: { value: powerLeft, unit: 'W' },
      longest: metres(loop.longestSteam),
    },
    finding: reached ? ['year'] : ['found'],
    advice: ['act'],
  };
};

/** Pump wants to run and the loop has too little pressure. @internal */
export const lowPressure: Rule = ({ result: { design, loop }, columns }) => {
  const count = total(columns.lowPressure);
  if (count <= 0) return null;
  const fails = loop.circulationFails;
  return {
    code: 'loop-pressure-low',
    severity: 'warning',
    facts: {
      hours: hours(count),
      lowest: pascal(loop.lowestPressure),
      minimum: pascal(design.loop.minimumPressure),
      ...(fails === null ? {} : { fails: moment(fails) }),
    },
    finding: fails === null ? ['found'] : ['found', 'first'],
    advice: ['act'],
  };
};

/** Fluid boils out of the collectors. @internal */
export const boiling: Rule = ({ result: { loop }, columns }) => {
  const count = total(columns.boiling);
  if (count <= 0) return null;
  const days = new Set(
    Array.from({ length: 8760 }, (_, hour) => hour)
      .filter((hour) => columns.boiling[hour]! > 0)
      .map((hour) => Math.floor(hour / 24)),
  ).size;
  return {
    code: 'boiling',
    severity: 'warning',
    facts: { hours: hours(count), days: { value: days, unit: 'days' }, peak: pascal(loop.highestPressure) },
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
  if (!(back > 0) || back < GIVEN_BACK * brought) return null;
  return {
    code: 'heat-given-back',
    severity: 'note',
    facts: { back: joules(back), share: share(back / brought) },
    finding: ['found'],
    advice: [design.control.mode === 'difference' ? 'controller' : 'module'],
  };
};
