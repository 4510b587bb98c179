// What of a run wears the system.
import { MONTH_STARTS, monthlyMeans } from '../../physics/calendar.ts';
import { highest, lowest, total } from '../../physics/column.ts';
import { compileFluid, fluidDensity } from '../../physics/fluid/compile.ts';
import { bothTanks } from '../../physics/tank/tank-pair.ts';
import type { RunResult } from '../../year/result.ts';
import type { WearNumbers } from './maintenance-types.ts';

/** From here lime falls out fast and legionella dies. Common practice, no source. [°C] */
const HOT = 60;
/** Sums up a run. */
export function wearOf({ columns, design, loop, secondTank }: RunResult): WearNumbers {
  const hours = (column: Float64Array, test: (value: number) => boolean): number =>
    column.reduce((sum, value) => sum + (test(value) ? 1 : 0), 0);
  const { absorberTemperature, boiling, stagnation } = columns;
  // A collector that has boiled dry ages no fluid.
  const over = absorberTemperature.reduce(
    (sum, value, hour) => sum + (value > design.loop.fluidLimit ? 1 - boiling[hour]! : 0),
    0,
  );
  const hottestTank = Math.max(highest(columns.tankTopTemperature), secondTank?.peak ?? Number.NEGATIVE_INFINITY);
  const coldestMains = lowest(columns.mainsTemperature);
  return {
    hoursOverFluidLimit: over,
    stagnationHours: total(stagnation),
    boilingHours: total(boiling),
    hottestAbsorber: highest(absorberTemperature),
    pumpHours: total(columns.pumpRunning),
    pressureSwing: loop.highestPressure - loop.lowestPressure,
    lost: loop.lost + loop.relieved,
    madeUp: loop.madeUp,
    relieved: loop.relieved,
    tankRelieved: total(columns.reliefVolume),
    hotTankHours: hours(columns.tankTopTemperature, (value) => value > HOT),
    hotDrawHours: columns.hotVolume.reduce(
      (sum, value, hour) => sum + (value > 0 && columns.tankTopTemperature[hour]! > HOT ? 1 : 0),
      0,
    ),
    hottestTank,
    coldestMains,
    swell: swellOf(bothTanks(design.tank).volume, coldestMains, hottestTank),
    throughTank: total(columns.hotVolume),
    freezeMargin: loop.freezeMargin,
    firstFrost: firstFrost(columns.ambientTemperature),
    stagnationMonth: busiestMonth(stagnation),
  };
}

/** By how much water swells, ΔV = V (ρ_cold/ρ_hot − 1). [m³] */
export function swellOf(volume: number, cold: number, hot: number): number {
  const water = compileFluid('water', 0);
  return volume * Math.max(0, fluidDensity(water, Math.max(0, cold)) / fluidDensity(water, hot) - 1);
}

/** Monthly sums of a column. */
function monthly(column: Float64Array): number[] {
  return MONTH_STARTS.slice(0, 12).map((start, month) => total(column.subarray(start, MONTH_STARTS[month + 1])));
}

const indexOfLargest = (values: readonly number[]): number => values.indexOf(Math.max(...values));

function busiestMonth(column: Float64Array): number | null {
  const sums = monthly(column);
  return Math.max(...sums) > 0 ? indexOfLargest(sums) : null;
}

/** The year is a ring: from the end of its warmest month on. */
function firstFrost(air: Float64Array): number | null {
  const from = MONTH_STARTS[indexOfLargest(monthlyMeans(air)) + 1]!;
  for (let step = 0; step < 8760; step++) {
    const hour = (from + step) % 8760;
    if (air[hour]! < 0) return hour;
  }
  return null;
}
