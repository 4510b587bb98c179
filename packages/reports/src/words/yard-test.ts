// A yard test in sentences.
import type { YardNoteCode, YardRating, YardRemedyCode } from '@noonloop/sim-core';
import type { Units } from '../units.ts';
import { fill, sayingWords, type Words } from './fill.ts';

/** A yard test in words, in one system of units. */
export interface YardTestInWords {
  /** What would tell the coefficients that the readings cannot tell, a sentence each. */
  readonly remedies: readonly string[];
  /** What a reader should know before trusting it. */
  readonly notes: readonly string[];
}

/** What the readings would have to be like. */
export const YARD_REMEDY_WORDS: Words<YardRemedyCode> = {
  'full-sun-near-air':
    'needs sun of {fullSun} or more with the inlet near the air’s temperature, a sun meter good to some 7 %, or a value from a survey in `known`.',
  'warm-or-covered':
    'needs readings with the fluid {warm} and more above the air, in sun or with the panel covered, and slow enough a flow that inlet and outlet differ by some kelvin; or a value from a survey in `known`.',
  'spread-or-covered':
    'all readings are as warm as each other, so that light and loss cannot be told apart: needs some with the fluid near the air’s temperature too, or some with the panel covered; or a value from a survey in `known`.',
  'sun-meter-against-glass':
    'no glazed panel takes that much. The sun meter reads too little, or the flow or the area is wrong: compare the meter with another at noon under a clear sky, time the bucket again, and measure the glass inside the rim.',
};

/** Notes. */
export const YARD_NOTE_WORDS: Words<YardNoteCode> = {
  'beyond-glass':
    'The readings would give an efficiency without loss of {eta0}, which no glazed panel has. It is not used.',
  'against-known':
    'Readings and knowledge contradict each other: {name} of {read} by the readings alone, {known} by what was known. One of them is wrong; do not take the middle.',
  'small-rise':
    '{count} of {of} readings differ by less than {rise} between inlet and outlet: the thermometers’ error is then a large part of the heat. Throttle the flow.',
  'off-the-line':
    'Reading {reading} lies {deviations} deviations off the line: cloud, air in the flow, or a slip of the pen?',
  'no-spare-readings': 'No spare readings: nothing shows whether the tools are as good as said.',
  scatter: 'The readings scatter {times} times as much as the tools explain; the errors were widened by that.',
  'all-covered': 'All readings are of a covered panel: the loss can be told, the light cannot.',
  'oblique-light': 'Light came from more than {incidence} aside: b0 has a say in eta0.',
  'never-feed-a-dry-panel':
    'Hot water and steam scald: never feed a panel that stood dry in the sun; cover it, let it cool, then feed it. Leave both ends of the panel open, and keep people away from them.',
};

/** Names of coefficients. */
const NAMES = { eta0: 'eta0', a1: 'a1' } as const;

/** Sun and warmth that the remedies name. Judgement. */
const FACTS = { fullSun: { value: 600, unit: 'W/m²' }, warm: { value: 30, unit: 'K' } };

/**
 * A yard test in sentences.
 *
 * @param rating - from `rateFromYardTest`
 * @param units - of the numbers in them; default `metric`
 */
export function yardTestInWords({ eta0, a1, notes }: YardRating, units: Units = 'metric'): YardTestInWords {
  return {
    remedies: Object.entries({ eta0, a1 }).flatMap(([name, { remedy }]) =>
      remedy === null
        ? []
        : [`${name} cannot be told from these readings: ${fill(YARD_REMEDY_WORDS[remedy], FACTS, units)}`],
    ),
    notes: notes.map((note) => sayingWords(note, YARD_NOTE_WORDS, units, NAMES)),
  };
}
