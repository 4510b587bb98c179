// Least squares: the uncertain things that bring a run nearest to a log.
import type { GaugeLog } from '@noonloop/weather-io';
import { levenbergMarquardt } from 'ml-levenberg-marquardt';
import { inverse, Matrix } from 'ml-matrix';
import { covariance, type Expectation, expect, timeCorrelation } from './expectation.ts';
import type { Library } from './library.ts';
import { normalOf } from './normal.ts';
import { expected, type Observation, observe } from './observe.ts';
import { findSlips, SLIP_NOISE } from './slips.ts';
import { runSpan } from './span-run.ts';
import { type House, type ModelUncertainty, moved, PARAMETERS, type ReadingNoise } from './uncertainty.ts';

/** What can be fitted. */
export type FittedKey = 'eta0' | 'collectorLoss' | 'tankLoss' | 'heaterLoss' | 'draw';

/** A fit, in prior standard deviations about the design. */
interface Fit {
  readonly values: readonly number[];
  /** Covariance of the values, prior included. Shape [p × p]. */
  readonly covariance: Matrix;
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

/** Whitened rows of the fit: what a run with moved values expects, and below it the values themselves, the prior's rows. */
class Rows {
  readonly #house: House;
  readonly #library: Library;
  readonly #keys: readonly FittedKey[];
  readonly #numbers: readonly Observation[];
  readonly #whiten: Matrix;
  readonly #memory = new Map<string, Float64Array>();

  constructor(
    house: House,
    library: Library,
    keys: readonly FittedKey[],
    numbers: readonly Observation[],
    whiten: Matrix,
  ) {
    this.#house = house;
    this.#library = library;
    this.#keys = keys;
    this.#numbers = numbers;
    this.#whiten = whiten;
  }

  /** Runs made. */
  get runs(): number {
    return this.#memory.size;
  }

  whitened(values: Float64Array): number[] {
    return this.#whiten.mmul(Matrix.columnVector(Array.from(values))).to1DArray();
  }

  at(values: readonly number[]): Float64Array {
    const name = values.join();
    const known = this.#memory.get(name);
    if (known !== undefined) return known;
    const { span, uncertainty } = this.#library;
    const { design, weather, habits } = this.#keys.reduce(
      (about, key, at) => moved(about, key, Math.max(-0.9, values[at]! * uncertainty[key])),
      this.#house,
    );
    const mean = expected(runSpan(design, weather, span, habits), this.#numbers);
    const row = Float64Array.from([...this.whitened(mean), ...values]);
    this.#memory.set(name, row);
    return row;
  }
}

/** Fits. @param library - Of the healthy system; faults are not used. */
export function fitLog(
  house: House,
  log: GaugeLog,
  library: Library,
  keys: readonly FittedKey[],
  noise: ReadingNoise,
): Fit {
  const { uncertainty } = library;
  const { numbers } = observe(log);
  const n = numbers.length;
  const whole = expect(library.healthy, numbers, uncertainty, noise);
  const slips = findSlips(whole, numbers, uncertainty.model);
  const rest = withoutFitted(whole, keys, uncertainty, slips);
  const { cholesky } = normalOf(covariance(rest, numbers, timeCorrelation(numbers), uncertainty.model));
  const rows = new Rows(house, library, keys, numbers, inverse(cholesky.lowerTriangularMatrix));
  const found = rows.whitened(Float64Array.from(numbers, ({ value }) => value));
  const target = [...found, ...keys.map(() => 0)];
  const none = keys.map(() => 0);
  const { parameterValues: values } = levenbergMarquardt(
    { x: target.map((_, at) => at), y: target },
    (parameters) => {
      const row = rows.at(parameters);
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
  const mean = (row: Float64Array): number =>
    found.reduce((sum, value, at) => sum + (row[at]! - value) ** 2, 0) / Math.max(1, n);
  return {
    values,
    covariance: covarianceOf(values, rows),
    before: mean(rows.at(none)),
    after: mean(rows.at(values)),
    slips: slips === null ? 0 : slips.reduce((sum, value) => sum + value, 0),
    runs: rows.runs,
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
function slopesAt(values: readonly number[], rows: Rows): Float64Array[] {
  const base = rows.at(values);
  const shifted = (at: number, by: number) => rows.at(values.map((value, k) => (k === at ? value + by : value)));
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
function covarianceOf(values: readonly number[], rows: Rows): Matrix {
  const slopes = new Matrix(slopesAt(values, rows).map((slope) => Array.from(slope)));
  return inverse(slopes.mmul(slopes.transpose()));
}
