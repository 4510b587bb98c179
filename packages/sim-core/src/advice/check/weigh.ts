// How well each cause explains a log: its likelihood over degrees and times of beginning, and a weight from it.
import { CAUSES, type CauseCode } from './causes.ts';
import { type Explanation, type Trial, trialOf } from './explanation.ts';
import { shows, tryFault, tryGauges, tryHealthy } from './hypotheses.ts';
import type { Library } from './library.ts';
import type { Observations } from './observe.ts';
import { findSlips } from './slips.ts';
import type { ReadingNoise } from './uncertainty.ts';

/** Outcome of the weighing. */
export interface Weighing {
  /** Weights of the causes; they add up to 1. */
  readonly weights: Readonly<Record<CauseCode, number>>;
  /** Best explanation of each cause that could be tried. */
  readonly best: ReadonlyMap<CauseCode, Explanation>;
  readonly healthy: Explanation;
  /** Logarithm of the likelihood over all causes, to compare ways of reading the same log. */
  readonly evidence: number;
  /** Causes that these gauges could not show, whatever they read. */
  readonly unseen: readonly CauseCode[];
}

/** Weight of "nothing wrong" before the log is read; the rest is shared alike by the causes. Judgement. */
const PRIOR_HEALTHY = 0.5;
/**
 * Power to which the likelihood is taken: readings have more in common than the covariance says, so that they tell less than as
 * many independent ones. Judgement, from logs of the development seeds. [-]
 */
export const TRUST = 0.7;

/** Weighs all causes. */
export function weigh(library: Library, observations: Observations, noise: ReadingNoise): Weighing {
  const trial = trialOf(library, observations, noise);
  let tried = tryAll(trial);
  // A slip of the pen must neither look like a fault nor hide one: what stands out alone under the healthy system, or under the
  // likeliest fault, is tried as a slip, at a price.
  for (const { expectation } of likeliest(sumUp(tried))) {
    const slips = findSlips(expectation, observations.numbers, library.uncertainty.model);
    if (slips === null) continue;
    const again = tryAll({ ...trial, slips });
    tried = { ...tried, explanations: [...tried.explanations, ...again.explanations] };
  }
  return sumUp(tried);
}

interface Tried {
  readonly explanations: readonly Explanation[];
  readonly unseen: readonly CauseCode[];
}

/** Tries every explanation. */
function tryAll(trial: Trial): Tried {
  const healthy = tryHealthy(trial);
  const seen = trial.library.faults.filter((runs) => shows(trial, runs, healthy));
  const forms = (code: CauseCode): number => seen.filter(({ fault }) => fault.cause === code).length;
  const unseen = trial.library.faults.map(({ fault }) => fault.cause).filter((cause) => forms(cause) === 0);
  return {
    explanations: [
      healthy.explanation,
      ...seen.flatMap((runs) => tryFault(trial, runs, forms(runs.fault.cause), healthy)),
      ...tryGauges(trial, healthy),
    ],
    unseen: CAUSES.filter((cause) => unseen.includes(cause)),
  };
}

/** The healthy system and the likeliest fault. */
function likeliest({ best, healthy, weights }: Weighing): Explanation[] {
  const faults = [...best.values()].filter(({ cause }) => cause !== 'healthy');
  return [healthy, ...faults.sort((a, b) => weights[b.cause] - weights[a.cause]).slice(0, 1)];
}

/** Weights from all that was tried. */
function sumUp({ explanations, unseen }: Tried): Weighing {
  const present = CAUSES.filter((code) => explanations.some(({ cause }) => cause === code));
  const priorOf = (cause: CauseCode): number =>
    cause === 'healthy' ? PRIOR_HEALTHY : (1 - PRIOR_HEALTHY) / (present.length - 1);
  const scored = explanations.map((explanation) => ({
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
  return { weights, best, healthy: best.get('healthy')!, evidence: highest + Math.log(sum), unseen };
}
