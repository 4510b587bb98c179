/** Numbers of knobs: shown in one system of units, written into the design with their unit. */
import { displayUnit, toDisplay, type UnitKind, type Units } from '../../units.ts';
import type { Plain } from '../types.ts';

/** What a knob counts. */
export type Amount =
  | 'count'
  | 'angle'
  | 'area'
  | 'volume'
  | 'length'
  | 'temperature'
  | 'difference'
  | 'power'
  | 'percent'
  | 'plain'
  | 'money';

interface Way {
  /** From what a design holds, SI. */
  readonly show: (value: number, units: Units) => number;
  /** To what is written into a design. */
  readonly write: (value: number, units: Units) => Plain;
  /** From what was written by {@link write}; of other words nothing. */
  readonly read: (written: Plain, units: Units) => number | null;
  readonly symbol: (units: Units) => string;
  /** Words for a reader who hears it. */
  readonly digits: number;
}

/** Figures beyond this are of the arithmetic. */
const clean = (value: number): number => Number(value.toPrecision(6));

const plain = (symbol: string, digits: number, scale = 1): Way => ({
  show: (value) => clean(value * scale),
  write: (value) => clean(value / scale),
  read: (written) => (typeof written === 'number' ? clean(written * scale) : null),
  symbol: () => symbol,
  digits,
});

/** Written with its unit, so that the file says what the page said. */
function united(kind: UnitKind, names: Readonly<Record<Units, string>>, digits: number): Way {
  const factor = (from: Units, to: Units): number => displayUnit(kind, to).scale / displayUnit(kind, from).scale;
  return {
    show: (value, units) => clean(toDisplay(value, kind, units)),
    write: (value, units) => `${clean(value)} ${names[units]}`,
    read: (written, units) => {
      const [, number, name] = /^([\d.]+) (\S+)$/.exec(String(written)) ?? [];
      const from = (Object.keys(names) as Units[]).find((one) => names[one] === name);
      return from === undefined ? null : clean(Number(number) * factor(from, units));
    },
    symbol: (units) => displayUnit(kind, units).symbol,
    digits,
  };
}

/** Every kind. */
export const AMOUNTS: Readonly<Record<Amount, Way>> = {
  count: plain('', 0),
  angle: plain('°', 0),
  plain: plain('', 3),
  money: plain('', 2),
  percent: plain('%', 1, 100),
  power: plain('W', 0),
  area: united('area', { metric: 'm2', us: 'ft2' }, 2),
  volume: united('volume', { metric: 'L', us: 'gal' }, 1),
  length: united('length', { metric: 'm', us: 'ft' }, 2),
  temperature: united('temperature', { metric: 'degC', us: 'degF' }, 1),
  difference: united('temperatureDifference', { metric: 'K', us: 'degF' }, 1),
};
