/** Panels and roof. */
import { facingWords } from '../../answer/system.ts';
import type { Turned } from '../types.ts';
import { AMOUNTS } from './amounts.ts';
import { type Changes, type ChoiceKnob, field, type Ground, type Knob, type NumberKnob, type Range } from './knob.ts';

const hasSurvey = ({ turned }: Ground): boolean => Object.keys(turned).some((path) => path.startsWith('survey.'));
const rated = (ground: Ground): boolean => !hasSurvey(ground);
/** Survey of a panel of common size, until something is said. */
const FIRST_SURVEY: Turned = { 'survey.length': '2 m', 'survey.width': '1 m', 'survey.covers': 1 };

/** Everything of a survey, taken back. */
const noSurvey = ({ turned }: Ground): Changes =>
  Object.fromEntries(Object.keys(turned).flatMap((path) => (path.startsWith('survey.') ? [[path, undefined]] : [])));

/** The roof: panels and where they look. */
const PANELS: readonly Knob[] = [
  field('array.panels', { label: 'Panels', group: 'roof', amount: 'count', metric: [1, 10, 1] }),
  field('array.tilt', {
    label: 'Tilt',
    group: 'roof',
    amount: 'angle',
    metric: [0, 90, 1],
    help: '0° lies flat, 90° hangs upright',
  }),
  field('array.azimuth', {
    label: 'Facing',
    group: 'roof',
    amount: 'angle',
    metric: [0, 360, 5],
    words: facingWords,
    help: 'By the compass: 90° is east, 180° south, 270° west',
  }),
  {
    kind: 'choice',
    id: 'collector',
    label: 'Kind of panel',
    group: 'roof',
    paths: ['array.collector'],
    choices: () => [
      ['rated', 'Rated: figures of a test report'],
      ['seen', 'Used: by what can be seen on it'],
    ],
    read: (ground) => (hasSurvey(ground) ? 'seen' : 'rated'),
    write: (value, ground) => (value === 'seen' ? { ...FIRST_SURVEY } : noSurvey(ground)),
  },
  field('array.collector.area', {
    label: 'Area of one panel',
    group: 'roof',
    amount: 'area',
    metric: [0.5, 5, 0.1],
    us: [5, 54, 1],
    shown: rated,
  }),
  field('array.collector.eta0', {
    label: 'Light it takes, η0',
    group: 'roof',
    amount: 'plain',
    metric: [0.5, 0.9, 0.01],
    shown: rated,
    help: 'Of a test report: what it makes of the light when it is as cool as the air',
  }),
  field('array.collector.a1', {
    label: 'Heat it loses, a1',
    group: 'roof',
    amount: 'plain',
    metric: [1, 10, 0.1],
    shown: rated,
    help: 'Of a test report, W/(m²·K)',
  }),
  field('array.collector.a2', {
    label: 'And when hot, a2',
    group: 'roof',
    amount: 'plain',
    metric: [0, 0.05, 0.001],
    shown: rated,
    help: 'Of a test report, W/(m²·K²)',
  }),
];

/** One thing that can be seen on a used panel. */
const seenLength = (name: string, label: string, start: string, metric: Range, us: Range): NumberKnob => ({
  kind: 'number',
  id: `survey.${name}`,
  label,
  group: 'roof',
  amount: 'length',
  paths: [`survey.${name}`],
  range: { metric, us },
  shown: hasSurvey,
  read: ({ turned, units }) => AMOUNTS.length.read(turned[`survey.${name}`] ?? start, units),
  write: (value, { units }) => ({ [`survey.${name}`]: AMOUNTS.length.write(value, units) }),
});

const seenChoice = (
  name: string,
  label: string,
  choices: readonly (readonly [string, string])[],
  help?: string,
): ChoiceKnob => ({
  kind: 'choice',
  id: `survey.${name}`,
  label,
  group: 'roof',
  paths: [`survey.${name}`],
  shown: hasSurvey,
  choices: () => choices,
  read: ({ turned }) => String(turned[`survey.${name}`] ?? 'unknown'),
  write: (value) => ({ [`survey.${name}`]: /^\d+$/.test(value) ? Number(value) : value }),
  ...(help === undefined ? {} : { help }),
});

const UNKNOWN = ['unknown', 'I do not know'] as const;

const SEEN: readonly Knob[] = [
  seenLength('length', 'Its length, outside', '2 m', [0.5, 4, 0.05], [2, 13, 0.25]),
  seenLength('width', 'Its width, outside', '1 m', [0.3, 2, 0.05], [1, 6.5, 0.25]),
  seenChoice('covers', 'Covers', [
    ['1', 'One'],
    ['2', 'Two'],
    ['3', 'Three'],
  ]),
  seenChoice('coverKind', 'Covers of', [
    UNKNOWN,
    ['low-iron-glass', 'Clear glass, edge white'],
    ['window-glass', 'Window glass, edge green'],
    ['glass-fibre', 'Glass-fibre sheet'],
    ['polycarbonate', 'Polycarbonate'],
  ]),
  seenChoice('coating', 'Plate', [
    UNKNOWN,
    ['black-paint', 'Painted black'],
    ['selective', 'Selective: bluish or dark, hardly mirrors heat'],
    ['selective-paint', 'Selective paint'],
  ]),
  seenChoice('plateMetal', 'Plate of', [
    UNKNOWN,
    ['copper', 'Copper'],
    ['aluminium', 'Aluminium'],
    ['steel', 'Steel'],
    ['stainless-steel', 'Stainless steel'],
  ]),
  seenChoice('condition', 'Condition', [
    UNKNOWN,
    ['good', 'Good: clear, dry, even colour'],
    ['worn', 'Worn: film or chalky spots'],
    ['poor', 'Poor: water streaks, peeling plate'],
  ]),
];

/** All of the roof. */
export const ROOF: readonly Knob[] = [...PANELS, ...SEEN];
