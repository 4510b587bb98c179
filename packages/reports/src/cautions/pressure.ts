/** Cautions about the pressure of the loop, its vessel and its steam. */
import { countHours, cubicMetres, extreme, hours, metres, moment, pascal, type Rule, total } from './types.ts';

/** Vessels are sold in steps; one that is short by less than this is as good. [-] Judgement. */
const VESSEL_GRAIN = 0.02;

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
export const vesselSmall: Rule = ({ result: { design, loop } }) => {
  const { vessel, vesselNeeded, vesselSold, volume } = loop.steam;
  if (design.loop.layout !== 'closed' || vessel >= (1 - VESSEL_GRAIN) * vesselNeeded) return null;
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
export const steamReach: Rule = ({ result: { design, loop } }) => {
  if (design.loop.layout !== 'closed') return null;
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
