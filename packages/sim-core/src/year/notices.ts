import { fact } from '../input/saying.ts';
import { HIGHEST_WIND } from '../physics/collector/quasi-dynamic.ts';
import { HIGHEST_TEMPERATURE } from '../physics/fluid/compile.ts';
import type { Machine } from './machine.ts';
import type { RunNotice } from './result.ts';

/** Power of a directly driven motor over its rated power from which a notice is given; judgement. [-] */
const MOTOR_OVERLOAD = 1.5;

/** Finds in a finished run what was extrapolated, clamped or left out. */
export function findNotices(machine: Machine): RunNotice[] {
  const { columns, design, drivers, fluid } = machine;
  const count = (column: Float64Array, test: (value: number, hour: number) => boolean) => column.filter(test).length;
  const thinned = columns.glycolMassFraction[8759]! < design.loop.glycolMassFraction - 1e-6;
  const coldestWater = columns.tankBottomTemperature.reduce((low, value) => Math.min(low, value));
  const taken = columns.thermosiphonHeat.reduce((sum, value) => sum + value, 0);
  const unheated = whileOff(machine);
  const motorLimit = (hour: number): number =>
    MOTOR_OVERLOAD * design.pump.openFlowPower * 3600 * columns.pumpRunning[hour]!;
  const candidates: RunNotice[] = [
    {
      code: 'fluid-extrapolated',
      facts: { valid: fact(fluid.validTo, '°C'), held: fact(HIGHEST_TEMPERATURE, '°C') },
      hours: count(
        columns.collectorOutletTemperature,
        (value, hour) => value > fluid.validTo && columns.pumpRunning[hour]! > 0,
      ),
    },
    {
      code: 'fluid-below-freezing',
      facts: { point: fact(fluid.freezingPoint, '°C') },
      hours: count(columns.absorberMinimumTemperature, (value, hour) => value < columns.freezingPoint[hour]!),
    },
    {
      code: 'pipe-below-freezing',
      facts: { point: fact(fluid.freezingPoint, '°C') },
      hours: count(columns.pipeMinimumTemperature, (value, hour) => value < columns.freezingPoint[hour]!),
    },
    {
      code: 'tank-freezing',
      facts: { coldest: fact(coldestWater, '°C') },
      hours: count(columns.tankBottomTemperature, (value) => value <= 0),
    },
    {
      code: 'runs-by-itself',
      facts: { heat: fact(taken, 'J') },
      hours: count(columns.thermosiphonFlow, (value) => value !== 0),
    },
    {
      code: 'loop-relief-valve',
      facts: {},
      hours: count(columns.loopReliefVolume, (value) => value > 0),
    },
    {
      code: 'loop-pressure-low',
      facts: {},
      hours: count(columns.lowPressure, (value) => value > 0),
    },
    {
      code: 'glycol-thinned',
      facts: { left: fact(columns.glycolMassFraction[8759]!, '-') },
      hours: thinned ? count(columns.glycolMassFraction, (value) => value < design.loop.glycolMassFraction) : 0,
    },
    {
      code: 'boiling',
      facts: {},
      hours: count(columns.boiling, (value) => value > 0),
    },
    {
      code: 'beam-without-sun',
      facts: {},
      hours: drivers.lostBeamHours,
    },
    {
      code: 'wind-held',
      facts: { highest: fact(HIGHEST_WIND, 'm/s') },
      hours: drivers.heldWindHours,
    },
    {
      code: 'motor-overloaded',
      facts: { times: fact(MOTOR_OVERLOAD, '1') },
      hours: count(columns.pumpPvEnergy, (energy, hour) => design.pump.drive === 'direct' && energy > motorLimit(hour)),
    },
    {
      code: 'module-tables-held',
      facts: { light: fact(1500, 'W/m²'), coldest: fact(-40, '°C'), hottest: fact(100, '°C') },
      hours: drivers.heldModuleHours,
    },
    {
      code: 'draw-held',
      facts: {},
      hours: drivers.heldDrawHours,
    },
    {
      code: 'heater-not-firing',
      facts: {},
      hours: count(columns.unfiredShortfall, (value) => value > 0),
    },
    {
      code: 'heater-off',
      facts: {
        missing: fact(unheated.missing, 'J'),
        cool: fact(unheated.cool, 'm³'),
        hot: fact(unheated.hot, 'm³'),
      },
      hours: unheated.hours,
    },
    {
      code: 'relief-valve',
      facts: { opens: fact(design.tank.reliefTemperature, '°C') },
      hours: count(columns.reliefVolume, (value) => value > 0),
    },
  ];
  return candidates.filter((notice) => notice.hours > 0);
}

/** What is drawn while timer or season keep the heater off: hours, hot water, how much of it is cool, and heat that the taps lack. */
function whileOff({ columns, drivers }: Machine): { hours: number; hot: number; cool: number; missing: number } {
  const found = { hours: 0, hot: 0, cool: 0, missing: 0 };
  drivers.heaterOff?.forEach((off, hour) => {
    if (off === 0 || columns.hotVolume[hour] === 0) return;
    found.hours++;
    found.hot += columns.hotVolume[hour]!;
    found.cool += columns.undisinfectedVolume[hour]!;
    found.missing += Math.max(columns.tapHeatAsked[hour]! - columns.tapHeat[hour]!, 0);
  });
  return found;
}
