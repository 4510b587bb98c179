// How well each cause explains a log: its likelihood over degrees and times of beginning, and a weight from it.
import { CAUSES, type CauseCode } from './causes.ts';
import { blend, covariance, type Expectation, expect, timeCorrelation } from './expectation.ts';
import { GAUGE_NAMES, OFFSETS, STUCK } from './gauges.ts';
import type { FaultRuns, Library } from './library.ts';
import { dot, factorize, halfLogDeterminant, solveLower } from './matrix.ts';
import { MEASURED, type MeasuredKey, type Observation, type Observations, runningChance } from './observe.ts';
import { findSlips, SLIP_CHANCE, SLIP_NOISE } from './slips.ts';
import type { ReadingNoise } from './uncertainty.ts';

/** A cause in one form, degree and time of beginning. */
export interface Explanation {
  readonly cause: CauseCode;
  readonly words: string;
  /** Hour from which it holds; `null`: all through the log. [h] */
  readonly since: number | null;
  /** For a gauge that is wrong. */
  readonly sensor: MeasuredKey | null;
  readonly logLikelihood: number;
  /** Share of the cause's prior weight. */
  readonly prior: number;
  readonly expectation: Expectation;
  /** Chance of a running pump at each look. */
  readonly running: Float64Array;
  /** Numbers that it takes for slips of the pen. Shape [n]. */
  readonly slips: Uint8Array;
}

/** Outcome of the weighing. */
export interface Weighing {
  /** Weights of the causes; they add up to 1. */
  readonly weights: Readonly<Record<CauseCode, number>>;
  /** Best explanation of each cause that could be tried. */
  readonly best: ReadonlyMap<CauseCode, Explanation>;
  readonly sound: Explanation;
}

/** Weight of "nothing wrong" before the log is read; the rest is shared alike by the causes. Judgement. */
const PRIOR_HEALTHY = 0.5;
/** A fault was there before the log began with this weight; else it began within it. Judgement. */
const PRIOR_BEFORE = 0.5;
/** Shares of the log at which it may have begun. */
const BEGINNINGS = [1 / 3, 2 / 3];
/** Time in which the tank turns from sound to faulty. Judgement. [h] */
const TURNING = 24;

/**
 * Power to which the likelihood is taken: readings have more in common than the covariance says, so that they tell less than as
 * many independent ones. Judgement, from logs of the development seeds. [-]
 */
const TRUST = 0.7;
/** Degrees that are tried between mild (0) and severe (1), and the spread of those that each stands for: half over √12. */
const DEGREES = [0, 0.5, 1];
const DEGREE_SPREAD = 0.5 / Math.sqrt(12);

/** Weighs all causes. */
export function weigh(library: Library, observations: Observations, noise: ReadingNoise): Weighing {
  const none = new Uint8Array(observations.numbers.length);
  const scales = new Scales(library, observations, noise);
  scales.load(none);
  // A slip of the pen must neither look like a fault nor hide one: what stands out alone under the sound system, or under the
  // likeliest fault, is tried as a slip, at a price.
  for (const { expectation } of likeliest(scales.sumUp())) {
    const slips = findSlips(expectation, observations.numbers, library.uncertainty.model);
    if (slips !== null) scales.load(slips);
  }
  return scales.sumUp();
}

/** The sound system and the likeliest fault. */
function likeliest({ best, sound, weights }: Weighing): Explanation[] {
  const faults = [...best.values()].filter(({ cause }) => cause !== 'healthy');
  const fault = faults.reduce((a, b) => (weights[b.cause] > weights[a.cause] ? b : a));
  return [sound, fault];
}

/** Triangle of a covariance, and half the logarithm of its determinant. */
interface Factor {
  readonly lower: Float64Array;
  readonly halfLog: number;
}

/** One weighing. */
class Scales {
  readonly #library: Library;
  readonly #numbers: readonly Observation[];
  readonly #observations: Observations;
  readonly #noise: ReadingNoise;
  #slips: Uint8Array;
  readonly #correlation: Float64Array;
  readonly #beginnings: readonly (number | null)[];
  readonly #explanations: Explanation[] = [];

  constructor(library: Library, observations: Observations, noise: ReadingNoise) {
    this.#library = library;
    this.#observations = observations;
    this.#numbers = observations.numbers;
    this.#noise = noise;
    this.#slips = new Uint8Array(this.#numbers.length);
    this.#correlation = timeCorrelation(this.#numbers);
    const hours = [...this.#numbers, ...observations.looks].map(({ hour }) => hour);
    const first = Math.min(...hours);
    const last = Math.max(...hours);
    this.#beginnings = [null, ...BEGINNINGS.map((share) => first + share * (last - first))];
  }

  /** Tries every explanation, with some numbers taken for slips. */
  load(slips: Uint8Array): void {
    this.#slips = slips;
    const { sound, faults, uncertainty } = this.#library;
    const { looks } = this.#observations;
    const expectSound = expect(sound, this.#numbers, uncertainty, this.#noise);
    const soundRuns = runningChance(sound.base, looks, this.#noise.pump);
    const soundFactor = this.#factorOf(expectSound);
    const healthy = { cause: 'healthy', words: '', sensor: null, prior: 1, since: null, running: soundRuns } as const;
    this.#note(healthy, expectSound, this.#fit(soundFactor, expectSound.mean));
    const forms = new Map<CauseCode, number>();
    for (const { fault } of faults) forms.set(fault.cause, (forms.get(fault.cause) ?? 0) + 1);
    for (const runs of faults) this.#tryFault(runs, forms.get(runs.fault.cause)!, expectSound, soundRuns);
    this.#tryGauges(expectSound, soundFactor, soundRuns);
  }

  /** One fault in all its degrees and times of beginning. */
  #tryFault(
    { fault, traces, family }: FaultRuns,
    forms: number,
    expectSound: Expectation,
    soundRuns: Float64Array,
  ): void {
    const { looks } = this.#observations;
    const { sound, uncertainty } = this.#library;
    const severe = expect(family, this.#numbers, uncertainty, this.#noise);
    const mild = traces.length === 1 ? severe : expect(sound, this.#numbers, uncertainty, this.#noise, traces[0]!);
    const degrees = traces.length === 1 ? [1] : DEGREES;
    const beginnings = fault.suddenly ? this.#beginnings : [null];
    // Any degree between two of those that are tried is as likely.
    const between = severe.mean.map((value, at) => DEGREE_SPREAD * (value - mild.mean[at]!));
    const middle = traces.length === 1 ? severe : blend(mild, severe, this.#everywhere(0.5));
    const whole: Expectation = traces.length === 1 ? middle : { ...middle, slopes: [...middle.slopes, between] };
    const [mildRuns, severeRuns] = [traces[0]!, traces.at(-1)!].map((trace) =>
      runningChance(trace, looks, this.#noise.pump),
    ) as [Float64Array, Float64Array];
    for (const since of beginnings) {
      const share = this.#shareAfter(since);
      const none = { ...expectSound, slopes: [...expectSound.slopes, this.#everywhere(0)] };
      const spread = since === null ? whole : blend(traces.length === 1 ? expectSound : none, whole, share);
      const factor = this.#factorOf(spread);
      for (const degree of degrees) {
        const mean = spread.mean.map(
          (_, at) =>
            expectSound.mean[at]! +
            share[at]! * (mild.mean[at]! + degree * (severe.mean[at]! - mild.mean[at]!) - expectSound.mean[at]!),
        );
        const faulty = fault.turnsAsSound ? soundRuns : mixed(mildRuns, severeRuns, () => degree);
        const running = mixed(soundRuns, faulty, (at) => (since !== null && looks[at]!.hour < since ? 0 : 1));
        const words = fault.degrees[degree < 0.5 ? 0 : fault.degrees.length - 1]!.words;
        const prior = this.#priorOf(since, beginnings.length) / (forms * degrees.length);
        const about = { cause: fault.cause, words, sensor: null, prior, since, running };
        this.#note(about, { ...spread, mean }, this.#fit(factor, mean));
      }
    }
  }

  #priorOf(since: number | null, count: number): number {
    if (count === 1) return 1;
    return since === null ? PRIOR_BEFORE : (1 - PRIOR_BEFORE) / (count - 1);
  }

  #everywhere(share: number): Float64Array {
    return new Float64Array(this.#numbers.length).fill(share);
  }

  /** How far each number has turned from sound to faulty. */
  #shareAfter(since: number | null): Float64Array {
    if (since === null) return this.#everywhere(1);
    return Float64Array.from(this.#numbers, ({ hour, since: before, key }) => {
      if (hour <= since) return 0;
      if (key === 'loopPressure') return 1;
      const turned = 1 - Math.exp(-(hour - since) / TURNING);
      return key === 'heaterMeter' ? turned * Math.min(1, (hour - since) / Math.max(hour - before, 1)) : turned;
    });
  }

  /** Wrong gauges: an offset, or stuck. */
  #tryGauges(sound: Expectation, soundFactor: Factor, soundRuns: Float64Array): void {
    const keys = MEASURED.filter((key) => key !== 'heaterMeter' && this.#numbers.some((number) => number.key === key));
    for (const key of keys) {
      const kind = key === 'loopPressure' ? 'pressure' : 'temperature';
      const forms = OFFSETS[kind].length + 1;
      for (const since of this.#beginnings) {
        const touched = (at: number): boolean =>
          this.#numbers[at]!.key === key && (since === null || this.#numbers[at]!.hour >= since);
        const prior = this.#priorOf(since, this.#beginnings.length) / (keys.length * forms);
        const about = { cause: 'sensor-wrong', sensor: key, prior } as const;
        const touch = Float64Array.from(this.#numbers, (_, at) => (touched(at) ? 1 : 0));
        for (const [offset, spread] of OFFSETS[kind]) {
          const size = kind === 'pressure' ? `${Math.abs(offset) / 1e5} bar` : `${Math.abs(offset)} K`;
          const words = `${GAUGE_NAMES[key]} shows some ${size} too ${offset > 0 ? 'much' : 'little'}`;
          const shifted: Expectation = {
            ...sound,
            mean: sound.mean.map((value, at) => value + touch[at]! * offset),
            slopes: [...sound.slopes, touch.map((value) => value * spread)],
          };
          const fit = this.#fitOffset(soundFactor, shifted.mean, touch, spread);
          this.#note({ ...about, words, since, running: soundRuns }, shifted, fit);
        }
        const [middle, spread] = STUCK[kind];
        const gauge = kind === 'pressure' ? this.#noise.pressure : this.#noise.temperature;
        const free = (column: Float64Array) => column.map((value, at) => (touched(at) ? 0 : value));
        const stuck: Expectation = {
          ...sound,
          mean: sound.mean.map((value, at) => (touched(at) ? middle : value)),
          reading: sound.reading.map((value, at) => (touched(at) ? gauge ** 2 : value)),
          slopes: [...sound.slopes.map(free), Float64Array.from(sound.mean, (_, at) => (touched(at) ? spread : 0))],
          days: sound.days.map(free),
        };
        const words = `${GAUGE_NAMES[key]} is stuck`;
        this.#note({ ...about, words, since, running: soundRuns }, stuck, this.#fit(this.#factorOf(stuck), stuck.mean));
      }
    }
  }

  /** Covariance in triangular form; slips count for nothing. */
  #factorOf(expectation: Expectation): Factor {
    const n = this.#numbers.length;
    const lower = covariance(
      this.#widened(expectation),
      this.#numbers,
      this.#correlation,
      this.#library.uncertainty.model,
    );
    factorize(lower, n);
    return { lower, halfLog: halfLogDeterminant(lower, n) };
  }

  #widened(expectation: Expectation): Expectation {
    const factor = (at: number): number => (this.#slips[at] === 1 ? SLIP_NOISE ** 2 : 1);
    return { ...expectation, reading: expectation.reading.map((value, at) => value * factor(at)) };
  }

  #residual({ lower }: Factor, mean: Float64Array): Float64Array {
    const residual = Float64Array.from(this.#numbers, ({ value }, at) => value - mean[at]!);
    solveLower(lower, residual.length, residual);
    return residual;
  }

  /** Log-likelihood of the numbers: normal. */
  #fit(factor: Factor, mean: Float64Array): number {
    const residual = this.#residual(factor, mean);
    return -factor.halfLog - 0.5 * dot(residual, residual);
  }

  /** The same with an offset of some spread in the touched numbers (rank one: Sherman and Morrison 1950). */
  #fitOffset(factor: Factor, mean: Float64Array, touch: Float64Array, spread: number): number {
    const residual = this.#residual(factor, mean);
    const touched = touch.slice();
    solveLower(factor.lower, touched.length, touched);
    const growth = 1 + spread * spread * dot(touched, touched);
    const explained = (spread * dot(touched, residual)) ** 2 / growth;
    return -factor.halfLog - 0.5 * Math.log(growth) - 0.5 * (dot(residual, residual) - explained);
  }

  #note(
    about: Omit<Explanation, 'logLikelihood' | 'expectation' | 'slips'>,
    expectation: Expectation,
    fit: number,
  ): void {
    let logLikelihood = fit + dot(this.#slips, this.#slips) * Math.log(SLIP_CHANCE);
    this.#observations.looks.forEach(({ runs }, at) => {
      logLikelihood += Math.log(runs ? about.running[at]! : 1 - about.running[at]!);
    });
    this.#explanations.push({ ...about, logLikelihood, expectation: this.#widened(expectation), slips: this.#slips });
  }

  /** Weights from all that was tried. */
  sumUp(): Weighing {
    const present = CAUSES.filter((code) => this.#explanations.some(({ cause }) => cause === code));
    const priorOf = (cause: CauseCode): number =>
      cause === 'healthy' ? PRIOR_HEALTHY : (1 - PRIOR_HEALTHY) / (present.length - 1);
    const scored = this.#explanations.map((explanation) => ({
      explanation,
      score: TRUST * explanation.logLikelihood + Math.log(explanation.prior * priorOf(explanation.cause)),
    }));
    const highest = Math.max(...scored.map(({ score }) => score));
    const weights = Object.fromEntries(CAUSES.map((code) => [code, 0])) as Record<CauseCode, number>;
    const best = new Map<CauseCode, Explanation>();
    const bestScore = new Map<CauseCode, number>();
    let sum = 0;
    for (const { explanation, score } of scored) {
      const { cause } = explanation;
      const weight = Math.exp(score - highest);
      weights[cause] += weight;
      sum += weight;
      if (score > (bestScore.get(cause) ?? Number.NEGATIVE_INFINITY)) {
        best.set(cause, explanation);
        bestScore.set(cause, score);
      }
    }
    for (const code of CAUSES) weights[code] /= sum;
    return { weights, best, sound: best.get('healthy')! };
  }
}

const mixed = (a: Float64Array, b: Float64Array, share: (at: number) => number): Float64Array =>
  a.map((value, at) => value + share(at) * (b[at]! - value));
