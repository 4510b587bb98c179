// What speaks for a cause, gauge by gauge.
import { CAUSES } from './causes.ts';
import { covariance, type Expectation, timeCorrelation } from './expectation.ts';
import type { Explanation } from './explanation.ts';
import { logDensity, normalOf } from './normal.ts';
import { MEASURED, type MeasuredKey, type Observation, type Observations } from './observe.ts';

/** What one gauge, or the looks at the pump, say. */
export type Evidence =
  | {
      /** Readings of one gauge against a healthy system and against this fault. */
      readonly kind: 'gauge';
      /** Which gauge. */
      readonly gauge: MeasuredKey;
      /** Readings while the fault is there. */
      readonly count: number;
      /** Mean of read less healthy before the fault began; `null`: it was there all through. [K, Pa or J] */
      readonly before: number | null;
      /** The same while the fault is there. [K, Pa or J] */
      readonly after: number;
      /** How far the readings stray from a healthy system, root mean square. [K, Pa or J] */
      readonly strayHealthy: number;
      /** The same from one with this fault. [K, Pa or J] */
      readonly strayFaulty: number;
      /** How much likelier the fault makes these readings, as a logarithm. [-] */
      readonly gain: number;
    }
  | {
      /** Looks at the pump. */
      readonly kind: 'pump';
      /** Looks in which it ran. */
      readonly found: number;
      /** All looks while the fault is there. */
      readonly count: number;
      /** In how many it would run in a healthy system. */
      readonly healthy: number;
      /** And with this fault. */
      readonly faulty: number;
    }
  | {
      /** Numbers within the band of a healthy system. */
      readonly kind: 'inside';
      /** Within. */
      readonly found: number;
      /** Of so many. */
      readonly count: number;
      /** As many would be by chance. */
      readonly healthy: number;
    };

/** Logarithm of how much likelier a fault must make a gauge's readings to be worth a line. Judgement. [-] */
const WORTH_A_LINE = 1;
/** Lines at most. */
const MOST_LINES = 4;

/** What speaks for a cause, the strongest first; empty where it fits the readings together only. */
export function evidenceFor(
  explanation: Explanation,
  healthy: Explanation,
  { looks, numbers }: Observations,
  { inside, model }: { readonly inside: number; readonly model: number },
): Evidence[] {
  if (explanation.cause === CAUSES[0])
    return [{ kind: 'inside', found: inside, count: numbers.length, healthy: Math.round(0.95 * numbers.length) }];
  const lines: Evidence[] = MEASURED.map((gauge) => gaugeEvidence(gauge, explanation, healthy, numbers, model))
    .filter((line) => line !== null)
    .filter(({ gain }) => gain > WORTH_A_LINE)
    .sort((a, b) => b.gain - a.gain)
    .slice(0, MOST_LINES);
  const after = looks.map((_, at) => at).filter((at) => looks[at]!.hour >= (explanation.since ?? 0));
  const chance = (runs: Float64Array): number => Math.round(after.reduce((sum, at) => sum + runs[at]!, 0));
  const [usual, faulty] = [chance(healthy.running), chance(explanation.running)];
  if (after.length > 0 && usual !== faulty)
    lines.push({
      kind: 'pump',
      found: after.filter((at) => looks[at]!.runs).length,
      count: after.length,
      healthy: usual,
      faulty,
    });
  return lines;
}

type GaugeEvidence = Extract<Evidence, { kind: 'gauge' }>;

function gaugeEvidence(
  gauge: MeasuredKey,
  { expectation, since }: Explanation,
  healthy: Explanation,
  numbers: readonly Observation[],
  model: number,
): GaugeEvidence | null {
  const own = numbers.map((_, at) => at).filter((at) => numbers[at]!.key === gauge);
  const later = own.filter((at) => since === null || numbers[at]!.hour >= since);
  if (later.length === 0) return null;
  const mean = (places: readonly number[], of: (at: number) => number): number =>
    places.reduce((sum, at) => sum + of(at), 0) / places.length;
  const off = (at: number): number => numbers[at]!.value - healthy.expectation.mean[at]!;
  const earlier = own.filter((at) => !later.includes(at));
  const likely = (of: Expectation): number => marginal(of, own, numbers, model);
  return {
    kind: 'gauge',
    gauge,
    count: later.length,
    before: earlier.length === 0 ? null : mean(earlier, off),
    after: mean(later, off),
    strayHealthy: Math.sqrt(mean(later, (at) => off(at) ** 2)),
    strayFaulty: Math.sqrt(mean(later, (at) => (numbers[at]!.value - expectation.mean[at]!) ** 2)),
    gain: likely(expectation) - likely(healthy.expectation),
  };
}

/** Log-likelihood of one gauge's numbers alone. */
function marginal(of: Expectation, places: readonly number[], numbers: readonly Observation[], model: number): number {
  const pick = (column: Float64Array): Float64Array => Float64Array.from(places, (at) => column[at]!);
  const own = places.map((at) => numbers[at]!);
  const part = {
    ...of,
    mean: pick(of.mean),
    reading: pick(of.reading),
    slopes: of.slopes.map(pick),
    days: of.days.map(pick),
  };
  const normal = normalOf(covariance(part, own, timeCorrelation(own), model));
  return logDensity(
    normal,
    own.map(({ value }, at) => value - part.mean[at]!),
  );
}
