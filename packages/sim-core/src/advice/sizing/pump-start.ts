/** The start of a pump on its own module that delivers most in a year. */
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import type { PvModuleDesign } from '../../design/pump.ts';
import { total } from '../../physics/column.ts';
import { type PumpOnModule, pumpOnModule, pumpThresholds, supplyInLight } from '../../physics/loop/pump-in-light.ts';
import { stringParameters } from '../../physics/pv/datasheet.ts';
import { ownColumns } from '../../year/columns.ts';
import type { RunColumns } from '../../year/result.ts';
import { simulateColumns } from '../../year/simulate.ts';

/** Starts that are tried, each √2 of the one before. [W/m²] */
const STARTS = [50, 71, 100, 141, 200, 283, 400, 566] as const;
/** Places from one start to the one of half or twice its light. */
const OCTAVE = 2;

/** A year with one start. */
export interface PumpStart {
  /** Light in which the standing pump starts; `null`: in none. [W/m²] */
  readonly irradiance: number | null;
  /** Threshold of the booster that starts there; `null` on a direct drive. [W] */
  readonly startPower: number | null;
  /** Rated power of the module or modules. [W] */
  readonly modulePower: number;
  /** Heat that the draw takes out of the solar tank, the year. [J] */
  readonly delivered: number;
  /** Heat that the coil takes back out of the tank, the year. [J] */
  readonly heatGivenBack: number;
  /** Stagnation. [h] */
  readonly stagnation: number;
}

/** What the start is worth on a roof. */
export interface BestPumpStart {
  /** What was changed: the threshold of a booster (the stop along with it), or the size of the module of a direct drive. */
  readonly by: 'threshold' | 'module';
  /** The one that delivers most. */
  readonly best: PumpStart;
  /** What the design's own start brings. */
  readonly asDesigned: PumpStart;
  /** Delivered less than by the best with half its light; `null` where that was not tried. [J] */
  readonly lossAtHalf: number | null;
  /** Delivered less than by the best with twice its light; `null` where that was not tried. [J] */
  readonly lossAtTwice: number | null;
  /** All that were tried, from the earliest start. */
  readonly rows: readonly PumpStart[];
  /** The same pump and module with a controller by temperature difference besides. */
  readonly withController: PumpStart;
}

/**
 * Runs the design's year with starts from 50 to 566 W/m². A booster's threshold is moved, and its stop with it; a direct drive has none, so
 * its module is made larger or smaller.
 *
 * @param on - Pump and module; the air in which their start is reckoned.
 * @param weather - One year.
 * @returns `null` with the mains, or where a controller or a clock decides already.
 * @internal
 */
export function findPumpStart(on: PumpOnModule, weather: WeatherYear): BestPumpStart | null {
  const { design, air } = on;
  if (design.pump.drive === 'mains' || design.control.mode !== 'power') return null;
  let spare: Float64Array[] = [];
  const run = (changed: SystemDesign): PumpStart => {
    const { columns } = simulateColumns(changed, weather, {}, spare);
    spare = ownColumns(columns);
    return startOf(changed, columns, air);
  };
  const rows = STARTS.map((irradiance) => startingAt(on, irradiance))
    .filter((changed) => changed !== null)
    .map(run);
  const asDesigned = run(design);
  const all = [...rows, asDesigned];
  const best = all.reduce((a, b) => (b.delivered > a.delivered ? b : a));
  const at = rows.indexOf(best);
  const lossAt = (place: number): number | null =>
    at < 0 || rows[place] === undefined ? null : best.delivered - rows[place].delivered;
  return {
    by: design.pump.drive === 'booster' ? 'threshold' : 'module',
    best,
    asDesigned,
    lossAtHalf: lossAt(at - OCTAVE),
    lossAtTwice: lossAt(at + OCTAVE),
    rows,
    withController: run({ ...design, control: { ...design.control, mode: 'difference' } }),
  };
}

/** The design with its start moved to a light; `null` where no threshold or module does it. */
function startingAt(on: PumpOnModule, irradiance: number): SystemDesign | null {
  const { design } = on;
  const { pump, pv } = design;
  if (pump.drive === 'booster') {
    const startPower = supplyInLight(on, irradiance);
    if (!(startPower > 0 && pump.startPower > 0)) return null;
    return { ...design, pump: { ...pump, startPower, stopPower: (startPower * pump.stopPower) / pump.startPower } };
  }
  const sized = (factor: number): SystemDesign => ({ ...design, pv: { ...pv, module: scaled(pv.module, factor) } });
  const factor = sizeForStart((trial) => {
    const changed = sized(trial);
    return supplyInLight({ ...on, design: changed, module: stringParameters(changed.pv) }, irradiance);
  }, pump.motor.startCurrent);
  return factor === null ? null : sized(factor);
}

/** A module of the same cells with more or less area. */
const scaled = (module: PvModuleDesign, factor: number): PvModuleDesign => ({
  ...module,
  shortCircuitCurrent: module.shortCircuitCurrent * factor,
  maximumPowerCurrent: module.maximumPowerCurrent * factor,
  currentTemperatureCoefficient: module.currentTemperatureCoefficient * factor,
  area: module.area === null ? null : module.area * factor,
});

/** Factor from 1/16 to 16 on a module at which its current in a light, which rises with it, reaches one; by bisection of its logarithm. */
function sizeForStart(currentOf: (factor: number) => number, wanted: number): number | null {
  let low = -4;
  let high = 4;
  if (currentOf(2 ** low) >= wanted || currentOf(2 ** high) < wanted) return null;
  for (let round = 0; round < 30; round++) {
    const middle = (low + high) / 2;
    if (currentOf(2 ** middle) >= wanted) high = middle;
    else low = middle;
  }
  return 2 ** high;
}

/** What a year's columns say of its start. */
function startOf(design: SystemDesign, columns: RunColumns, air: number): PumpStart {
  const { pump, pv } = design;
  return {
    irradiance: pumpThresholds(pumpOnModule(design, air)).start,
    startPower: pump.drive === 'booster' ? pump.startPower : null,
    modulePower: pv.modules * pv.module.maximumPowerCurrent * pv.module.maximumPowerVoltage,
    delivered: total(columns.solarHeat),
    heatGivenBack: total(columns.heatGivenBack),
    stagnation: total(columns.stagnation),
  };
}
