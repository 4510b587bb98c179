import type { GaugeLog, WeatherYear } from '@noonloop/weather-io';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { count, defaulted } from '../../input/field.ts';
import { fact, type Saying, say } from '../../input/saying.ts';
import * as z from '../../input/zod.ts';
import { bandsOf } from './bands.ts';
import { CAUSES, type CauseCode } from './causes.ts';
import type { CheckCautionCode, CheckNoteCode, LogCheck, ReasonCode } from './check-types.ts';
import { weighAndDoubt, yearDoubt } from './doubts.ts';
import { evidenceFor } from './evidence.ts';
import { covariance, timeCorrelation } from './expectation.ts';
import type { Explanation } from './explanation.ts';
import { buildLibrary } from './library.ts';
import { checkedSpan, SETTLE, thinned } from './log-input.ts';
import { nextTest, testFacts } from './next-test.ts';
import { normalOf, squareOf } from './normal.ts';
import { type MeasuredKey, type Observations, observe } from './observe.ts';
import { noiseSchema, uncertaintySchema } from './uncertainty.ts';
import { bestFit, NAMED_FROM, WORST_FIT } from './verdict.ts';

const optionsSchema = z.strictObject({
  uncertainty: uncertaintySchema.prefault({}),
  noise: noiseSchema.prefault({}),
  members: defaulted(count(4, 100), 12, '', 'judgement: more move the weights by a few hundredths'),
  seed: defaulted(count(0, 2 ** 31), 1, '', 'judgement'),
});

/**
 * What is known of house and gauges: quantities as numbers in the documented unit or strings with a unit. All may be left out; see
 * `ModelUncertainty` and `ReadingNoise`; `members` (12) runs with days of their own from `seed` (1) widen the band.
 */
export type CheckLogOptions = z.input<typeof optionsSchema>;

/** Fewest readings that are worth a check. */
const FEWEST = 5;
/** Weight below which a cause is not listed. */
const LEAST_WEIGHT = 0.005;

/**
 * Sets a notebook of gauge readings against what the model expects in the weather of those weeks, and ranks what may be wrong.
 *
 * First it looks whether the log itself is in doubt: pipes swapped, a gauge in another unit, weather of another year. Then a healthy
 * system and each fault, at two severities, are run through the weeks of the log; uncertain house, habits and weather widen each
 * expectation to a band (docs/theory/check-log.md). The weight of a cause follows from how likely it makes the readings, over
 * severities and times of beginning. One fault at a time is considered. It takes some 170 runs of those weeks: seconds.
 *
 * The result is codes and numbers; `checkInWords` of `@noonloop/reports` has the sentences.
 *
 * @param design - From `defineSystem`: the system as it should be.
 * @param weather - Of the very weeks of the log; a typical year will not do.
 * @param log - From `readLog` or of the same shape: 5 readings or more within 150 days.
 * @param options - What is uncertain and by how much.
 * @throws {@link DesignError} listing all faults of log and options at once, by path.
 * @example
 * const { verdict, causes, next } = checkLog(design, weather, log);
 */
export function checkLog(
  design: SystemDesign,
  weather: WeatherYear,
  log: GaugeLog,
  options: CheckLogOptions = {},
): LogCheck {
  const { uncertainty, noise, members, seed } = checkInput(optionsSchema, options);
  const span = checkedSpan(log, FEWEST);
  const { log: used, every } = thinned(log);
  const library = buildLibrary(design, weather, span, { uncertainty, members, seed });
  const { doubts, observations, weighing } = weighAndDoubt(library, observe(used), noise);
  const { weights, best, healthy, unseen } = weighing;
  const ranked = [...CAUSES].filter((cause) => best.has(cause)).sort((a, b) => weights[b] - weights[a]);
  const likeliest = best.get(ranked[0]!)!;
  const fit = fitOf(likeliest, observations, uncertainty.model);
  const otherYear = yearDoubt(weather, log.calendarYear, span.from + SETTLE);
  const reason =
    otherYear.length > 0
      ? 'weather-of-another-year'
      : reasonOf(weights[likeliest.cause], fit, observations.numbers.length);
  const verdict = reason === 'leads' ? likeliest.cause : 'cannot-tell';
  const numbers = bandsOf(used, observations, library, { healthy, likeliest });
  const inside = numbers.filter(({ outside }) => !outside).length;
  return {
    verdict,
    reason,
    doubts: [...otherYear, ...doubts],
    causes: ranked
      .filter((cause) => weights[cause] >= LEAST_WEIGHT)
      .map((cause) => {
        const explanation = best.get(cause)!;
        const { form, since, sensor: gauge } = explanation;
        const evidence = evidenceFor(explanation, healthy, observations, { inside, model: uncertainty.model });
        return { cause, weight: weights[cause], form, since, gauge, evidence };
      }),
    unseen,
    numbers,
    next:
      reason === 'weather-of-another-year' || reason === 'fits-too-well'
        ? null
        : nextTest(weights, design, testFacts(design, library.healthy.base)),
    fit,
    cautions: cautionsFor(verdict),
    notes: notesOf(design, observations, { from: span.from, every, runs: library.runs }),
    remarks: log.assumptions.map(({ text }) => text),
  };
}

/** Mean square of whitened residuals. */
export function fitOf({ expectation }: Explanation, { numbers }: Observations, model: number): number {
  if (numbers.length === 0) return 1;
  const normal = normalOf(covariance(expectation, numbers, timeCorrelation(numbers), model));
  return (
    squareOf(
      normal,
      numbers.map(({ value }, at) => value - expectation.mean[at]!),
    ) / numbers.length
  );
}

/** Why a cause is named or none. @internal */
export function reasonOf(weight: number, fit: number, numbers: number): ReasonCode {
  if (fit > WORST_FIT) return 'no-cause-fits';
  if (fit < bestFit(numbers)) return 'fits-too-well';
  return weight >= NAMED_FROM ? 'leads' : 'two-causes';
}

/** Cautions that hold before any work on a fault. */
function cautionsFor(cause: CauseCode | 'cannot-tell'): CheckCautionCode[] {
  const about = (code: CheckCautionCode, ...causes: readonly (CauseCode | 'cannot-tell')[]): CheckCautionCode[] =>
    causes.includes(cause) ? [code] : [];
  return [
    'not-an-inspection',
    ...about('loop-without-flow', 'no-flow', 'pump-fault', 'high-limit', 'lost-fluid', 'vessel-charge', 'cannot-tell'),
    ...about('vessel-and-relief', 'vessel-charge', 'lost-fluid'),
    ...about('lost-fluid-and-frost', 'lost-fluid', 'vessel-charge', 'cannot-tell'),
    ...about('valve-too-high', 'mixing-valve', 'thermostat', 'dip-tube'),
    ...about('thermostat-and-limits', 'thermostat', 'high-limit'),
    ...about('drain-and-descale', 'sediment', 'scaled-coil', 'dip-tube'),
  ];
}

function notesOf(
  { loop }: SystemDesign,
  { looks, numbers }: Observations,
  { from, every, runs }: { readonly from: number; readonly every: number; readonly runs: number },
): Saying<CheckNoteCode>[] {
  const lacks = (...keys: readonly MeasuredKey[]): boolean =>
    keys.some((key) => !numbers.some((number) => number.key === key));
  const where = (holds: boolean, code: CheckNoteCode): Saying<CheckNoteCode>[] => (holds ? [say(code)] : []);
  return [
    say('runs-compared', { runs: fact(runs, '1') }),
    ...(every > 1 ? [say('readings-left-out', { every: fact(every, '1') } as const)] : []),
    ...where(from === 0, 'begins-in-january'),
    ...where(lacks('loopPressure'), 'no-pressure'),
    ...where(lacks('flowTemperature', 'returnTemperature'), 'no-pipes'),
    ...where(looks.length === 0, 'no-looks'),
    ...where(lacks('heaterMeter'), 'no-meter'),
    ...where(loop.makeUp, 'make-up-hides-leaks'),
    say('never-seen'),
  ];
}
