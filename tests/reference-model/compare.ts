/** How far a run may lie from the reference model, column by column. */
import type { RunColumns } from '@noonloop/sim-core';
import { COLUMN_NAMES } from './books.ts';

type Name = keyof RunColumns;
type Columns = Readonly<Record<Name, Float64Array>>;

/** Columns in °C: their errors are in K. */
export const TEMPERATURES: readonly Name[] = COLUMN_NAMES.filter(
  (name) => name.endsWith('Temperature') || name === 'freezingPoint',
);
/** Columns that are shares of an hour: their sums are hours. */
export const SHARES: readonly Name[] = [
  'pumpRunning',
  'noFlowInSun',
  'stagnation',
  'boiling',
  'highLimit',
  'lowPressure',
];

/** Flow that a small column is part of: what errors in it are measured by. */
const PART_OF: Partial<Record<Name, Name>> = {
  heatGivenBack: 'coilHeat',
  thermosiphonHeat: 'coilHeat',
  pipeLoss: 'collectorHeat',
  tankLoss: 'coilHeat',
  solarHeat: 'tapHeat',
  heaterHeat: 'tapHeat',
  heaterFuel: 'heaterHeat',
  heaterLoss: 'heaterHeat',
  heaterPvEnergy: 'heaterHeat',
  unfiredVolume: 'hotVolume',
  undisinfectedVolume: 'hotVolume',
  unfiredShortfall: 'tapHeat',
};

const total = (column: Float64Array): number => column.reduce((sum, value) => sum + value, 0);
const size = (column: Float64Array): number => column.reduce((sum, value) => sum + Math.abs(value), 0);
const span = (column: Float64Array): number => Math.max(...column) - Math.min(...column);

/** One column against the reference. */
export interface Distance {
  readonly name: Name;
  /** Difference of the means [K], of the hours [h], or of the sums over the whole. */
  readonly sum: number;
  /** Share of the hours that differ by more than `step` of the column's span, or of what it is part of. */
  readonly hours: number;
  readonly worst: string;
}

/** Measures every column over some hours. @param step - What a switch that falls one step otherwise may do to an hour. */
export function distances(run: Columns, reference: Columns, hours: number, step: number): Distance[] {
  return COLUMN_NAMES.map((name) => {
    const [here, there] = [run[name].subarray(0, hours), reference[name].subarray(0, hours)];
    const whole = reference[PART_OF[name] ?? name].subarray(0, hours);
    const difference = total(here) - total(there);
    const base = Math.max(size(there), size(whole));
    const width = SHARES.includes(name) ? 1 : Math.max(span(there), span(whole));
    let outside = 0;
    let [worst, at] = [0, 0];
    for (let hour = 0; hour < hours; hour++) {
      const far = Math.abs(here[hour]! - there[hour]!);
      if (far > step * width + 1e-9 * base) outside++;
      if (far > worst) [worst, at] = [far, hour];
    }
    return {
      name,
      sum: TEMPERATURES.includes(name)
        ? difference / hours
        : SHARES.includes(name) || base === 0
          ? difference
          : difference / base,
      hours: outside,
      worst: `hour ${at}: ${here[at]} against ${there[at]}`,
    };
  });
}
