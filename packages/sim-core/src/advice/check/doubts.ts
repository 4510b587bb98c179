// Slips in how a log was written down, looked for before any fault: pipes that were swapped, a gauge in another unit, weather of
// another year.
import type { WeatherYear } from '@noonloop/weather-io';
import { fact, type Saying, say } from '../../input/saying.ts';
import { covariance, expect, timeCorrelation } from './expectation.ts';
import type { Library } from './library.ts';
import { normalOf, squareOf } from './normal.ts';
import type { MeasuredKey, Observation, Observations } from './observe.ts';
import type { ReadingNoise } from './uncertainty.ts';
import { TRUST, type Weighing, weigh } from './weigh.ts';

/** All doubts about a log. */
export const DOUBTS = [
  'weather-of-another-year',
  'pipes-swapped',
  'psi-taken-for-bar',
  'bar-taken-for-psi',
  'fahrenheit-taken-for-celsius',
  'celsius-taken-for-fahrenheit',
] as const;

/** What may be wrong with how a log was written down. */
export type DoubtCode = (typeof DOUBTS)[number];

/** Bar in a psi. */
const PSI = 0.0689475729;

/** Another way of reading the same numbers. */
interface OtherReading {
  readonly code: DoubtCode;
  /** Gauges that it may be about, each by itself. */
  readonly gauges: readonly MeasuredKey[];
  /** The value as it is then, and the gauge. */
  readonly value: (value: number) => number;
  readonly swapped: boolean;
  /** Size of a unit of the new value in one of the old, for the likelihood. */
  readonly scale: number;
}

const TEMPERATURES = ['tankTopTemperature', 'flowTemperature', 'returnTemperature'] as const;
const same = (value: number): number => value;

const OTHERS: readonly OtherReading[] = [
  { code: 'pipes-swapped', gauges: ['flowTemperature', 'returnTemperature'], value: same, swapped: true, scale: 1 },
  { code: 'psi-taken-for-bar', gauges: ['loopPressure'], value: (p) => p * PSI, swapped: false, scale: PSI },
  { code: 'bar-taken-for-psi', gauges: ['loopPressure'], value: (p) => p / PSI, swapped: false, scale: 1 / PSI },
  {
    code: 'fahrenheit-taken-for-celsius',
    gauges: TEMPERATURES,
    value: (t) => (t - 32) / 1.8,
    swapped: false,
    scale: 1 / 1.8,
  },
  {
    code: 'celsius-taken-for-fahrenheit',
    gauges: TEMPERATURES,
    value: (t) => 1.8 * t + 32,
    swapped: false,
    scale: 1.8,
  },
];

/** Chance of such a slip before the log is read. Judgement. [-] */
const SLIP_PRIOR = 0.02;
/** It is named where it is so much likelier than that all was written down right. Judgement. [-] */
const SURE = 10;
/** The square of the deviations from a healthy system must fall by this to be worth a weighing. Judgement. [-] */
const WORTH = 6;

/** A weighed log with what was found wrong in it, and set right. */
export interface SetRight {
  readonly weighing: Weighing;
  readonly observations: Observations;
  readonly doubts: readonly Saying<DoubtCode>[];
}

/** Weighs a log as it stands, and as it would stand without slips of its writing. */
export function weighAndDoubt(library: Library, observations: Observations, noise: ReadingNoise): SetRight {
  let found: SetRight = { weighing: weigh(library, observations, noise), observations, doubts: [] };
  for (const other of OTHERS) {
    if (found.doubts.some(({ code }) => isOpposite(code, other.code))) continue;
    const gauges = gaugesFor(other, found.observations, library, noise);
    if (gauges.length === 0) continue;
    const numbers = found.observations.numbers.map((number) => readOtherwise(number, other, gauges));
    const touched = other.swapped ? 0 : numbers.filter(({ key }) => gauges.includes(key)).length;
    const changed = { ...found.observations, numbers };
    const weighing = weigh(library, changed, noise);
    const gain = weighing.evidence + TRUST * touched * Math.log(other.scale) - found.weighing.evidence;
    if (gain + Math.log(SLIP_PRIOR) < Math.log(SURE)) continue;
    const facts = Object.fromEntries(gauges.map((gauge, at) => [at === 0 ? 'gauge' : `gauge${at + 1}`, gauge]));
    found = { weighing, observations: changed, doubts: [...found.doubts, say(other.code, facts)] };
  }
  return found;
}

const isOpposite = (a: DoubtCode, b: DoubtCode): boolean =>
  a !== b && ['psi', 'fahrenheit'].some((unit) => a.includes(unit) && b.includes(unit));

/** Gauges whose numbers a healthy system explains far better so. */
function gaugesFor(
  other: OtherReading,
  { numbers }: Observations,
  library: Library,
  noise: ReadingNoise,
): MeasuredKey[] {
  const strayOf = (of: readonly Observation[], keys: readonly MeasuredKey[]): number => {
    const own = of.filter(({ key }) => keys.includes(key));
    if (own.length < 3) return 0;
    const expectation = expect(library.healthy, own, library.uncertainty, noise);
    const normal = normalOf(covariance(expectation, own, timeCorrelation(own), library.uncertainty.model));
    return squareOf(
      normal,
      own.map(({ value }, at) => value - expectation.mean[at]!),
    );
  };
  const better = (keys: readonly MeasuredKey[]): boolean => {
    if (keys.some((gauge) => !numbers.some(({ key }) => key === gauge))) return false;
    const otherwise = numbers.map((number) => readOtherwise(number, other, keys));
    return strayOf(numbers, keys) - strayOf(otherwise, keys) > WORTH;
  };
  if (other.swapped) return better(other.gauges) ? [...other.gauges] : [];
  return other.gauges.filter((gauge) => better([gauge]));
}

function readOtherwise(number: Observation, other: OtherReading, gauges: readonly MeasuredKey[]): Observation {
  if (!gauges.includes(number.key)) return number;
  const key = other.swapped ? gauges.find((gauge) => gauge !== number.key)! : number.key;
  return { ...number, key, value: other.value(number.value) };
}

/** Weather of another year is not the weather of the log. */
export function yearDoubt({ calendarYears }: WeatherYear, year: number, hour: number): Saying<DoubtCode>[] {
  const ofWeather = calendarYears[Math.min(hour, calendarYears.length - 1)]!;
  if (ofWeather === year) return [];
  return [say('weather-of-another-year', { weather: fact(ofWeather, 'year'), log: fact(year, 'year') })];
}
