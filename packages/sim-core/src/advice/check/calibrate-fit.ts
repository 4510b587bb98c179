// Least squares: the uncertain things that bring a run nearest to a log.
import type { GaugeLog } from '@noonloop/weather-io';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { covariance, type Expectation, expect, timeCorrelation } from './expectation.ts';
import type { Library } from './library.ts';
import { factorize, invert, solveLower } from './matrix.ts';
import { expected, observe } from './observe.ts';
import { findSlips, SLIP_NOISE } from './slips.ts';
import { runSpan } from './span-run.ts';
import { type House, type ModelUncertainty, moved, PARAMETERS, type ReadingNoise } from './uncertainty.ts';

/** What can be fitted. */
export type FittedKey = 'eta0' | 'collectorLoss' | 'tankLoss' | 'heaterLoss' | 'draw';

/** A fit, in prior standard deviations about the design. */
export interface Fit {
  readonly values: readonly number[];
  /** Covariance of the values, prior included. Shape [p × p]. */
  readonly covariance: Float64Array;
  /** Mean square of the whitened residuals of the design and of the fit. */
  readonly before: number;
  readonly after: number;
  /** Numbers left out as slips of the pen. */
  readonly slips: number;
  readonly runs: number;
}

/** Rounds of the fit; the runs are nearly linear within their uncertainty, and two or three do. */
const ROUNDS = 4;
/** Step of the numerical slopes, in prior standard deviations: above what the steps of a run scatter. */
const STEP = 0.5;
/** A fit stays within so many prior standard deviations. */
const FARTHEST = 4;

/** Fits. @param library - Of the sound system; faults are not used. */
export function fitLog(
  house: House,
  log: GaugeLog,
  library: Library,
  keys: readonly FittedKey[],
  uncertainty: ModelUncertainty,
  noise: ReadingNoise,
): Fit {
  const { numbers } = observe(log);
  const n = numbers.length;
  const whole = expect(library.sound, numbers, uncertainty, noise);
  const slips = findSlips(whole, numbers, uncertainty.model);
  const lower = covariance(
    withoutFitted(whole, keys, uncertainty, slips),
    numbers,
    timeCorrelation(numbers),
    uncertainty.model,
  );
  factorize(lower, n);

  let runs = 0;
  const memory = new Map<string, Float64Array>();
  /** Whitened expectation and, below it, the values themselves: the prior's rows. */
  const rows = (values: readonly number[]): Float64Array => {
    const name = values.join();
    const known = memory.get(name);
    if (known !== undefined) return known;
    const { design, weather, habits } = keys.reduce(
      (about, key, at) => moved(about, key, Math.max(-0.9, values[at]! * uncertainty[key])),
      house,
    );
    runs++;
    const whitened = expected(runSpan(design, weather, library.span, habits), numbers);
    solveLower(lower, n, whitened);
    const all = Float64Array.from([...whitened, ...values]);
    memory.set(name, all);
    return all;
  };
  const found = Float64Array.from(numbers, ({ value }) => value);
  solveLower(lower, n, found);
  const target = [...found, ...keys.map(() => 0)];
  const none = keys.map(() => 0);
  const { parameterValues: values } = levenbergMarquardt(
    { x: target.map((_, at) => at), y: target },
    (parameters) => {
      const row = rows(parameters);
      return (at) => row[at]!;
    },
    {
      initialValues: none,
      damping: 0.01,
      jacobianFunction: (parameters) => {
        const columns = slopesAt(parameters, rows);
        return (at) => columns.map((column) => column[at]!);
      },
      maxIterations: ROUNDS,
      minValues: keys.map(() => -FARTHEST),
      maxValues: keys.map(() => FARTHEST),
      errorTolerance: 1e-9,
    },
  );
  const mean = (row: Float64Array): number => {
    let sum = 0;
    for (let at = 0; at < n; at++) sum += (row[at]! - found[at]!) ** 2;
    return sum / Math.max(1, n);
  };
  return {
    values,
    covariance: covarianceOf(values, rows),
    before: mean(rows(none)),
    after: mean(rows(values)),
    slips: slips === null ? 0 : slips.reduce((sum, value) => sum + value, 0),
    runs,
  };
}

/** What else is uncertain stays in the band; the sun of the file does what eta0 does and is not fitted with it. */
function withoutFitted(
  whole: Expectation,
  keys: readonly FittedKey[],
  { eta0, sun }: ModelUncertainty,
  slips: Uint8Array | null,
): Expectation {
  const slopes = whole.slopes.map((slope, at) => {
    const key = PARAMETERS[at];
    if (key === undefined || !(keys as readonly string[]).includes(key)) return slope;
    return slope.map((value) => (key === 'eta0' ? (value * sun) / Math.hypot(eta0, sun) : 0));
  });
  const reading = whole.reading.map((value, at) => value * (slips?.[at] === 1 ? SLIP_NOISE ** 2 : 1));
  return { ...whole, slopes, reading };
}

/**
 * Slopes of the rows. Of the one ahead and the one behind the smaller counts, and none where they differ in sign (minmod): an event
 * that a step happens to cross, such as the loop boiling once, is no slope and must not pass for knowledge.
 */
function slopesAt(values: readonly number[], rows: (values: readonly number[]) => Float64Array): Float64Array[] {
  const base = rows(values);
  const shifted = (at: number, by: number) => rows(values.map((value, k) => (k === at ? value + by : value)));
  return values.map((_, at) => {
    const ahead = shifted(at, STEP);
    const behind = shifted(at, -STEP);
    return base.map((value, row) => {
      const [a, b] = [ahead[row]! - value, value - behind[row]!];
      return a * b <= 0 ? 0 : (Math.sign(a) * Math.min(Math.abs(a), Math.abs(b))) / STEP;
    });
  });
}

/** (Jᵀ J)⁻¹ at the solution. */
function covarianceOf(values: readonly number[], rows: (values: readonly number[]) => Float64Array): Float64Array {
  const p = values.length;
  const slopes = slopesAt(values, rows);
  const normal = new Float64Array(p * p);
  for (let i = 0; i < p; i++) {
    for (let j = 0; j < p; j++) {
      normal[i * p + j] = slopes[i]!.reduce((sum, value, row) => sum + value * slopes[j]![row]!, 0);
    }
  }
  factorize(normal, p);
  return invert(normal, p);
}
