// What the check found, in words.
import type { CauseCode } from './causes.ts';
import type { Expectation } from './expectation.ts';
import { GAUGE_NAMES } from './gauges.ts';
import type { MeasuredKey, Observation, Observations } from './observe.ts';
import type { Explanation } from './weigh.ts';

const MONTHS = [
  ['January', 31],
  ['February', 28],
  ['March', 31],
  ['April', 30],
  ['May', 31],
  ['June', 30],
  ['July', 31],
  ['August', 31],
  ['September', 30],
  ['October', 31],
  ['November', 30],
  ['December', 31],
] as const;

/** `3 July` of an hour of the year. */
export function dayInWords(hour: number): string {
  let day = Math.min(364, Math.max(0, Math.trunc(hour / 24)));
  for (const [month, days] of MONTHS) {
    if (day < days) return `${day + 1} ${month}`;
    day -= days;
  }
  return '31 December';
}

/** A difference with its unit: 4.2 K, 0.31 bar, 12 kWh. */
export function size(key: MeasuredKey, value: number): string {
  if (key === 'loopPressure') return `${(value / 1e5).toFixed(2)} bar`;
  if (key === 'heaterMeter') return `${(value / 3.6e6).toFixed(1)} kWh`;
  return `${value.toFixed(1)} K`;
}

const side = (value: number, key: MeasuredKey): string => {
  if (key === 'heaterMeter') return value < 0 ? 'less' : 'more';
  return value < 0 ? 'below' : 'above';
};

/** Name, details and time of a cause. */
export function detailOf({ cause, since, words }: Explanation): string {
  if (cause === 'healthy') return 'The readings fit a sound system.';
  const when = since === null ? 'all through the log' : `since about ${dayInWords(since)}`;
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}, ${when}.`;
}

interface Tally {
  readonly key: MeasuredKey;
  readonly count: number;
  /** Mean residual under the sound system, in SI. */
  readonly sound: number;
  /** Root mean squares of the same. */
  readonly straySound: number;
  readonly strayCaused: number;
  /** Sum of squared residuals over variance that the cause takes away. */
  readonly gained: number;
}

function tally(key: MeasuredKey, numbers: readonly Observation[], sound: Expectation, caused: Expectation): Tally {
  let count = 0;
  let [ofSound, gained, squareSound, squareCause] = [0, 0, 0, 0];
  numbers.forEach((number, at) => {
    if (number.key !== key) return;
    const a = number.value - sound.mean[at]!;
    const b = number.value - caused.mean[at]!;
    count++;
    ofSound += a;
    squareSound += a * a;
    squareCause += b * b;
    gained += (a * a - b * b) / sound.reading[at]!;
  });
  return {
    key,
    count,
    sound: ofSound / count,
    gained,
    straySound: Math.sqrt(squareSound / count),
    strayCaused: Math.sqrt(squareCause / count),
  };
}

/** What speaks for a cause, the strongest first. */
export function evidenceFor(
  explanation: Explanation,
  sound: Explanation,
  { looks, numbers }: Observations,
  inBand: number,
): string[] {
  if (explanation.cause === 'healthy') {
    const share = `${inBand} of ${numbers.length} numbers lie within the band of a sound system`;
    return [`${share}; about ${Math.round(0.95 * numbers.length)} would by chance.`];
  }
  const later = explanation.since === null ? numbers : numbers.filter(({ hour }) => hour >= explanation.since!);
  const keys = [...new Set(later.map(({ key }) => key))];
  const pick = (expectation: Expectation): Expectation => {
    const kept = numbers.map((_, at) => at).filter((at) => later.includes(numbers[at]!));
    const of = (column: Float64Array) => Float64Array.from(kept, (at) => column[at]!);
    return { ...expectation, mean: of(expectation.mean), reading: of(expectation.reading) };
  };
  const words = keys
    .map((key) => tally(key, later, pick(sound.expectation), pick(explanation.expectation)))
    .filter(({ gained }) => gained > 2)
    .sort((a, b) => b.gained - a.gained)
    .slice(0, 4)
    .map(({ key, count, sound: off, straySound, strayCaused }) => {
      const name = GAUGE_NAMES[key].charAt(0).toUpperCase() + GAUGE_NAMES[key].slice(1);
      const mean = `${size(key, Math.abs(off))} ${side(off, key)} on average`;
      return `${name}: ${count} readings stray from a sound system by ${size(key, straySound)} (root mean square; ${mean}), from this fault by ${size(key, strayCaused)}.`;
    });
  const after = looks.map((_, at) => at).filter((at) => looks[at]!.hour >= (explanation.since ?? 0));
  if (after.length > 0) {
    const found = after.filter((at) => looks[at]!.runs).length;
    const chance = (runs: Float64Array) => Math.round(after.reduce((sum, at) => sum + runs[at]!, 0));
    const [usual, faulty] = [chance(sound.running), chance(explanation.running)];
    if (usual !== faulty) {
      words.push(
        `The pump was found running in ${found} of ${after.length} looks; a sound system would run in about ${usual}, with this fault in about ${faulty}.`,
      );
    }
  }
  return words.length > 0 ? words : ['No single gauge speaks for it; it fits the readings together.'];
}

/** Cautions that hold before any work on a fault. */
export function cautionsFor(cause: CauseCode | 'cannot-tell'): string[] {
  const all = [
    'This is a comparison with a calculation, not an inspection. Work on gas, mains electricity, pressure vessels and roofs is for licensed people, by the local code.',
  ];
  if (cause === 'no-flow' || cause === 'pump-fault' || cause === 'lost-fluid') {
    all.push(
      'A loop without flow in sun gets hotter than boiling water. Do not open, fill or restart it in sun: cover the panels or wait for dusk, and keep clear of relief and vent outlets.',
    );
  }
  if (cause === 'lost-fluid' || cause === 'cannot-tell') {
    all.push(
      'Lost or topped-up fluid may no longer protect against frost: measure it with a refractometer before winter. Glycol other than food-grade propylene glycol is poisonous.',
    );
  }
  if (cause === 'mixing-valve') {
    all.push(
      'Setting a mixing valve higher can scald: children and old people burn at 50 °C and above within seconds. Measure at the tap after each turn.',
    );
  }
  if (cause === 'sediment' || cause === 'scaled-coil') {
    all.push('Draining or descaling a tank scalds and may wake legionella: let a licensed plumber do it.');
  }
  return all;
}
