/**
 * How far ten days of a design may lie from the explicit model of this folder, in every column and every part of the balance.
 *
 * Where the tolerances come from. Sums: the flow table is within 0.25 % of full flow (docs/theory/loop.md), ten-minute steps within 0.05 % of the heat (steps.md):
 * 0.25 % in steps of a minute, 0.3 % by default. Hours of a state: each of the ten days has a start or a stop that falls within a step: a minute a day is 1/6 h, ten
 * minutes, late by half on average and cut finer at events, 1/4 h. Temperatures: a draw's front is smeared by its pieces (tank.md); the mean of a node that it
 * passes differs by 0.1 K between pieces of half a minute and of one, and by some twice that for ten minutes. A single hour may hold a switch one step later in a run (1/60 h) and in the
 * model (1/120 h), by default half a step (1/12 h), of whatever the column spans; and one run more of a controller's pump that runs for 300 s at least.
 */
import type { RunColumns } from '@noonloop/sim-core';
import type { Lived } from '../property/span.ts';
import { distances, SHARES, TEMPERATURES } from './compare.ts';
import { HOURS } from './days.ts';
import type { ReferenceRun } from './model.ts';

/** Of steps of a minute, and of those by default. */
export const MINUTE = { sum: 0.0025, kelvin: 0.1, hours: 1 / 6, step: 1 / 60 + 1 / 120, outside: 1 };
export const DEFAULT = { sum: 0.003, kelvin: 0.25, hours: 1 / 4, step: 1 / 12, outside: 1 };
type Limits = typeof MINUTE;

/** A run of the pump at least, as a share of an hour. */
const RUN = 300 / 3600;
const cycling = (limits: Limits): Limits => ({ ...limits, step: limits.step + RUN });
/**
 * Near a balance of its columns a loop without check valve creeps in the explicit model, which looks at the drive of the step before, and rests in the
 * implicit year: hours of no flow differ by minutes a day, peaks of the standing absorber by half a kelvin.
 */
const creeping = (limits: Limits): Limits => ({ ...cycling(limits), sum: 0.006, kelvin: 0.6, hours: 1.2, outside: 18 });

const kindOf = (name: string): ((limits: Limits) => Limits) =>
  name.startsWith('no check valve') ? creeping : name.startsWith('mains, by difference') ? cycling : (limits) => limits;

/** Columns whose sums hang on the step, or on a table, more than others do. */
const OF_COLUMN: Partial<Record<keyof RunColumns, number>> = {
  // The year's relief valve lets out whole gulps; in the model each takes along what half a minute has pushed past the opening.
  loopReliefVolume: 0.02,
  // The direct drive's table is within 0.5 % of flow and power (docs/theory/pump-and-control.md).
  pumpPvEnergy: 0.005,
};
/** How much of an element's burst after a draw falls to the spare PV hangs on how long the step makes it: the year spreads it over the step. */
const OF_SPARE_PV: typeof OF_COLUMN = { heaterPvEnergy: 0.02, heaterFuel: 0.02, baselineFuel: 0.01 };

/** Columns that lie further off than they may, in words. */
function faultsOfColumns(name: string, run: Lived, reference: ReferenceRun, limits: Limits): string[] {
  const may = kindOf(name)(limits);
  const spare = reference.columns.heaterPvEnergy.some((value) => value > 0);
  return distances(run.columns, reference.columns, HOURS, may.step).flatMap(
    ({ name: column, sum, hours: outside, worst }) => {
      const most =
        (spare ? OF_SPARE_PV[column] : undefined) ??
        OF_COLUMN[column] ??
        (TEMPERATURES.includes(column) ? may.kelvin : SHARES.includes(column) ? may.hours : may.sum);
      const found = Math.abs(sum) > most ? [`${column}: ${sum} over all, at most ${most}`] : [];
      const burst = spare && column in OF_SPARE_PV ? 2 : 0;
      return outside > may.outside + burst ? [...found, `${column}: ${outside} hours; ${worst}`] : found;
    },
  );
}

const mean = (list: ArrayLike<number>): number => Array.from(list).reduce((sum, value) => sum + value, 0) / list.length;

/** The same of the columns of a second tank: means of its temperatures, heat as a share of both coils'. */
function faultsOfSecond(_: string, run: Lived, reference: ReferenceRun, limits: Limits): string[] {
  const { secondTank } = run;
  if (secondTank === undefined) return [];
  return Object.entries(reference.second).flatMap(([name, there]) => {
    const here = secondTank.columns[name as keyof typeof reference.second];
    const difference = mean(here) - mean(there);
    const [far, most] = name.endsWith('Temperature')
      ? [difference, limits.kelvin]
      : [difference / mean(reference.columns.coilHeat), limits.sum];
    return Math.abs(far) > most ? [`${name} of the second tank: ${far}, at most ${most}`] : [];
  });
}

/** Parts of the balance that do, and parts of the model that do not close. */
function faultsOfBalance(name: string, run: Lived, reference: ReferenceRun, limits: Limits): string[] {
  const most = kindOf(name)(limits).sum;
  return Object.entries(reference.balance).flatMap(([part, { in: income, out, stored }]) => {
    const found = run.balance[part as keyof typeof reference.balance];
    const off = { in: found.in - income, out: found.out - out, stored: found.stored - stored };
    return [
      ...(Math.abs(income - out - stored) < 1e-9 * income ? [] : [`${part} of the model does not close`]),
      ...Object.entries(off)
        .filter(([, far]) => !(Math.abs(far) < most * income))
        .map(([way, far]) => `${part}, ${way}: ${far / income}, less than ${most}`),
    ];
  });
}

/** All that lies further off than it may, in words. */
export const faults = (...of: Parameters<typeof faultsOfBalance>): string[] => [
  ...faultsOfColumns(...of),
  ...faultsOfSecond(...of),
  ...faultsOfBalance(...of),
];
