import type { GaugeLog, WeatherYear } from '@noonloop/weather-io';
import * as z from 'zod';
import type { SystemDesign } from '../../design/design.ts';
import { checkInput } from '../../input/check.ts';
import { count, defaulted } from '../../input/field.ts';
import { CAUSE_NAMES, CAUSES, type CauseCode } from './causes.ts';
import { covariance, timeCorrelation } from './expectation.ts';
import { buildLibrary } from './library.ts';
import { checkedSpan, thinned } from './log-input.ts';
import { factorize, solveLower } from './matrix.ts';
import { type NextTest, nextTest } from './next-test.ts';
import { type MeasuredKey, type Observations, observe } from './observe.ts';
import { noiseSchema, uncertaintySchema } from './uncertainty.ts';
import { NAMED_FROM, WORST_FIT } from './verdict.ts';
import { type Explanation, weigh } from './weigh.ts';
import { cautionsFor, detailOf, evidenceFor } from './words.ts';

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

/** One number of the log beside what a sound system would show. */
export interface CheckedNumber {
  /** Place in `log.readings`. */
  readonly at: number;
  /** Line in the file; `null` where there is none. */
  readonly line: number | null;
  /** Which gauge; for the heater's meter what it counted since its reading before. */
  readonly gauge: MeasuredKey;
  /** Hours from 00:00 on 1 January. [h] */
  readonly hour: number;
  /** As read, in the unit of the reading. */
  readonly found: number;
  /** What a sound system would show. */
  readonly expected: number;
  /** Below it fall 2.5 % of the readings of sound systems. */
  readonly low: number;
  /** Above it fall 2.5 %. */
  readonly high: number;
  /** Found less expected, in standard deviations. [-] */
  readonly deviation: number;
  /** Whether it lies outside the band. */
  readonly outside: boolean;
  /** Whether the likeliest explanation takes it for a slip of the pen. */
  readonly slip: boolean;
}

/** A cause with its weight. */
export interface RankedCause {
  /** Which. */
  readonly cause: CauseCode;
  /** What it is, in words. */
  readonly name: string;
  /** Share of belief after the readings, 0 to 1; all causes add up to 1. [-] */
  readonly weight: number;
  /** Form, severity and beginning that fit best. */
  readonly detail: string;
  /** Hour from which it fits best; `null`: all through the log. [h] */
  readonly since: number | null;
  /** The gauge, for `sensor-wrong`. */
  readonly gauge: MeasuredKey | null;
  /** What speaks for it, the strongest first. */
  readonly evidence: readonly string[];
}

/** What a log says about a system. */
export interface LogCheck {
  /** The likeliest cause where it leads clearly and explains the readings; else `cannot-tell`. */
  readonly verdict: CauseCode | 'cannot-tell';
  /** The verdict in a sentence. */
  readonly headline: string;
  /** Likeliest first; those with a weight under 0.5 % are left out. */
  readonly causes: readonly RankedCause[];
  /** Every number beside its band. */
  readonly numbers: readonly CheckedNumber[];
  /** The cheap test that would tell the likely causes apart; `null` where there is nothing left to tell. */
  readonly next: NextTest | null;
  /** Mean square of the deviations that the likeliest cause leaves, about 1 where it explains them. [-] */
  readonly fit: number;
  /** What can hurt someone. */
  readonly cautions: readonly string[];
  /** What was assumed, left out or not to be told from these gauges. */
  readonly notes: readonly string[];
}

/** Fewest readings that are worth a check. Judgement. */
const FEWEST = 5;
/** Weight below which a cause is not listed. */
const LEAST_WEIGHT = 0.005;
/** Band of 95 % of a normal distribution, in standard deviations. */
const BAND = 1.96;

/**
 * Sets a notebook of gauge readings against what the model expects in the weather of those weeks, and ranks what may be wrong.
 *
 * A sound system and each fault, at two severities, are run through the weeks of the log; uncertain house, habits and weather widen
 * each expectation to a band (docs/theory/check-log.md). The weight of a cause follows from how likely it makes the readings, over
 * severities and times of beginning. One fault at a time is considered. It takes some 130 runs of those weeks: seconds.
 *
 * @param design - From `defineSystem`: the system as it should be.
 * @param weather - Of the very weeks of the log; a typical year will not do.
 * @param log - From `readLog` or of the same shape: 5 readings or more within 150 days.
 * @param options - What is uncertain and by how much.
 * @throws {@link DesignError} listing all faults of log and options at once, by path.
 * @example
 * const check = checkLog(design, weather, log);
 * console.log(check.headline, check.next?.what);
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
  const observations = observe(used);
  const library = buildLibrary(design, weather, span, { uncertainty, members, seed });
  const { weights, best, sound } = weigh(library, observations, noise);
  const ranked = [...CAUSES].filter((cause) => best.has(cause)).sort((a, b) => weights[b] - weights[a]);
  const likeliest = best.get(ranked[0]!)!;
  const fit = fitOf(likeliest, observations, uncertainty.model);
  const leads = weights[likeliest.cause] >= NAMED_FROM && fit <= WORST_FIT;
  const verdict = leads ? likeliest.cause : 'cannot-tell';
  const numbers = bands(used, observations, sound, likeliest, uncertainty.model);
  const inBand = numbers.filter(({ outside }) => !outside).length;
  return {
    verdict,
    headline: headline(verdict, ranked, weights, fit),
    causes: ranked
      .filter((cause) => weights[cause] >= LEAST_WEIGHT)
      .map((cause) => {
        const explanation = best.get(cause)!;
        return {
          cause,
          name: CAUSE_NAMES[cause],
          weight: weights[cause],
          detail: detailOf(explanation),
          since: explanation.since,
          gauge: explanation.sensor,
          evidence: evidenceFor(explanation, sound, observations, inBand),
        };
      }),
    numbers,
    next: nextTest(weights),
    fit,
    cautions: cautionsFor(verdict),
    notes: [
      ...yearNote(weather, log.calendarYear, span.from),
      ...notesOf(design, used, observations, span.from, every, library.runs),
    ],
  };
}

/** Mean square of whitened residuals. */
function fitOf({ expectation }: Explanation, { numbers }: Observations, model: number): number {
  const n = numbers.length;
  if (n === 0) return 0;
  const matrix = covariance(expectation, numbers, timeCorrelation(numbers), model);
  factorize(matrix, n);
  const residual = Float64Array.from(numbers, ({ value }, at) => value - expectation.mean[at]!);
  solveLower(matrix, n, residual);
  return residual.reduce((sum, value) => sum + value * value, 0) / n;
}

function bands(
  log: GaugeLog,
  { numbers }: Observations,
  { expectation }: Explanation,
  likeliest: Explanation,
  model: number,
): CheckedNumber[] {
  const n = numbers.length;
  // The band is of a clean reading: what is taken for a slip must not widen it.
  const matrix = covariance({ ...expectation, reading: expectation.gauge }, numbers, timeCorrelation(numbers), model);
  return numbers.map(({ at, key, hour, value }, i) => {
    const expected = expectation.mean[i]!;
    const deviation = Math.sqrt(matrix[i * n + i]!);
    return {
      at,
      line: log.readings[at]!.line,
      gauge: key,
      hour,
      found: value,
      expected,
      low: expected - BAND * deviation,
      high: expected + BAND * deviation,
      deviation: (value - expected) / deviation,
      outside: Math.abs(value - expected) > BAND * deviation,
      slip: likeliest.slips[i] === 1,
    };
  });
}

function headline(
  verdict: LogCheck['verdict'],
  ranked: readonly CauseCode[],
  weights: Readonly<Record<CauseCode, number>>,
  fit: number,
): string {
  const percent = (cause: CauseCode): string => `${Math.round(100 * weights[cause])} %`;
  if (verdict === 'healthy') return `Healthy: ${CAUSE_NAMES.healthy} (weight ${percent('healthy')}).`;
  if (verdict !== 'cannot-tell') return `Likely: ${CAUSE_NAMES[verdict]} (weight ${percent(verdict)}).`;
  const [first, second] = ranked as [CauseCode, CauseCode];
  if (fit > WORST_FIT) {
    return `Cannot tell: none of the causes explains the readings; nearest is ${CAUSE_NAMES[first]}. Check units, clock, weather and design.`;
  }
  return `Cannot tell: ${CAUSE_NAMES[first]} (${percent(first)}), or ${CAUSE_NAMES[second]} (${percent(second)}).`;
}

/** Weather of another year is not the weather of the log. */
function yearNote({ calendarYears }: WeatherYear, year: number, hour: number): string[] {
  const ofWeather = calendarYears[Math.min(hour + 240, calendarYears.length - 1)];
  if (ofWeather === year) return [];
  return [`The weather is of ${ofWeather}, the log of ${year}: the bands are not those of the log’s days.`];
}

function notesOf(
  { loop }: SystemDesign,
  log: GaugeLog,
  { looks, numbers }: Observations,
  from: number,
  every: number,
  runs: number,
): string[] {
  const has = (key: MeasuredKey): boolean => numbers.some((number) => number.key === key);
  const notes = [...log.assumptions.map(({ text }) => text), `${runs} runs of the weeks of the log were compared.`];
  if (every > 1) notes.push(`The log is long: every ${every}th reading was used.`);
  if (from === 0) notes.push('The log begins in the first days of January: the tank’s start is a guess.');
  if (!has('loopPressure')) notes.push('No pressure was read: slow loss of fluid cannot be seen.');
  if (!has('flowTemperature') || !has('returnTemperature')) {
    notes.push('Hot and cold pipe were not both read: scale, sediment and throttled flow are hard to tell apart.');
  }
  if (looks.length === 0) notes.push('Nobody looked whether the pump turns: air lock and pump fault look alike.');
  if (!has('heaterMeter'))
    notes.push('No meter was read: habits and mixing valve are hard to tell from the collectors.');
  if (loop.makeUp) notes.push('Make-up water hides a leak and thins the glycol: only a refractometer shows it.');
  notes.push('Thinned fluid, and a mixing valve set too hot, do not show on these gauges.');
  return notes;
}
