// The numbers of a survey in words: what each is, how it is known, and how to know it better.
import type { ParameterName, SurveyedNumber, SurveyRating } from '@noonloop/sim-core';
import { withUnit } from '../shown-units.ts';
import { formatNumber, type Units } from '../units.ts';
import { fill } from './fill.ts';

/** Words of one number. */
interface NumberWords {
  readonly what: string;
  /** What narrows it. */
  readonly how: string;
  /** Why the limits are as they are, where they are a guess or the model's. */
  readonly why?: string;
}

const YARD = 'A yard test: it measures what the formulas leave open.';
const AGAIN = 'Measure again, in two places.';

/** By name. */
export const SURVEY_WORDS: Readonly<Record<ParameterName, NumberWords>> = {
  length: { what: 'outside length', how: AGAIN },
  width: { what: 'outside width', how: AGAIN },
  depth: { what: 'height of the box', how: 'Measure the side of the box.', why: 'common boxes' },
  frame: {
    what: 'rim that takes no light',
    how: 'Measure from the outside to where the plate can be seen.',
    why: 'common rims',
  },
  coverExtinction: {
    what: 'how much light the cover swallows',
    how: 'Look at the edge of the glass: white or bluish is low in iron, green is window glass.',
  },
  coverThickness: { what: 'thickness of a cover', how: 'Callipers at the edge.', why: 'common for this cover' },
  plateConductivity: {
    what: 'conductivity of the plate',
    how: 'Scratch the back of the plate: red is copper, silver and soft aluminium; a magnet holds on steel.',
  },
  plateThickness: {
    what: 'thickness of the plate',
    how: 'Callipers on an edge of the plate, at a tube’s passage through the box.',
    why: 'common plates',
  },
  tubeSpacing: {
    what: 'spacing of the tubes',
    how: 'Measure across ten tubes through the glass, or from one riser to the next at the header.',
    why: 'common tubes',
  },
  tubeDiameter: {
    what: 'outside of the tubes',
    how: 'Callipers where a tube leaves the header.',
    why: 'common risers',
  },
  tubeWall: { what: 'wall of the tubes', how: 'Callipers at a cut end.', why: 'common walls' },
  headerDiameter: { what: 'outside of the headers', how: 'Callipers on a connection.', why: 'common headers' },
  bondResistance: {
    what: 'resistance between plate and tube',
    how: 'Look along a tube: solder or weld seam, groove with clamp or wire, or one sheet.',
  },
  absorptance: {
    what: 'absorptance of the plate',
    how: 'Compare with a freshly painted black plate beside it in the sun, by an infrared thermometer on black tape.',
  },
  emittance: {
    what: 'emittance of the plate',
    how: 'Warm the bare plate and read it with an infrared thermometer beside a strip of black tape. Much colder than the tape is selective, the same is paint.',
  },
  insulationConductivity: {
    what: 'conductivity of the insulation',
    how: 'Look through a vent hole: fibres or foam.',
  },
  backInsulation: {
    what: 'insulation behind the plate',
    how: 'A wire through a vent hole of the back, or box height less plate, gap and glass.',
    why: 'common backs',
  },
  edgeInsulation: {
    what: 'insulation at the edge',
    how: 'Look along the rim, from the frame to the plate.',
    why: 'common edges',
  },
  light: {
    what: 'light left by dirt and age',
    how: 'Clean the glass outside; look for a film inside and a faded plate.',
  },
  insulationAgeing: {
    what: 'damp or settled insulation',
    how: 'Weigh the panel, dry it a week in the sun, weigh it again.',
  },
  boxMass: {
    what: 'mass of box and frame',
    how: 'Weigh the panel on a bathroom scale, one end at a time, empty and dry.',
    why: 'sheet and profiles',
  },
  film: {
    what: 'film inside the tubes over that of developed flow',
    how: YARD,
    why: 'judgement: inlets and buoyancy raise it',
  },
  wind: {
    what: 'film of the wind on the cover',
    how: YARD,
    why: 'about {3 m/s}: Watmuff and McAdams lie some 30 % apart (from memory)',
  },
  topLoss: {
    what: 'error of the formula for the covers’ loss',
    how: YARD,
    why: 'Klein (1979), its stated fit (from memory)',
  },
};

/** A survey in words, in one system of units. */
export interface SurveyInWords {
  /** What would narrow the rating most, a sentence each, the best first. */
  readonly narrowing: readonly string[];
  /** Where each number came from, a line each; limits that were given stand in the survey. */
  readonly assumptions: readonly string[];
}

/** Doubts worth a line, and the share of the whole from which one is. */
const MOST_DOUBTS = 5;
const WORTH_A_LINE = 0.01;

/**
 * What a survey rests on, in sentences.
 *
 * @param rating - from `rateFromSurvey`
 * @param units - of the numbers in them; default `metric`
 */
export const surveyInWords = ({ numbers }: SurveyRating, units: Units = 'metric'): SurveyInWords => ({
  narrowing: numbers
    .filter(({ share }) => share >= WORTH_A_LINE)
    .slice(0, MOST_DOUBTS)
    .map(({ name, share }) => {
      const { what, how } = SURVEY_WORDS[name];
      return `${what} (${formatNumber(100 * share, 0)} % of the doubt): ${how}`;
    }),
  assumptions: numbers.filter(({ origin }) => origin !== 'limits').map((one) => assumption(one, units)),
});

function assumption({ name, field, band, unit, origin, word, tool }: SurveyedNumber, units: Units): string {
  const { what, why = '' } = SURVEY_WORDS[name];
  const show = (value: number): string => withUnit(value, unit === 'm' ? (SIZE_OF[name] ?? 'mm') : unit, units);
  const how = {
    limits: '',
    measured: `measured, ± ${show(tool ?? 0)}`,
    word: `${field} “${word}”: handbook range or judgement, from memory`,
    guess: `judgement: ${why}`,
    model: fill(why, {}, units),
  }[origin];
  return `${what} ${show(band.likely)}, ${show(band.low)} to ${show(band.high)}: ${how}`;
}

/** Outside sizes are read off a tape; all other lengths are parts, in millimetres or inches. */
const SIZE_OF: Partial<Record<ParameterName, string>> = { length: 'm', width: 'm' };
