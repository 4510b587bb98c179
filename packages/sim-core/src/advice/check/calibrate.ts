import type { GaugeLog, WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { choice, count, defaulted } from '../../input/field.ts';
import { fact, type Saying, say } from '../../input/saying.ts';
import * as z from '../../input/zod.ts';
import { changeCollectors } from '../../physics/collector/groups.ts';
import { withLossTimes } from '../../physics/tank/tank-pair.ts';
import { type FittedKey, fitLog } from './calibrate-fit.ts';
import { buildLibrary } from './library.ts';
import { checkedSpan, thinned } from './log-input.ts';
import { type ModelUncertainty, noiseSchema, plainHouse, uncertaintySchema } from './uncertainty.ts';

const KEYS = ['eta0', 'collectorLoss', 'tankLoss', 'heaterLoss', 'draw'] as const;

const optionsSchema = z.strictObject({
  fit: z.array(choice(KEYS)).min(1).max(KEYS.length).default(['eta0', 'tankLoss', 'draw']),
  uncertainty: uncertaintySchema.prefault({}),
  noise: noiseSchema.prefault({}),
  members: defaulted(count(4, 100), 16, '', 'judgement'),
  seed: defaulted(count(0, 2 ** 31), 1, '', 'judgement'),
});

/**
 * What to fit (`eta0`, `collectorLoss`, `tankLoss`, `heaterLoss`, `draw`; default eta0, tankLoss and draw) and how uncertain it is
 * before: see `ModelUncertainty` and `ReadingNoise`.
 */
export type CalibrateOptions = z.input<typeof optionsSchema>;

/** One fitted quantity. */
export interface CalibratedParameter {
  /** Name in the options. */
  readonly key: FittedKey;
  /** Place in the design. */
  readonly path: string;
  /** Unit of the values. */
  readonly unit: string;
  /** As the design has it. */
  readonly before: number;
  /** Standard deviation before the log. */
  readonly beforeDeviation: number;
  /** As the log and what was known before have it. */
  readonly value: number;
  /** Standard deviation after the log. */
  readonly deviation: number;
  /** With a chance of 95 % the true value lies above {@link low}. */
  readonly low: number;
  /** And below {@link high}. */
  readonly high: number;
  /** Whether the log tells it: the deviation fell to 0.7 of what it was, or less. */
  readonly told: boolean;
}

/** All notes of a calibration. */
export const CALIBRATION_NOTES = [
  'runs-made',
  'readings-left-out',
  'slips-left-out',
  'told-together',
  'sun-shows-as-eta0',
  'fits-badly',
] as const;
/** What to know about a calibration. */
export type CalibrationNoteCode = (typeof CALIBRATION_NOTES)[number];

/** Outcome of a calibration. */
export interface Calibration {
  /** In the order of `fit`. */
  readonly parameters: readonly CalibratedParameter[];
  /** Correlation of the fitted values. Shape [p][p]. [-] */
  readonly correlation: readonly (readonly number[])[];
  /** The design with the told values; what the log cannot tell stays as it was. */
  readonly design: SystemDesign;
  /** Mean square of the deviations under the design as it was; about 1 where it fits. [-] */
  readonly fitBefore: number;
  /** And under all fitted values. [-] */
  readonly fitAfter: number;
  /** What to know about the result. */
  readonly notes: readonly Saying<CalibrationNoteCode>[];
}

/** Fewest readings that are worth a fit. Judgement. */
const FEWEST = 8;
/** A log tells what it narrows to this share or less. Judgement. */
const TOLD = 0.7;
/** Correlation from which two values cannot be told apart well. Judgement. */
const ENTANGLED = 0.8;
/** Mean square from which the fit is called bad. Judgement. */
const BAD_FIT = 2;

/**
 * Fits a few uncertain quantities of a design to a log of gauge readings, with their uncertainty, by least squares weighted with the
 * covariance of the readings (docs/theory/calibrate.md). What was known before enters with its uncertainty, so that a log that
 * tells nothing leaves it as it was, and says so.
 *
 * A faulty system bends the values: run `checkLog` first. Of an array of several groups the collectors are multiplied by one factor; values are those
 * of the array's own.
 *
 * @param design - From `defineSystem`.
 * @param weather - Of the very weeks of the log.
 * @param log - From `readLog` or of the same shape: 8 readings or more within 150 days.
 * @param options - What to fit, and what is uncertain by how much.
 * @throws {@link DesignError} listing all faults of log and options at once, by path.
 * @example
 * const { parameters, design: fitted } = calibrate(design, weather, log, { fit: ['eta0', 'draw'] });
 */
export function calibrate(
  design: SystemDesign,
  weather: WeatherYear,
  log: GaugeLog,
  options: CalibrateOptions = {},
): Calibration {
  const { fit: asked, uncertainty, noise, members, seed } = checkInput(optionsSchema, options);
  const keys = [...new Set(asked)];
  const span = checkedSpan(log, FEWEST);
  const { log: used, every } = thinned(log);
  const library = buildLibrary(design, weather, span, { uncertainty, members, seed, faults: false });
  const fit = fitLog(plainHouse(design, weather), used, library, keys, noise);
  const deviations = keys.map((_, at) => Math.sqrt(fit.covariance.get(at, at)));
  const parameters = keys.map((key, at) => parameterOf(key, design, uncertainty, fit.values[at]!, deviations[at]!));
  const correlation = keys.map((_, i) =>
    keys.map((_, j) => fit.covariance.get(i, j) / (deviations[i]! * deviations[j]!)),
  );
  const fitted = keys.reduce((about, key, at) => {
    return parameters[at]!.told ? withFactor(about, key, 1 + fit.values[at]! * uncertainty[key]) : about;
  }, design);
  return {
    parameters,
    correlation,
    design: fitted,
    fitBefore: fit.before,
    fitAfter: fit.after,
    notes: notesOf(keys, correlation, fit, every),
  };
}

function parameterOf(
  key: FittedKey,
  design: SystemDesign,
  uncertainty: ModelUncertainty,
  value: number,
  deviation: number,
): CalibratedParameter {
  const { path, unit, before } = placeOf(key, design);
  const prior = uncertainty[key] * before;
  const after = before + value * prior;
  const spread = deviation * prior;
  return {
    key,
    path,
    unit,
    before,
    beforeDeviation: prior,
    value: after,
    deviation: spread,
    low: after - 1.96 * spread,
    high: after + 1.96 * spread,
    told: deviation <= TOLD,
  };
}

function placeOf(key: FittedKey, { array, draw, heater, tank }: SystemDesign) {
  switch (key) {
    case 'eta0':
      return { path: 'array.collector.eta0', unit: '-', before: array.collector.eta0 };
    case 'collectorLoss':
      return { path: 'array.collector.a1', unit: 'W/(m²·K)', before: array.collector.a1 };
    case 'tankLoss':
      return { path: 'tank.lossCoefficient', unit: 'W/K', before: tank.lossCoefficient };
    case 'heaterLoss':
      return { path: 'heater.lossCoefficient', unit: 'W/K', before: heater.lossCoefficient };
    case 'draw':
      return { path: 'draw.dailyVolume', unit: 'm³', before: draw.dailyVolume };
  }
}

/** The design with one quantity multiplied; a2 goes with a1, and every group with the array. */
function withFactor(design: SystemDesign, key: FittedKey, factor: number): SystemDesign {
  const { draw, heater, tank } = design;
  switch (key) {
    case 'eta0':
      return changeCollectors(design, ({ eta0 }) => ({ eta0: eta0 * factor }));
    case 'collectorLoss':
      return changeCollectors(design, ({ a1, a2 }) => ({ a1: a1 * factor, a2: a2 * factor }));
    case 'tankLoss':
      return { ...design, tank: withLossTimes(tank, factor) };
    case 'heaterLoss':
      return { ...design, heater: { ...heater, lossCoefficient: heater.lossCoefficient * factor } };
    case 'draw': {
      const scale = (values: readonly number[]) => values.map((value) => value * factor);
      const dailyVolume = draw.dailyVolume * factor;
      if (draw.volumes !== null) {
        return { ...design, draw: { ...draw, dailyVolume, volumes: scale(draw.volumes) } };
      }
      // A profile that keeps its own heat has no volume to change: its days are scaled.
      return draw.keepsProfileHeat
        ? { ...design, draw: { ...draw, weekdayFactors: scale(draw.weekdayFactors) } }
        : { ...design, draw: { ...draw, dailyVolume } };
    }
  }
}

function notesOf(
  keys: readonly FittedKey[],
  correlation: readonly (readonly number[])[],
  fit: { readonly before: number; readonly after: number; readonly slips: number; readonly runs: number },
  every: number,
): Saying<CalibrationNoteCode>[] {
  const notes: Saying<CalibrationNoteCode>[] = [say('runs-made', { runs: fact(fit.runs, '1') })];
  if (every > 1) notes.push(say('readings-left-out', { every: fact(every, '1') }));
  if (fit.slips > 0) notes.push(say('slips-left-out', { slips: fact(fit.slips, '1') }));
  keys.forEach((key, i) => {
    keys.slice(i + 1).forEach((other, k) => {
      const correlated = correlation[i]![i + 1 + k]!;
      if (Math.abs(correlated) >= ENTANGLED)
        notes.push(say('told-together', { first: key, second: other, correlation: fact(correlated, '1') }));
    });
  });
  if (keys.includes('eta0')) notes.push(say('sun-shows-as-eta0'));
  if (fit.after > BAD_FIT) notes.push(say('fits-badly'));
  return notes;
}
