import { highest, lowest, total } from '../physics/column.ts';
import { burstProtection } from '../physics/fluid/burst.ts';
import type { Drain } from '../physics/loop/drain.ts';
import { steamReach } from '../physics/loop/vessel-need.ts';
import type { DrainYear, LoopYear } from './loop-result.ts';
import type { Machine } from './machine.ts';

/** A pipe that lacks less than this of being full of steam is full: rounding. [-] */
const FULL = 1e-9;

/** Sums up what the year did to the loop's fluid and pressure. */
export function loopYear(machine: Machine): LoopYear {
  const { columns, design, loop } = machine;
  const { ledger, pressure } = loop;
  const coldestAbsorber = lowest(columns.absorberMinimumTemperature);
  const coldestPipe = lowest(columns.pipeMinimumTemperature);
  const coldestPart = Math.min(coldestAbsorber, coldestPipe);
  const { airPressure, mostPipeSteam, steamLine } = pressure;
  const steamLength = mostPipeSteam / steamLine.bore;
  return {
    ...(loop.drain === null ? {} : { drain: drainYear(loop.drain) }),
    airPressure,
    steam: steamReach(design, airPressure),
    longestSteam: steamLength >= (1 - FULL) * steamLine.length ? steamLine.length : steamLength,
    lowestPressure: lowest(columns.loopPressure),
    highestPressure: highest(columns.loopMaximumPressure),
    lost: ledger.leaked,
    relieved: total(columns.loopReliefVolume),
    madeUp: ledger.madeUp,
    circulationFails: first(columns.lowPressure, (share) => share > 0),
    protectionEnds: first(columns.freezingPoint, (point) => point > coldestPart),
    coldestAbsorber,
    coldestPipe,
    ...freezing(machine),
    burstPoint: burstProtection(design.loop.fluid, pressure.glycol / pressure.mass),
  };
}

const drainYear = ({ content, filling, flashes, heatBack, heatLeft, times }: Drain): DrainYear => ({
  times,
  flashes,
  content,
  heatLeft,
  heatBack,
  fillingTime: filling?.time ?? 0,
  liftedInVain: filling?.inVain ?? 0,
});

/** Hours below freezing point and burst point. */
function freezing({ columns, design }: Machine) {
  const {
    absorberMinimumTemperature: absorber,
    pipeMinimumTemperature: pipe,
    freezingPoint,
    glycolMassFraction,
  } = columns;
  const counts = {
    freezeMargin: Number.POSITIVE_INFINITY,
    freezeMarginHour: 0,
    absorberFreezingHours: 0,
    pipeFreezingHours: 0,
    deepestFreezing: 0,
    burstHours: 0,
  };
  let mixture = -1;
  let burst = 0;
  for (let hour = 0; hour < freezingPoint.length; hour++) {
    const depth = freezingPoint[hour]! - Math.min(absorber[hour]!, pipe[hour]!);
    if (-depth < counts.freezeMargin) {
      counts.freezeMargin = -depth;
      counts.freezeMarginHour = hour;
    }
    if (depth <= 0) continue;
    if (absorber[hour]! < freezingPoint[hour]!) counts.absorberFreezingHours++;
    if (pipe[hour]! < freezingPoint[hour]!) counts.pipeFreezingHours++;
    if (depth > counts.deepestFreezing) counts.deepestFreezing = depth;
    if (glycolMassFraction[hour] !== mixture) {
      mixture = glycolMassFraction[hour]!;
      burst = burstProtection(design.loop.fluid, mixture);
    }
    if (freezingPoint[hour]! - depth < burst) counts.burstHours++;
  }
  return counts;
}

function first(column: Float64Array, test: (value: number) => boolean): number | null {
  const hour = column.findIndex(test);
  return hour < 0 ? null : hour;
}
