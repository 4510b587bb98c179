import type { RunResult, StepOptions, SystemDesign } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { closeBalance } from '../../packages/sim-core/src/year/balance.ts';
import { ownColumns } from '../../packages/sim-core/src/year/columns.ts';
import { loopYear } from '../../packages/sim-core/src/year/loop-year.ts';
import { assemble, type Machine } from '../../packages/sim-core/src/year/machine.ts';
import type { BalancePart, PartBalance, RunColumns } from '../../packages/sim-core/src/year/result.ts';
import { secondTankYear } from '../../packages/sim-core/src/year/second-tank.ts';
import { stepHour } from '../../packages/sim-core/src/year/step.ts';

/** Place of the residual among a keeper's totals. */
const RESIDUAL = 2;
/** Heat capacity of water. [J/(m³·K)] */
const WATER = 4.18e6;

/** The hour in which a part's balance closed worst. */
export interface WorstHour {
  /** What is missing, or too much. [J] */
  readonly residual: number;
  /** Heat that the part held, and that water and fluid carried through it, above 0 °C, at most. [J] */
  readonly held: number;
}

/** Hours of ten weeks of early summer, when the tank is at its hottest: for what wants no whole year. */
export const EARLY_SUMMER = [2900, 2900 + 70 * 24] as const;

/** A weather with light in those hours alone: in the dark of the rest a year takes few steps. */
export function litWithin(weather: WeatherYear, from: number, to: number): WeatherYear {
  const lit = (column: Float64Array) => column.map((light, hour) => (hour >= from && hour < to ? light : 0));
  const { dhi, dni, ghi } = weather.columns;
  return { ...weather, columns: { ...weather.columns, dhi: lit(dhi), dni: lit(dni), ghi: lit(ghi) } };
}

/** What the laws look at. */
export type Lived = Pick<RunResult, 'balance' | 'columns' | 'design' | 'loop' | 'secondTank' | 'stepsPerHour'> & {
  /** By part; a whole run of `simulate` does not tell. */
  readonly worst?: Readonly<Record<string, WorstHour>>;
};

/** Arrays of the last span's columns, of which it has copies: to be used anew, for each span would fill 4 MB. */
let spare: Float64Array[] = [];

/** Some hours of a design's year, from `from` to before `to`, begun as a year begins; the columns hold these hours alone, and hours of the loop count from the first of them. */
export function liveSpan(
  design: SystemDesign,
  weather: WeatherYear,
  from: number,
  to: number,
  steps: number | StepOptions = {},
): Lived {
  const machine = assemble(design, weather, typeof steps === 'number' ? { stepsPerHour: steps } : steps, spare);
  const worst = liveHours(machine, from, to);
  const columns = Object.fromEntries(
    Object.entries(machine.columns).map(([name, column]) => [name, column.slice(from, to)]),
  ) as RunColumns;
  spare = ownColumns(machine.columns);
  const books = Object.entries(machine.books.balance).map(([part, keeper]): [string, PartBalance] => [
    part,
    closeBalance(keeper),
  ]);
  return {
    design,
    stepsPerHour: machine.drivers.stepsPerHour,
    columns,
    loop: loopYear({ ...machine, columns }),
    balance: Object.fromEntries(books) as Record<BalancePart, PartBalance>,
    worst,
    ...secondOf(machine, from, to),
  };
}

/** Steps through the hours, and keeps what each part held in that whose balance it closed worst. */
function liveHours(machine: Machine, from: number, to: number): Record<string, WorstHour> {
  const { books, columns, second } = machine;
  const parts = Object.entries(second === null ? books.balance : { ...books.balance, second: second.balance });
  const worst: Record<string, WorstHour> = {};
  const held = new Float64Array(parts.length);
  const residuals = new Float64Array(parts.length);
  for (let hour = from; hour < to; hour++) {
    for (let at = 0; at < parts.length; at++) {
      const [, { stored, totals }] = parts[at]!;
      held[at] = stored;
      residuals[at] = totals[RESIDUAL]!;
    }
    stepHour(machine, hour);
    for (let at = 0; at < parts.length; at++) {
      const [part, { stored, totals, worstHour }] = parts[at]!;
      if (worstHour !== hour) continue;
      const carried =
        WATER * columns.tankMaximumTemperature[hour]! * (columns.tapVolume[hour]! + 3600 * columns.loopFlow[hour]!);
      worst[part] = {
        residual: totals[RESIDUAL]! - residuals[at]!,
        held: Math.abs(held[at]!) + Math.abs(stored) + carried,
      };
    }
  }
  return worst;
}

/** The same hours of a second tank. */
function secondOf({ second }: Machine, from: number, to: number): Pick<RunResult, 'secondTank'> {
  if (second === null) return {};
  const year = secondTankYear(second);
  const columns = Object.entries(year.columns).map(([name, column]) => [name, column.subarray(from, to)]);
  return { secondTank: { ...year, columns: Object.fromEntries(columns) as typeof year.columns } };
}
