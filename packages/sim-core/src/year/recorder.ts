/** What a run keeps of some days at its own step. */
import { DesignError, quote } from '../input/errors.ts';
import { highest } from '../physics/column.ts';
import { readDayRange } from '../physics/draw/days.ts';
import { tankHeat } from '../physics/tank/tank.ts';
import type { Machine } from './machine.ts';
import type { RunColumns, RunSteps, StepColumns } from './result.ts';

/** Columns of the hour that grow by each step's energy or volume. */
const STEP_SUMS = [
  'pumpPvEnergy',
  'pumpElectricity',
  'collectorHeat',
  'pipeLoss',
  'coilHeat',
  'tankLoss',
  'solarHeat',
  'hotVolume',
  'tapHeat',
  'heaterHeat',
] as const satisfies (keyof RunColumns)[];

/** Columns of the hour that grow by each step's mean times its share of the hour. */
const STEP_MEANS = ['irradiance', 'pvIrradiance', 'loopFlow', 'pumpRunning'] as const satisfies (keyof RunColumns)[];

/** States at the end of a step. */
const STEP_STATES = [
  'absorberTemperature',
  'tankTopTemperature',
  'tankMeanTemperature',
  'tankBottomTemperature',
] as const;

/** Keeps the steps of some days. */
export interface Recorder extends RunSteps {
  /** Where each of {@link STEP_SUMS}, then of {@link STEP_MEANS}, stood after the step before. */
  readonly before: Float64Array;
}

/**
 * Makes room for the steps of some days.
 *
 * @param days - `'06-20..06-22'`, both included, not past the turn of the year.
 * @throws {@link DesignError} for what is no such range.
 */
export function openRecorder(days: string, stepsPerHour: number): Recorder {
  const range = readDayRange(days);
  if (range === null || range.last < range.first) {
    const expected = 'days such as "06-20..06-22", first before last';
    const remedy = 'Give month and day of the first and the last day; split a range at the turn of the year.';
    throw new DesignError([{ path: 'options.stepDays', found: quote(days), expected, remedy }]);
  }
  const hours = 24 * (range.last - range.first + 1);
  const names = [...STEP_SUMS, ...STEP_MEANS, ...STEP_STATES, 'ambientTemperature'] as const;
  const columns = Object.fromEntries(names.map((name) => [name, new Float64Array(hours * stepsPerHour)]));
  return {
    firstHour: 24 * range.first,
    hours,
    stepsPerHour,
    columns: columns as unknown as StepColumns,
    before: new Float64Array(STEP_SUMS.length + STEP_MEANS.length),
  };
}

/**
 * Keeps one step of an hour: the step that is over, of `steps` in the hour. Where the hour is taken in fewer steps than the run's own, as
 * in the dark, the step's sums are spread evenly over those that it stands for. Allocates nothing.
 */
export function recordStep(machine: Machine, recorder: Recorder, hour: number, step: number, steps: number): void {
  const { firstHour, hours, stepsPerHour } = recorder;
  if (hour < firstHour || hour >= firstHour + hours) return;
  if (step === 0) recorder.before.fill(0);
  const start = (hour - firstHour) * stepsPerHour;
  const from = start + Math.floor((step * stepsPerHour) / steps);
  const to = start + Math.floor(((step + 1) * stepsPerHour) / steps);
  keepSums(machine, recorder, hour, from, to);
  keepStates(machine, recorder, hour, from, to);
}

function keepSums({ columns }: Machine, recorder: Recorder, hour: number, from: number, to: number): void {
  const { before, stepsPerHour } = recorder;
  const sums = STEP_SUMS.length;
  for (let index = 0; index < before.length; index++) {
    const name = index < sums ? STEP_SUMS[index]! : STEP_MEANS[index - sums]!;
    const now = columns[name][hour]!;
    const share = ((now - before[index]!) * (index < sums ? 1 : stepsPerHour)) / (to - from);
    recorder.columns[name].fill(share, from, to);
    before[index] = now;
  }
}

function keepStates(
  { drivers, loop, tank }: Machine,
  { columns }: Recorder,
  hour: number,
  from: number,
  to: number,
): void {
  const { temperature } = tank;
  const top = temperature.length - 1;
  columns.absorberTemperature.fill(highest(loop.circuit.absorber), from, to);
  columns.tankTopTemperature.fill(temperature[top]!, from, to);
  columns.tankMeanTemperature.fill(tankHeat(tank) / (tank.nodeCapacity * (top + 1)), from, to);
  columns.tankBottomTemperature.fill(temperature[0]!, from, to);
  columns.ambientTemperature.fill(drivers.ambient[hour]!, from, to);
}
