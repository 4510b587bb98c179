// A run of some weeks instead of a year: what the gauges would show, hour by hour.
import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { ownColumns } from '../../year/columns.ts';
import { assemble } from '../../year/machine.ts';
import { stepHour } from '../../year/step.ts';

/** Hours of the year, from the first to before the last. */
export interface Span {
  readonly from: number;
  readonly to: number;
}

/** What the gauges would show; value i is that of the end of hour `from + i`, or of that hour as a whole. */
export interface Trace {
  readonly from: number;
  /** Tank top. [°C] */
  readonly tankTopTemperature: Float64Array;
  /** Hot pipe near the tank. [°C] */
  readonly flowTemperature: Float64Array;
  /** Cold pipe near the tank. [°C] */
  readonly returnTemperature: Float64Array;
  /** [Pa gauge] */
  readonly loopPressure: Float64Array;
  /** Share of the hour in which the pump moves fluid. [-] */
  readonly pumpRuns: Float64Array;
  /** Fuel of the heater since the start of the span. [J] */
  readonly heaterMeter: Float64Array;
  /** What holds the heat at the end. */
  readonly end: StoredHeat;
}

/** What a run hands on to one that follows it. */
interface StoredHeat {
  /** Nodes of the tank, bottom first. [°C] */
  readonly tank: Float64Array;
  /** [°C] */
  readonly heater: number;
}

/** What differs from the design in ways that it has no field for. */
export interface Habits {
  /** Warmer mains. [K] */
  readonly mains: number;
  /** Factor on the water of each day. Shape [365]; `null`: 1. */
  readonly dailyDraw: Float64Array | null;
}

/** As the design says. */
export const PLAIN_HABITS: Habits = { mains: 0, dailyDraw: null };

/** Steps in an hour of these runs: readings are coarser than what finer steps would change. Judgement. */
const CHECK_STEPS = 6;

/** Indoor nodes of the hot and the cold pipe, with one node for each of the four sections. */
const HOT_INDOORS = 1;
const COLD_INDOORS = 2;

/** Arrays of the last run's columns, of which a trace has copies: a library is some 170 runs, and each would fill 4 MB anew. */
let spare: Float64Array[] = [];

/** Runs a span from the design's initial tank temperature, or from what another run left. */
export function runSpan(
  design: SystemDesign,
  weather: WeatherYear,
  { from, to }: Span,
  habits = PLAIN_HABITS,
  { stepsPerHour = CHECK_STEPS, start = null }: { stepsPerHour?: number; start?: StoredHeat | null } = {},
): Trace {
  const machine = assemble(design, weather, { stepsPerHour, pipeNodes: 1 }, spare);
  const { columns, drivers, house, loop, tank } = machine;
  // Both are the run's own.
  const { mains, tapVolume } = drivers;
  const { circuit } = loop;
  const { heater } = house;
  if (start !== null) {
    tank.temperature.set(start.tank);
    heater.temperature = start.heater;
  }
  const length = to - from;
  const column = () => new Float64Array(length);
  const flowTemperature = column();
  const returnTemperature = column();
  const heaterMeter = column();
  for (let hour = from; hour < to; hour++) {
    mains[hour]! += habits.mains;
    if (habits.dailyDraw !== null) tapVolume[hour]! *= habits.dailyDraw[Math.trunc(hour / 24)]!;
  }
  let fuel = 0;
  for (let hour = from; hour < to; hour++) {
    stepHour(machine, hour);
    fuel += columns.heaterFuel[hour]!;
    flowTemperature[hour - from] = circuit.pipe[HOT_INDOORS]!;
    returnTemperature[hour - from] = circuit.pipe[COLD_INDOORS]!;
    heaterMeter[hour - from] = fuel;
  }
  spare = ownColumns(columns);
  return {
    from,
    tankTopTemperature: columns.tankTopTemperature.slice(from, to),
    flowTemperature,
    returnTemperature,
    loopPressure: columns.loopPressure.slice(from, to),
    pumpRuns: columns.pumpRunning.slice(from, to),
    heaterMeter,
    end: { tank: tank.temperature.slice(), heater: heater.temperature },
  };
}
