import { type Fact, fact } from '../input/saying.ts';
import { HIGHEST_WIND } from '../physics/collector/quasi-dynamic.ts';
import { lowest, total } from '../physics/column.ts';
import { HIGHEST_TEMPERATURE } from '../physics/fluid/compile.ts';
import { PV_TABLE } from '../physics/pv/power-table.ts';
import type { Drivers } from './drivers.ts';
import type { Machine } from './machine.ts';
import { hoursBelowCop, hoursOffPoints } from './off-points.ts';
import type { NoticeCode, RunColumns, RunNotice } from './result.ts';

/** Power of a directly driven motor over its rated power from which a notice is given; judgement. [-] */
const MOTOR_OVERLOAD = 1.5;

/** Finds in a finished run what was extrapolated, clamped or left out. */
export function findNotices(machine: Machine): RunNotice[] {
  const found = [...ofFluids(machine), ...ofLoop(machine), ...ofLight(machine), ...ofWater(machine)];
  return found.filter((notice) => notice.hours > 0);
}

const notice = (code: NoticeCode, hours: number, facts: Record<string, Fact> = {}): RunNotice => ({
  code,
  facts,
  hours,
});

/** Hours of a column for which something holds. */
function count(column: Float64Array, test: (value: number, hour: number) => boolean): number {
  let hours = 0;
  for (let hour = 0; hour < column.length; hour++) if (test(column[hour]!, hour)) hours++;
  return hours;
}

/** Hours in which there is some of what a column holds. */
function countSome(column: Float64Array): number {
  let hours = 0;
  for (let hour = 0; hour < column.length; hour++) if (column[hour]! > 0) hours++;
  return hours;
}

function ofFluids({ columns, loop }: Machine): RunNotice[] {
  const { fluid } = loop;
  const frozen = (column: Float64Array) => count(column, (value, hour) => value < columns.freezingPoint[hour]!);
  const isExtrapolated = (outlet: number, hour: number): boolean =>
    outlet > fluid.validTo && columns.pumpRunning[hour]! > 0;
  const coldestWater = lowest(columns.tankBottomTemperature);
  const point = fact(fluid.freezingPoint, '°C');
  return [
    notice('fluid-extrapolated', count(columns.collectorOutletTemperature, isExtrapolated), {
      valid: fact(fluid.validTo, '°C'),
      held: fact(HIGHEST_TEMPERATURE, '°C'),
    }),
    notice('fluid-below-freezing', frozen(columns.absorberMinimumTemperature), { point }),
    notice('pipe-below-freezing', frozen(columns.pipeMinimumTemperature), { point }),
    notice(
      'tank-freezing',
      count(columns.tankBottomTemperature, (value) => value <= 0),
      { coldest: fact(coldestWater, '°C') },
    ),
  ];
}

function ofLoop({ columns, design }: Machine): RunNotice[] {
  const { glycolMassFraction } = design.loop;
  const left = columns.glycolMassFraction[8759]!;
  const hasThinned = left < glycolMassFraction - 1e-6;
  return [
    notice(
      'runs-by-itself',
      count(columns.thermosiphonFlow, (value) => value !== 0),
      { heat: fact(total(columns.thermosiphonHeat), 'J') },
    ),
    notice('loop-relief-valve', countSome(columns.loopReliefVolume)),
    notice('loop-pressure-low', countSome(columns.lowPressure)),
    notice(
      'glycol-thinned',
      hasThinned ? count(columns.glycolMassFraction, (value) => value < glycolMassFraction) : 0,
      { left: fact(left, '-') },
    ),
    notice('boiling', countSome(columns.boiling)),
  ];
}

function ofLight(machine: Machine): RunNotice[] {
  const { columns, design, drivers, loop } = machine;
  const { curves, drive, openFlowPower } = design.pump;
  const ends = curves?.at(-1)?.points ?? [];
  const isOverloaded = (energy: number, hour: number): boolean =>
    drive === 'direct' && energy > MOTOR_OVERLOAD * openFlowPower * 3600 * columns.pumpRunning[hour]!;
  return [
    notice('beam-without-sun', drivers.lostBeamHours),
    notice('wind-held', drivers.heldWindHours, { highest: fact(HIGHEST_WIND, 'm/s') }),
    notice('motor-overloaded', count(columns.pumpPvEnergy, isOverloaded), { times: fact(MOTOR_OVERLOAD, '1') }),
    notice('module-tables-held', drivers.heldModuleHours, {
      light: fact(PV_TABLE.mostLight, 'W/m²'),
      coldest: fact(PV_TABLE.coldest, '°C'),
      hottest: fact(PV_TABLE.warmest, '°C'),
    }),
    notice('pump-points-ended', hoursOffPoints(machine), {
      least: fact(ends[0]?.flow ?? 0, 'm³/s'),
      most: fact(ends.at(-1)?.flow ?? 0, 'm³/s'),
    }),
    notice('pump-cannot-lift', Math.ceil((loop.drain?.filling?.inVain ?? 0) / 3600), {
      lift: fact(design.loop.drainBack.lift, 'm'),
    }),
  ];
}

function ofWater(machine: Machine): RunNotice[] {
  const { columns, control, design, drivers, house } = machine;
  return [
    notice('draw-held', drivers.heldDrawHours),
    notice('heater-not-firing', countSome(columns.unfiredShortfall)),
    whileOff(columns, drivers),
    notice('heat-pump-points-ended', hoursBelowCop(machine), {
      lowest: fact(house.heater.cop?.points?.x[0] ?? 0, '°C'),
      coldest: fact(design.heater.airFrom === 'room' ? design.heater.roomTemperature : lowest(drivers.ambient), '°C'),
    }),
    notice('relief-valve', countSome(columns.reliefVolume), {
      opens: fact(design.tank.reliefTemperature, '°C'),
    }),
    notice('cooled-at-night', Math.ceil(control.cooledHours), { heat: fact(control.cooledHeat, 'J') }),
  ];
}

/** What is drawn while timer or season keep the heater off: hot water, how much of it is cool, and heat that the taps lack. */
function whileOff(columns: RunColumns, { heaterOff }: Drivers): RunNotice {
  const found = { hours: 0, hot: 0, cool: 0, missing: 0 };
  heaterOff?.forEach((off, hour) => {
    if (off === 0 || columns.hotVolume[hour] === 0) return;
    found.hours++;
    found.hot += columns.hotVolume[hour]!;
    found.cool += columns.undisinfectedVolume[hour]!;
    found.missing += Math.max(columns.tapHeatAsked[hour]! - columns.tapHeat[hour]!, 0);
  });
  return notice('heater-off', found.hours, {
    missing: fact(found.missing, 'J'),
    cool: fact(found.cool, 'm³'),
    hot: fact(found.hot, 'm³'),
  });
}
