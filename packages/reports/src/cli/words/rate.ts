// A used panel rated from a survey.
import type { SurveyInput, SurveyRating } from '@noonloop/sim-core';
import { converted, digits, unitIn } from '../../shown-units.ts';
import { adviceInWords } from '../../words/advice.ts';
import { fill } from '../../words/fill.ts';
import { surveyInWords } from '../../words/survey.ts';
import { checked } from '../settings/check.ts';
import { readSettings } from '../settings-file.ts';
import { type Block, type Column, cautionBlocks, heading, listOf, sentences, table } from '../sheet/model.ts';
import { collectorLines } from '../sheet/yaml-lines.ts';
import { choice, type Word } from '../word.ts';

interface RateOptions {
  readonly case?: 'low' | 'likely' | 'high';
}

/** Rates the panel of a survey file. */
export const rate: Word<RateOptions> = {
  usage: 'rate <survey>',
  summary: 'rate a used panel from what can be measured on it',
  description:
    'Rates a used flat panel from a survey, a YAML or JSON file: length, width and covers are needed, the more the better. Gives each number as a band, and the low, the likely and the high panel as lines for a design.',
  example: 'noonloop rate panel.yaml --units us',
  formats: ['yaml'],
  options: (command) =>
    command.addOption(choice('--case <case>', 'yaml: which panel (default: likely)', ['low', 'likely', 'high'])),
  run: async ({ files, options, units }) => {
    const { rateFromSurvey } = await import('@noonloop/sim-core');
    const settings = await readSettings(files[0]!);
    const rating = await checked(settings, 'survey', (fields) => rateFromSurvey(fields as unknown as SurveyInput));
    const cases = { low: rating.low, likely: rating.collector, high: rating.high };
    return {
      sheet: { title: rating.collector.name, blocks: blocks(rating, units) },
      data: rating,
      formats: { yaml: () => collectorLines(cases[options.case ?? 'likely']) },
    };
  },
};

/** Numbers of a rating in words, with the unit in which the library has them. */
const WORDS: Readonly<Record<keyof SurveyRating['bands'], readonly [string, string]>> = {
  eta0: ['eta0', '-'],
  a1: ['a1', 'W/(m²·K)'],
  a2: ['a2', 'W/(m²·K²)'],
  b0: ['incidence modifier b0', '-'],
  efficiencyAtWork: ['efficiency at work', '-'],
  heatCapacity: ['heat capacity', 'J/(m²·K)'],
  pressureDrop: ['pressure drop at rated flow', 'Pa'],
  fluidContent: ['liquid in it', 'm³'],
  apertureArea: ['aperture area', 'm²'],
  weightEmpty: ['weight, empty', 'kg'],
  weightFull: ['weight on the roof, full', 'kg/m²'],
  stagnationTemperature: ['dry in full sun, air of {30 °C}', '°C'],
};

const COLUMNS: readonly Column[] = [{ label: '' }, { label: 'low' }, { label: 'likely' }, { label: 'high' }];

/** What the efficiency at work stands for. */
const AT_WORK = 'At work: the fluid {30 K} over the air, in {800 W/m²}.';

/** As many digits as a survey allows. */
const three = (value: number): string => digits(Number(value.toPrecision(3)));

function blocks(rating: SurveyRating, units: 'metric' | 'us'): Block[] {
  const { bands, cautions, steps } = rating;
  const { narrowing, assumptions } = surveyInWords(rating, units);
  const rows = Object.entries(WORDS).map(([name, [label, unit]]) => {
    const { low, likely, high } = bands[name as keyof typeof WORDS];
    const { symbol } = unitIn(unit, units);
    const said = fill(label, {}, units);
    const cells = [low, likely, high].map((value) => three(converted(value, unit, units)));
    return [symbol === '' ? said : `${said} [${symbol}]`, ...cells];
  });
  return [
    sentences(fill(`In nine cases of ten each number lies between low and high. ${AT_WORK}`, {}, units)),
    table('band', COLUMNS, rows),
    heading('Collector for a design, likely case'),
    { kind: 'lines', text: collectorLines(rating.collector) },
    heading('The same at the lower end'),
    { kind: 'lines', text: collectorLines(rating.low) },
    heading('And at the upper end'),
    { kind: 'lines', text: collectorLines(rating.high) },
    ...listOf('What would narrow it most', narrowing),
    { kind: 'working', title: 'Working of the likely case', steps },
    ...listOf('What was assumed', assumptions),
    ...cautionBlocks(adviceInWords(cautions, units)),
  ];
}
