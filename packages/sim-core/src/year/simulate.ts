import type { WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../design/design.ts';
import { freezingPointOf } from '../physics/fluid/mixture.ts';
import { checkArguments } from './arguments.ts';
import { closeBalance } from './balance.ts';
import { SUN_THRESHOLD } from './collect.ts';
import { requireFinite } from './finite.ts';
import { groupYears } from './groups.ts';
import { loopYear } from './loop-year.ts';
import { assemble, type Machine } from './machine.ts';
import { findNotices } from './notices.ts';
import { openRecorder } from './recorder.ts';
import type { RunResult } from './result.ts';
import { secondTankYear } from './second-tank.ts';
import { stepHour } from './step.ts';
import type { StepOptions } from './stepping.ts';

/** Hours that a run steps through. */
const HOURS = 8760;

const STEP_OPTIONS = ['stepsPerHour', 'collectorNodes', 'pipeNodes', 'own'];
const SIMULATE_OPTIONS = [...STEP_OPTIONS, 'keepTankNodes', 'stepDays'];

/** What a run keeps and how finely it steps. */
export interface SimulateOptions extends StepOptions {
  /** Keep every tank node of every hour, for pictures of the layers. Default false. */
  readonly keepTankNodes?: boolean;
  /** Days whose steps are kept too, such as `'06-20..06-22'`; both included. Default none. */
  readonly stepDays?: string;
}

/**
 * Simulates one year of a system, hour by hour, starting on 1 January.
 *
 * @param design - From `defineSystem`.
 * @param weather - From `readWeather` or of the same shape.
 * @param options - Step length and what to keep.
 * @returns Hourly columns, energy balance and notices. The same input gives the same bits.
 * @throws {@link DesignError} when an option is unknown or out of its range, design or weather is something else, or the PV data sheet has no solution.
 * @throws {@link RunFault} when a number of the year is not finite: a fault of this program.
 */
export function simulate(design: SystemDesign, weather: WeatherYear, options: SimulateOptions = {}): RunResult {
  checkArguments(design, weather, options, SIMULATE_OPTIONS);
  const machine = assemble(design, weather, options);
  const { stepDays } = options;
  const recorder = stepDays === undefined ? null : openRecorder(stepDays, machine.stepping.stepsPerHour);
  const { temperature } = machine.tank;
  const tankNodes = new Float64Array(options.keepTankNodes ? HOURS * temperature.length : 0);
  for (let hour = 0; hour < HOURS; hour++) {
    stepHour(machine, hour, recorder);
    if (options.keepTankNodes) tankNodes.set(temperature, hour * temperature.length);
  }
  requireFiniteYear(machine);
  const result = toResult(machine, design, weather, tankNodes);
  if (recorder === null) return result;
  const { before: _, ...steps } = recorder;
  return { ...result, steps };
}

function requireFiniteYear({ columns, second }: Machine): void {
  requireFinite(columns, 0, HOURS);
  if (second !== null) requireFinite(second.columns, 0, HOURS);
}

/**
 * Simulates a year for its columns alone: a study makes key figures of them and lets them go. The numbers are those of {@link simulate}.
 *
 * @param spare - Arrays of a former run's columns, to be used anew; taken out.
 * @throws As {@link simulate} does.
 */
export function simulateColumns(
  design: SystemDesign,
  weather: WeatherYear,
  options: StepOptions,
  spare: Float64Array[],
): Pick<RunResult, 'columns' | 'design'> {
  checkArguments(design, weather, options, STEP_OPTIONS);
  const machine = assemble(design, weather, options, spare);
  for (let hour = 0; hour < HOURS; hour++) stepHour(machine, hour);
  requireFiniteYear(machine);
  return { columns: machine.columns, design };
}

/** State of the system at the end of one hour. */
export interface HourState {
  /** Hour of the year, 0 to 8759. */
  readonly hour: number;
  /** Tank nodes, bottom first; a copy. [°C] */
  readonly tank: Float64Array;
  /** Absorber along the flow, inlet first; a copy. [°C] */
  readonly absorber: Float64Array;
  /** Backup heater. [°C] */
  readonly heater: number;
  /** Irradiance on the collectors, mean of the hour. [W/m²] */
  readonly irradiance: number;
  /** Volume flow in the loop, mean of the hour. [m³/s] */
  readonly loopFlow: number;
  /** Heat from the coil into the tank in the hour. [J] */
  readonly coilHeat: number;
  /** Heat that the draw took from the tank in the hour. [J] */
  readonly solarHeat: number;
}

/**
 * Steps through the year and yields the state after each hour: for lessons and animations, by the same code as `simulate`.
 *
 * @param design - From `defineSystem`.
 * @param weather - One year.
 * @param options - Step length.
 * @throws {@link DesignError} as `simulate` does.
 */
export function* steps(
  design: SystemDesign,
  weather: WeatherYear,
  options: StepOptions = {},
): Generator<HourState, void> {
  checkArguments(design, weather, options, STEP_OPTIONS);
  const machine = assemble(design, weather, options);
  const { columns, house, loop, tank } = machine;
  for (let hour = 0; hour < HOURS; hour++) {
    stepHour(machine, hour);
    requireFinite(columns, hour, hour + 1);
    yield {
      hour,
      tank: tank.temperature.slice(),
      absorber: loop.circuit.absorber.slice(),
      heater: house.heater.temperature,
      irradiance: columns.irradiance[hour]!,
      loopFlow: columns.loopFlow[hour]!,
      coilHeat: columns.coilHeat[hour]!,
      solarHeat: columns.solarHeat[hour]!,
    };
  }
}

function toResult(machine: Machine, design: SystemDesign, weather: WeatherYear, tankNodes: Float64Array): RunResult {
  const { balance } = machine.books;
  const groups = groupYears(machine);
  return {
    ...(groups === null ? {} : { groups }),
    ...(machine.second === null ? {} : { secondTank: secondTankYear(machine.second) }),
    design,
    site: weather.site,
    weatherSource: weather.source,
    weatherAssumptions: weather.assumptions,
    assumptions: machine.drivers.arrayAssumptions,
    columns: machine.columns,
    tankNodes,
    stepsPerHour: machine.drivers.stepsPerHour,
    stagnationLimit: machine.loop.stagnationLimit,
    sunThreshold: SUN_THRESHOLD,
    freezingPoint: freezingPointOf(design.loop.fluid, design.loop.glycolMassFraction),
    loop: loopYear(machine),
    balance: {
      collector: closeBalance(balance.collector),
      pipes: closeBalance(balance.pipes),
      tank: closeBalance(balance.tank),
      heater: closeBalance(balance.heater),
      baseline: closeBalance(balance.baseline),
      whole: closeBalance(balance.whole),
    },
    notices: findNotices(machine),
  };
}
