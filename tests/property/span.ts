import type { RunResult, StepOptions, SystemDesign } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { closeBalance } from '../../packages/sim-core/src/year/balance.ts';
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

/** What the laws look at. */
export type Lived = Pick<RunResult, 'balance' | 'columns' | 'design' | 'loop' | 'secondTank' | 'stepsPerHour'> & {
  /** By part; a whole run of `simulate` does not tell. */
  readonly worst?: Readonly<Record<string, WorstHour>>;
};

/** Some hours of a design's year, from `from` to before `to`, begun as a year begins; the columns hold these hours alone, and hours of the loop count from the first of them. */
export function liveSpan(
  design: SystemDesign,
  weather: WeatherYear,
  from: number,
  to: number,
  steps: number | StepOptions = {},
): Lived {
  const machine = assemble(design, weather, typeof steps === 'number' ? { stepsPerHour: steps } : steps);
  const worst: Record<string, WorstHour> = {};
  for (let hour = from; hour < to; hour++) liveHour(machine, hour, worst);
  const columns = Object.fromEntries(
    Object.entries(machine.columns).map(([name, column]) => [name, column.subarray(from, to)]),
  ) as RunColumns;
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

/** Steps through an hour, and keeps what it held of each part whose balance it closed worst. */
function liveHour(machine: Machine, hour: number, worst: Record<string, WorstHour>): void {
  const { books, columns, second } = machine;
  const keepers = second === null ? books.balance : { ...books.balance, second: second.balance };
  const before = Object.values(keepers).map(({ stored, totals }) => [stored, totals[RESIDUAL]!] as const);
  stepHour(machine, hour);
  const carried =
    WATER * columns.tankMaximumTemperature[hour]! * (columns.tapVolume[hour]! + 3600 * columns.loopFlow[hour]!);
  for (const [at, [part, { stored, totals, worstHour }]] of Object.entries(keepers).entries()) {
    if (worstHour !== hour) continue;
    const [held, residual] = before[at]!;
    worst[part] = { residual: totals[RESIDUAL]! - residual, held: Math.abs(held) + Math.abs(stored) + carried };
  }
}

/** The same hours of a second tank. */
function secondOf({ second }: Machine, from: number, to: number): Pick<RunResult, 'secondTank'> {
  if (second === null) return {};
  const year = secondTankYear(second);
  const columns = Object.entries(year.columns).map(([name, column]) => [name, column.subarray(from, to)]);
  return { secondTank: { ...year, columns: Object.fromEntries(columns) as typeof year.columns } };
}
