// All that is tried: the healthy system, each fault in its degrees and times of beginning, each gauge that may be wrong.
import { fact, say } from '../../input/saying.ts';
import type { CauseCode, Fault } from './causes.ts';
import { blend, type Expectation } from './expectation.ts';
import {
  type Explanation,
  expectIn,
  explain,
  fitOf,
  fitWithOffset,
  type Hypothesis,
  normalFor,
  type Trial,
} from './explanation.ts';
import { OFFSETS, STUCK } from './gauges.ts';
import type { FaultRuns } from './library.ts';
import { type Normal, squareOf } from './normal.ts';
import { MEASURED, type MeasuredKey, runningChance } from './observe.ts';

/** A fault was there before the log began with this weight; else it began within it. Judgement. */
const PRIOR_BEFORE = 0.5;
/** Time in which the tank turns from healthy to faulty. Judgement. [h] */
const TURNING = 24;
/** Degrees that are tried between mild (0) and severe (1), and the spread of those that each stands for: half over √12. */
const DEGREES = [0, 0.5, 1];
const DEGREE_SPREAD = 0.5 / Math.sqrt(12);
/**
 * A fault whose severest form moves the numbers by less than this, as a square in deviations, and whose pump is found running as
 * often, does not show on these gauges: it is set aside, so that it takes no belief from what does. Judgement: two deviations. [-]
 */
const UNSEEN = 4;

/** The healthy system, and what the faults are set against. */
interface Healthy {
  readonly explanation: Explanation;
  readonly expectation: Expectation;
  readonly normal: Normal;
  readonly running: Float64Array;
}

/** The healthy system set against the numbers. */
export function tryHealthy(trial: Trial): Healthy {
  const { library, looks, noise } = trial;
  const expectation = expectIn(trial, library.healthy);
  const running = runningChance(library.healthy.base, looks, noise.pump);
  const normal = normalFor(trial, expectation);
  const hypothesis = { cause: 'healthy', form: say('healthy'), since: null, sensor: null, prior: 1, running } as const;
  const fit = fitOf(trial, normal, expectation.mean);
  return { explanation: explain(trial, hypothesis, expectation, fit), expectation, normal, running };
}

/** Whether the gauges could show a fault at all. */
export function shows(trial: Trial, { traces, fault, family }: FaultRuns, healthy: Healthy): boolean {
  const { looks, noise } = trial;
  const severe = expectIn(trial, family);
  const moved = severe.mean.map((value, at) => value - healthy.expectation.mean[at]!);
  if (squareOf(healthy.normal, moved) >= UNSEEN) return true;
  if (fault.turnsAsHealthy) return false;
  // Gain of the looks in the mean, were the fault there (relative entropy).
  const faulty = runningChance(traces.at(-1)!, looks, noise.pump);
  const gain = faulty.reduce((sum, p, at) => {
    const q = healthy.running[at]!;
    return sum + p * Math.log(p / q) + (1 - p) * Math.log((1 - p) / (1 - q));
  }, 0);
  return gain >= UNSEEN / 2;
}

/** One fault in all its degrees and times of beginning. @param forms - How many forms its cause has. */
export function tryFault(
  trial: Trial,
  { fault, traces, family }: FaultRuns,
  forms: number,
  healthy: Healthy,
): Explanation[] {
  const { library, looks, noise } = trial;
  const single = traces.length === 1;
  const severe = expectIn(trial, family);
  const mild = single ? severe : expectIn(trial, library.healthy, traces[0]!);
  const degrees = single ? [1] : DEGREES;
  const beginnings = fault.suddenly ? trial.beginnings : [null];
  const nothing = everywhere(trial, 0);
  // Any degree between two of those that are tried is as likely.
  const between = severe.mean.map((value, at) => DEGREE_SPREAD * (value - mild.mean[at]!));
  const middle = single ? severe : blend(mild, severe, everywhere(trial, 0.5));
  const whole: Expectation = single ? middle : { ...middle, slopes: [...middle.slopes, between] };
  const before: Expectation = single
    ? healthy.expectation
    : { ...healthy.expectation, slopes: [...healthy.expectation.slopes, nothing] };
  const [mildRuns, severeRuns] = [traces[0]!, traces.at(-1)!].map((trace) =>
    runningChance(trace, looks, noise.pump),
  ) as [Float64Array, Float64Array];
  return beginnings.flatMap((since) => {
    const share = shareAfter(trial, since);
    const spread = since === null ? whole : blend(before, whole, share);
    const normal = normalFor(trial, spread);
    return degrees.map((degree) => {
      const mean = spread.mean.map((_, at) => {
        const usual = healthy.expectation.mean[at]!;
        return usual + share[at]! * (mild.mean[at]! + degree * (severe.mean[at]! - mild.mean[at]!) - usual);
      });
      const faulty = fault.turnsAsHealthy ? healthy.running : mixed(mildRuns, severeRuns, () => degree);
      const hypothesis: Hypothesis = {
        cause: fault.cause,
        form: formAt(fault, degree),
        since,
        sensor: null,
        prior: priorOf(since, beginnings.length) / (forms * degrees.length),
        running: mixed(healthy.running, faulty, (at) => (since !== null && looks[at]!.hour < since ? 0 : 1)),
      };
      return explain(trial, hypothesis, { ...spread, mean }, fitOf(trial, normal, mean));
    });
  });
}

/** Form of a degree, its numbers between those of mild and severe. */
function formAt({ degrees }: Fault, degree: number): Hypothesis['form'] {
  const [mild, severe] = [degrees[0]!.form, degrees.at(-1)!.form];
  const facts = Object.entries(severe.facts).map(([name, to]) => {
    const from = mild.facts[name];
    if (typeof from !== 'object' || typeof to !== 'object') return [name, to];
    return [name, fact(from.value + degree * (to.value - from.value), to.unit)];
  });
  return say((degree < 0.5 ? mild : severe).code, Object.fromEntries(facts));
}

function priorOf(since: number | null, count: number): number {
  if (count === 1) return 1;
  return since === null ? PRIOR_BEFORE : (1 - PRIOR_BEFORE) / (count - 1);
}

const everywhere = ({ numbers }: Trial, share: number): Float64Array => new Float64Array(numbers.length).fill(share);

/** How far each number has turned from healthy to faulty. */
function shareAfter(trial: Trial, since: number | null): Float64Array {
  if (since === null) return everywhere(trial, 1);
  return Float64Array.from(trial.numbers, ({ hour, since: before, key }) => {
    if (hour <= since) return 0;
    if (key === 'loopPressure') return 1;
    const turned = 1 - Math.exp(-(hour - since) / TURNING);
    return key === 'heaterMeter' ? turned * Math.min(1, (hour - since) / Math.max(hour - before, 1)) : turned;
  });
}

/** Wrong gauges: an offset, or stuck. */
export function tryGauges(trial: Trial, healthy: Healthy): Explanation[] {
  const keys = MEASURED.filter((key) => key !== 'heaterMeter' && trial.numbers.some((number) => number.key === key));
  return keys.flatMap((key) =>
    trial.beginnings.flatMap((since) => {
      const touch = Float64Array.from(trial.numbers, (number) =>
        number.key === key && (since === null || number.hour >= since) ? 1 : 0,
      );
      const share = priorOf(since, trial.beginnings.length) / keys.length;
      return tryGauge(trial, healthy, { key, since, touch, share });
    }),
  );
}

interface WrongGauge {
  readonly key: MeasuredKey;
  readonly since: number | null;
  /** 1 for the numbers that are wrong. */
  readonly touch: Float64Array;
  /** Of the prior weight. */
  readonly share: number;
}

function tryGauge(trial: Trial, healthy: Healthy, { key, since, touch, share }: WrongGauge): Explanation[] {
  const kind = key === 'loopPressure' ? 'pressure' : 'temperature';
  const { expectation } = healthy;
  const prior = share / (OFFSETS[kind].length + 1);
  const common = {
    cause: 'sensor-wrong' satisfies CauseCode,
    sensor: key,
    since,
    prior,
    running: healthy.running,
  } as const;
  const offsets = OFFSETS[kind].map(([offset, spread]) => {
    const size = fact(Math.abs(offset), kind === 'pressure' ? 'Pa' : 'K');
    const form = say(offset > 0 ? 'gauge-high' : 'gauge-low', { gauge: key, offset: size });
    const shifted: Expectation = {
      ...expectation,
      mean: expectation.mean.map((value, at) => value + touch[at]! * offset),
      slopes: [...expectation.slopes, touch.map((value) => value * spread)],
    };
    const fit = fitWithOffset(trial, healthy.normal, shifted.mean, { touch, spread });
    return explain(trial, { ...common, form }, shifted, fit);
  });
  const [middle, spread] = STUCK[kind];
  const gauge = kind === 'pressure' ? trial.noise.pressure : trial.noise.temperature;
  const free = (column: Float64Array) => column.map((value, at) => (touch[at] === 1 ? 0 : value));
  const stuck: Expectation = {
    ...expectation,
    mean: expectation.mean.map((value, at) => (touch[at] === 1 ? middle : value)),
    reading: expectation.reading.map((value, at) => (touch[at] === 1 ? gauge ** 2 : value)),
    slopes: [...expectation.slopes.map(free), touch.map((value) => value * spread)],
    days: expectation.days.map(free),
  };
  const form = say('gauge-stuck', { gauge: key });
  const fit = fitOf(trial, normalFor(trial, stuck), stuck.mean);
  return [...offsets, explain(trial, { ...common, form }, stuck, fit)];
}

const mixed = (a: Float64Array, b: Float64Array, share: (at: number) => number): Float64Array =>
  a.map((value, at) => value + share(at) * (b[at]! - value));
