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

/** Limits of a reading: as given, or the tool's, at most 40 % of the value. */
const limits = (reading: Reading, tool: number): Band => {
  if (typeof reading !== 'number') return reading;
  const off = Math.min(tool, 0.4 * reading);
  return band(reading - off, reading, reading + off);
};

/** Every number of a survey with its limits. */
export function surveyParameters(survey: Survey): Parameter[] {
  return [...sizes(survey), ...coverNumbers(survey), ...plateNumbers(survey), ...stateNumbers(survey), ...MODEL];
}

function sizes(survey: Survey): Parameter[] {
  const sized = (name: 'length' | 'width'): Parameter => ({
    name,
    field: name,
    what: `outside ${name}`,
    band: limits(survey[name], TAPE),
    unit: 'm',
    source: `measured, ± ${TAPE * 1000} mm`,
    guessed: false,
    how: 'Measure again, in two places.',
  });
  const measuredOrGuessed = GUESSES.map(({ field, name, what, guess, tool, reason, how }): Parameter => {
    const reading = survey[field] as Reading | undefined;
    const source =
      reading === undefined
        ? `judgement: ${reason}`
        : typeof reading === 'number'
          ? `measured, ± ${Number((tool * 1000).toPrecision(2))} mm (at most 40 %)`
          : 'limits given';
    const known = reading === undefined ? guess : limits(reading, tool);
    return { name, field, what, band: known, unit: 'm', source, guessed: reading === undefined, how };
  });
  return [sized('length'), sized('width'), ...measuredOrGuessed];
}

/** A number that a word of the survey stands for. */
const ofWord = (
  name: ParameterName,
  field: string,
  { word, band: known }: { readonly word: string; readonly band: Band },
  rest: Pick<Parameter, 'what' | 'unit' | 'how'>,
): Parameter => ({
  name,
  field,
  band: known,
  source: `${field} “${word}”: handbook range or judgement, from memory`,
  guessed: word === 'unknown',
  ...rest,
});

function coverNumbers({ coverKind: word = 'unknown', coverThickness: thickness }: Survey): Parameter[] {
  const cover = COVERS[word];
  return [
    ofWord(
      'coverExtinction',
      'coverKind',
      { word, band: cover.extinction },
      {
        what: 'how much light the cover swallows',
        unit: '1/m',
        how: 'Look at the edge of the glass: white or bluish is low in iron, green is window glass.',
      },
    ),
    {
      name: 'coverThickness',
      field: 'coverThickness',
      what: 'thickness of a cover',
      band:
        thickness === undefined
          ? band(0.75 * cover.thickness, cover.thickness, 1.25 * cover.thickness)
          : limits(thickness, 0.0002),
      unit: 'm',
      source: thickness === undefined ? 'judgement: common for this cover' : 'measured',
      guessed: thickness === undefined,
      how: 'Callipers at the edge.',
    },
  ];
}

function plateNumbers(survey: Survey): Parameter[] {
  const { plateMetal = 'unknown', bond = 'unknown', coating = 'unknown' } = survey;
  return [
    ofWord(
      'plateConductivity',
      'plateMetal',
      { word: plateMetal, band: METALS[plateMetal].conductivity },
      {
        what: 'conductivity of the plate',
        unit: 'W/(m·K)',
        how: 'Scratch the back of the plate: red is copper, silver and soft aluminium; a magnet holds on steel.',
      },
    ),
    ofWord(
      'bondResistance',
      'bond',
      { word: bond, band: BONDS[bond] },
      {
        what: 'resistance between plate and tube',
        unit: 'm·K/W',
        how: 'Look along a tube: solder or weld seam, groove with clamp or wire, or one sheet.',
      },
    ),
    ofWord(
      'absorptance',
      'coating',
      { word: coating, band: COATINGS[coating].absorptance },
      {
        what: 'absorptance of the plate',
        unit: '-',
        how: 'Compare with a freshly painted black plate beside it in the sun, by an infrared thermometer on black tape.',
      },
    ),
    ofWord(
      'emittance',
      'coating',
      { word: coating, band: COATINGS[coating].emittance },
      {
        what: 'emittance of the plate',
        unit: '-',
        how: 'Warm the bare plate and read it with an infrared thermometer beside a strip of black tape: much colder than the tape is selective, the same is paint.',
      },
    ),
  ];
}

function stateNumbers(survey: Survey): Parameter[] {
  const { insulation = 'unknown', condition = 'unknown' } = survey;
  return [
    ofWord(
      'insulationConductivity',
      'insulation',
      { word: insulation, band: INSULATIONS[insulation].conductivity },
      {
        what: 'conductivity of the insulation',
        unit: 'W/(m·K)',
        how: 'Look through a vent hole: fibres or foam.',
      },
    ),
    ofWord(
      'light',
      'condition',
      { word: condition, band: CONDITIONS[condition].light },
      {
        what: 'light left by dirt and age',
        unit: '-',
        how: 'Clean the glass outside; look for a film inside and a faded plate.',
      },
    ),
    ofWord(
      'insulationAgeing',
      'condition',
      { word: condition, band: CONDITIONS[condition].insulation },
      {
        what: 'damp or settled insulation',
        unit: '-',
        how: 'Weigh the panel, dry it a week in the sun, weigh it again.',
      },
    ),
    survey.weightEmpty === undefined
      ? {
          ...ofModel(
            'boxMass',
            'mass of box and frame',
            { band: band(3, 5.5, 9), unit: 'kg/m²' },
            'judgement: sheet and profiles',
          ),
          field: 'weightEmpty',
          guessed: true,
          how: 'Weigh the panel on a bathroom scale, one end at a time.',
        }
      : {
          ...ofModel(
            'boxMass',
            'weight of the empty panel',
            { band: limits(survey.weightEmpty, 1), unit: 'kg' },
            'weighed, ± 1 kg',
          ),
          field: 'weightEmpty',
          how: 'Weigh it again, dry.',
        },
  ];
}

/** A number of the formulas themselves. */
function ofModel(
  name: ParameterName,
  what: string,
  { band: known, unit }: Pick<Parameter, 'band' | 'unit'>,
  source: string,
): Parameter {
  const how = 'A yard test: it measures what the formulas leave open.';
  return { name, field: '', what, band: known, unit, source, guessed: false, how };
}

/** What the formulas leave open in every panel. */
const MODEL: readonly Parameter[] = [
  ofModel(
    'film',
    'film inside the tubes over that of developed flow',
    { band: band(0.85, 1.1, 2), unit: '-' },
    'judgement: inlets and buoyancy raise it',
  ),
  ofModel(
    'wind',
    'film of the wind on the cover',
    { band: band(7, 10, 14), unit: 'W/(m²·K)' },
    'about 3 m/s: Watmuff and McAdams lie some 30 % apart (from memory)',
  ),
  ofModel(
    'topLoss',
    'error of the formula for the covers’ loss',
    { band: band(-0.3, 0, 0.3), unit: 'W/(m²·K)' },
    'Klein (1979), its stated fit (from memory)',
  ),
];
