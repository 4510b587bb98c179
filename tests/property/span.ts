import type { RunResult, SystemDesign } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { closeBalance } from '../../packages/sim-core/src/year/balance.ts';
import { assemble, type Machine } from '../../packages/sim-core/src/year/machine.ts';
import type { BalancePart, PartBalance, RunColumns } from '../../packages/sim-core/src/year/result.ts';
import { secondTankYear } from '../../packages/sim-core/src/year/second-tank.ts';
import { stepHour } from '../../packages/sim-core/src/year/step.ts';

/** What the laws look at. */
export type Lived = Pick<RunResult, 'balance' | 'columns' | 'design' | 'secondTank' | 'stepsPerHour'>;

/** Some hours of a design's year, from `from` to before `to`, begun as a year begins; the columns hold these hours alone. */
export function liveSpan(
  design: SystemDesign,
  weather: WeatherYear,
  from: number,
  to: number,
  stepsPerHour?: number,
): Lived {
  const machine = assemble(design, weather, stepsPerHour === undefined ? {} : { stepsPerHour });
  for (let hour = from; hour < to; hour++) stepHour(machine, hour);
  const columns = Object.entries(machine.columns).map(([name, column]) => [name, column.subarray(from, to)]);
  const books = Object.entries(machine.books.balance).map(([part, keeper]): [string, PartBalance] => [
    part,
    closeBalance(keeper),
  ]);
  return {
    design,
    stepsPerHour: machine.drivers.stepsPerHour,
    columns: Object.fromEntries(columns) as RunColumns,
    balance: Object.fromEntries(books) as Record<BalancePart, PartBalance>,
    ...secondOf(machine, from, to),
  };
}

/** The same hours of a second tank. */
function secondOf({ second }: Machine, from: number, to: number): Pick<RunResult, 'secondTank'> {
  if (second === null) return {};
  const year = secondTankYear(second);
  const columns = Object.entries(year.columns).map(([name, column]) => [name, column.subarray(from, to)]);
  return { secondTank: { ...year, columns: Object.fromEntries(columns) as typeof year.columns } };
}
