/** Cautions about odd roofs: modules in series, loops that drain or hold water. */
import { celsius, cubicMetres, type Rule } from './types.ts';

/** Direct current that may be touched. [V] IEC 60364-4-41 (from memory). */
const SAFE_VOLTAGE = 60;
/** Cells on a frosty morning, and those of a data sheet. [°C] Judgement. */
const COLD_CELLS = -10;
const SHEET_CELLS = 25;

/** Modules in series. @internal */
export const moduleVoltage: Rule = ({ result: { design } }) => {
  const { inSeries, module } = design.pv;
  const each = module.openCircuitVoltage + module.voltageTemperatureCoefficient * (COLD_CELLS - SHEET_CELLS);
  const volts = inSeries * each;
  if (design.pump.drive === 'mains' || inSeries === 1 || volts <= SAFE_VOLTAGE) return null;
  return {
    code: 'module-voltage',
    severity: 'danger',
    facts: {
      count: { value: inSeries, unit: '1' },
      volts: { value: volts, unit: 'V' },
      cold: celsius(COLD_CELLS),
    },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Collector temperature above which an empty loop should not be filled. [°C] Judgement. */
const FILL_AT_MOST = 95;

/** Slope of a loop that drains back. @internal */
export const drainSlope: Rule = ({ result: { design, loop } }) => {
  if (design.loop.layout !== 'drain-back' || loop.drain === undefined) return null;
  const { content, times } = loop.drain;
  return {
    code: 'drain-slope',
    severity: 'note',
    facts: { times: { value: times, unit: '1' }, content: cubicMetres(content) },
    finding: ['found'],
    advice: ['act'],
  };
};

/** Water into hot dry collectors. @internal */
export const refillSteam: Rule = ({ result: { loop } }) =>
  loop.drain === undefined || loop.drain.flashes === 0
    ? null
    : {
        code: 'refill-steam',
        severity: 'danger',
        facts: { times: { value: loop.drain.flashes, unit: '1' }, limit: celsius(FILL_AT_MOST) },
        finding: ['found'],
        advice: ['act'],
      };

/** The tank's water in the collectors. @internal */
export const directLoop: Rule = ({ result: { design, loop } }) => {
  if (design.loop.layout !== 'direct' || loop.drain === undefined) return null;
  const { absorberFreezingHours, coldestAbsorber, coldestPipe, drain, pipeFreezingHours } = loop;
  const hours = Math.max(absorberFreezingHours, pipeFreezingHours);
  return {
    code: 'direct-loop',
    severity: hours > 0 ? 'danger' : 'warning',
    facts: {
      hours: { value: hours, unit: 'h' },
      coldest: celsius(Math.min(coldestAbsorber, coldestPipe)),
      times: { value: drain.times, unit: '1' },
      content: cubicMetres(drain.content),
    },
    finding: [...(hours > 0 ? (['freezes'] as const) : []), ...(drain.times > 0 ? (['drains'] as const) : [])],
    advice: ['act'],
  };
};
