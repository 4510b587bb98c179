/**
 * The numbers of a survey, each with limits: from what was measured and with what, from words, or from what such panels are
 * like.
 */
import type { Band } from './band.ts';
import { GUESSES } from './guesses.ts';
import type { Parameter, ParameterName } from './parameter.ts';
import type { Reading, Survey } from './schema.ts';
import { BONDS, COATINGS, CONDITIONS, COVERS, INSULATIONS, METALS } from './words.ts';

const band = (low: number, likely: number, high: number): Band => ({ low, likely, high });

/** Tape on an outside size. [m] */
const TAPE = 0.005;
/** Callipers on a cover. [m] */
const CALLIPERS = 0.0002;
/** Bathroom scale. [kg] */
const SCALE = 1;
/** Box and frame of a panel that was not weighed; judgement: sheet and profiles. [kg/m²] */
const BOX = band(3, 5.5, 9);

/** Every number of a survey with its limits. */
export function surveyParameters(survey: Survey): Parameter[] {
  return [...sizes(survey), ...coverNumbers(survey), ...plateNumbers(survey), ...stateNumbers(survey), ...MODEL];
}

type Known = Pick<Parameter, 'band' | 'origin' | 'tool'>;

/** Limits of a reading: as given, or the tool's, at most 40 % of the value. */
function known(reading: Reading, tool: number): Known {
  if (typeof reading !== 'number') return { band: reading, origin: 'limits' };
  const off = Math.min(tool, 0.4 * reading);
  return { band: band(reading - off, reading, reading + off), origin: 'measured', tool: off };
}

const guessed = (guess: Band): Known => ({ band: guess, origin: 'guess' });

function sizes(survey: Survey): Parameter[] {
  const outside = (['length', 'width'] as const).map((name): Parameter => {
    return { name, field: name, unit: 'm', ...known(survey[name], TAPE) };
  });
  const parts = GUESSES.map(({ name, guess, tool }): Parameter => {
    const reading = survey[name] as Reading | undefined;
    return { name, field: name, unit: 'm', ...(reading === undefined ? guessed(guess) : known(reading, tool)) };
  });
  return [...outside, ...parts];
}

/** A number that a word of the survey stands for. */
const ofWord = (
  name: ParameterName,
  field: string,
  [word, band, unit]: readonly [string, Band, string],
): Parameter => ({
  name,
  field,
  band,
  unit,
  origin: 'word',
  word,
});

function coverNumbers({ coverKind: word = 'unknown', coverThickness: thickness }: Survey): Parameter[] {
  const cover = COVERS[word];
  const common = band(0.75 * cover.thickness, cover.thickness, 1.25 * cover.thickness);
  return [
    ofWord('coverExtinction', 'coverKind', [word, cover.extinction, '1/m']),
    {
      name: 'coverThickness',
      field: 'coverThickness',
      unit: 'm',
      ...(thickness === undefined ? guessed(common) : known(thickness, CALLIPERS)),
    },
  ];
}

function plateNumbers(survey: Survey): Parameter[] {
  const { plateMetal = 'unknown', bond = 'unknown', coating = 'unknown' } = survey;
  return [
    ofWord('plateConductivity', 'plateMetal', [plateMetal, METALS[plateMetal].conductivity, 'W/(m·K)']),
    ofWord('bondResistance', 'bond', [bond, BONDS[bond], 'm·K/W']),
    ofWord('absorptance', 'coating', [coating, COATINGS[coating].absorptance, '-']),
    ofWord('emittance', 'coating', [coating, COATINGS[coating].emittance, '-']),
  ];
}

function stateNumbers(survey: Survey): Parameter[] {
  const { insulation = 'unknown', condition = 'unknown', weightEmpty: weight } = survey;
  const box = { name: 'boxMass', field: 'weightEmpty' } as const;
  return [
    ofWord('insulationConductivity', 'insulation', [insulation, INSULATIONS[insulation].conductivity, 'W/(m·K)']),
    ofWord('light', 'condition', [condition, CONDITIONS[condition].light, '-']),
    ofWord('insulationAgeing', 'condition', [condition, CONDITIONS[condition].insulation, '-']),
    weight === undefined ? { ...box, unit: 'kg/m²', ...guessed(BOX) } : { ...box, unit: 'kg', ...known(weight, SCALE) },
  ];
}

/**
 * What the formulas leave open in every panel: film inside the tubes over that of developed flow, which inlets and buoyancy raise
 * (judgement); film of a wind of about 3 m/s, where Watmuff and McAdams lie some 30 % apart (from memory); the stated fit of Klein
 * (1979; from memory).
 */
const MODEL: readonly Parameter[] = [
  { name: 'film', field: '', band: band(0.85, 1.1, 2), unit: '-', origin: 'model' },
  { name: 'wind', field: '', band: band(7, 10, 14), unit: 'W/(m²·K)', origin: 'model' },
  { name: 'topLoss', field: '', band: band(-0.3, 0, 0.3), unit: 'W/(m²·K)', origin: 'model' },
];
