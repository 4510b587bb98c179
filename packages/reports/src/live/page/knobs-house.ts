/** Tank, water and heater. */
import { LEFT_OUT } from '../types.ts';
import { AMOUNTS } from './amounts.ts';
import { both, field, type Ground, type Knob } from './knob.ts';

/** Figures of a heater that another kind has its own of. */
const OF_HEATER = [
  'volume',
  'setTemperature',
  'burnerPower',
  'burnerEfficiency',
  'minimumPower',
  'minimumRise',
  'minimumFlow',
  'standbyPower',
  'lossCoefficient',
  'elementHeight',
  'baselineVolume',
];

/** Tank, water and heater. */
export const HOUSE: readonly Knob[] = [
  field('tank.volume', { label: 'Tank', group: 'house', amount: 'volume', metric: [50, 1000, 10], us: [15, 260, 5] }),
  field('coil.length', {
    label: 'Coil in the tank',
    group: 'house',
    amount: 'length',
    metric: [1, 40, 1],
    us: [3, 130, 1],
  }),
  {
    kind: 'number',
    id: 'draw.people',
    label: 'People',
    group: 'house',
    amount: 'count',
    paths: ['draw.people'],
    range: both([1, 10, 1]),
    help: 'Sets the water of a day by what one person uses',
    read: ({ written }) => {
      const people = written('draw.people');
      return typeof people === 'number' ? people : null;
    },
    write: (value) => ({ 'draw.people': value, 'draw.dailyVolume': undefined, 'draw.volumes': undefined }),
  },
  {
    ...field('draw.dailyVolume', {
      label: 'Warm water a day',
      group: 'house',
      amount: 'volume',
      metric: [0, 600, 10],
      us: [0, 160, 5],
    }),
    write: (value: number, { units }: Ground) => ({
      'draw.dailyVolume': AMOUNTS.volume.write(value, units),
      'draw.people': undefined,
    }),
  },
  {
    kind: 'choice',
    id: 'draw.profile',
    label: 'When they bathe',
    group: 'house',
    paths: ['draw.profile', 'draw.hourlyShares'],
    choices: ({ design }) => [
      ...(design.draw.profile === null ? ([['own', 'As the design has it']] as const) : []),
      ['morning', 'Mostly in the morning'],
      ['evening', 'Mostly in the evening'],
      ['level', 'Spread over the day'],
      ['M', 'European profile M'],
      ['L', 'European profile L'],
      ...(['3XS', 'XXS', 'XS', 'S', 'XL', 'XXL'] as const).map((name) => [name, `European profile ${name}`] as const),
    ],
    read: ({ design }) => design.draw.profile ?? 'own',
    write: (value) => ({ 'draw.profile': value === 'own' ? undefined : value }),
  },
  field('draw.tapTemperature', {
    label: 'Warmth at the taps',
    group: 'house',
    amount: 'temperature',
    metric: [30, 60, 1],
    us: [86, 140, 1],
  }),
  {
    kind: 'choice',
    id: 'heater.kind',
    label: 'Heater behind',
    group: 'house',
    paths: ['heater.kind', 'heater'],
    choices: () => [
      ['stored-gas', 'Store with a burner'],
      ['instantaneous-gas', 'Flow-through, burner'],
      ['stored-electric', 'Store, electric'],
      ['instantaneous-electric', 'Flow-through, electric'],
      ['element', 'Element in the solar tank'],
    ],
    read: ({ design }) => design.heater.kind,
    // Another kind has its own usual figures; back at the first kind those of the design hold again.
    write: (value, { first }) => {
      const paths = OF_HEATER.map((name) => `heater.${name}`);
      return value === (first('heater.kind') ?? 'stored-gas')
        ? Object.fromEntries(['heater.kind', ...paths].map((path) => [path, undefined]))
        : { 'heater.kind': value, ...Object.fromEntries(paths.map((path) => [path, LEFT_OUT])) };
    },
  },
  field('heater.setTemperature', {
    label: 'Heater set to',
    group: 'house',
    amount: 'temperature',
    metric: [40, 75, 1],
    us: [104, 167, 1],
  }),
];
