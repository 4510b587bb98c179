// Settings of jobs: collectors against each other, limits of sizing, studies.
import * as z from 'zod';
import { STUDIES } from '../study/names.ts';
import { fields, list, named, number, oneOf, quantity, text } from './shapes.ts';

/** Panels and tubes for one roof, for `collectors`. */
export const collectorsSchema = fields('Collectors that may go on one roof.', {
  years: number('Years that they are to serve, 1 to 50. Default 20.', 1, 50).optional(),
  candidates: list(
    'What may be bought.',
    fields('One choice.', {
      name: text('Name, each its own.'),
      collector: z.looseObject({}).meta({ description: 'Coefficients, as array.collector of a design has them.' }),
      panels: number('How many, 1 to 100.', 1, 100),
      grossArea: quantity('Outside size of one panel. [m²]'),
      weightFull: quantity('One panel with its liquid. [kg]'),
      price: number('All panels together. [money]', 0, 1e9),
      snow: oneOf('Whether snow stays on it. Default ignored.', ['ignored', 'plate', 'tubes']).optional(),
    }),
    1,
    50,
  ),
});

const optional = (shape: Record<string, string>) =>
  Object.fromEntries(Object.entries(shape).map(([name, words]) => [name, quantity(words).optional()]));

/** Limits of the sizing, for `size --limits`; what is left out has the library’s default, which the sheet states. */
export const sizingSchema = fields('What the parts of a system are to keep; all may be left out.', {
  panels: fields('Panels.', {
    aim: oneOf('Cover the sunniest month and no more, or a share of the year.', ['summer', 'year']).optional(),
    ...optional({
      yearShare: 'Share of the year’s heat with the aim "year". Default 0.6. [-]',
      fluidTemperature: 'Mean of the fluid. Default 50. [°C]',
      systemShare: 'What pipes and tank leave of the gain. Default 0.8. [-]',
    }),
  }).optional(),
  tank: fields(
    'Tank.',
    optional({
      startTemperature: 'Mean of the tank on a summer morning. Default 30. [°C]',
      maximumTemperature: 'Mean that a bright day may bring it to. Default 80. [°C]',
      daysOfDraw: 'Days of hot water that it holds. Default 1.25. [-]',
    }),
  ).optional(),
  glycol: fields(
    'Glycol.',
    optional({
      margin: 'Freezing point below the coldest hour. Default 5. [K]',
      leastVolumeFraction: 'Least share by volume. Default 0.25. [-]',
    }),
  ).optional(),
  pipe: fields(
    'Pipe and insulation.',
    optional({
      flow: 'Through the whole array. Default 0.7 L/min for each m². [m³/s]',
      highestVelocity: 'For quiet and elbows. Default 0.7. [m/s]',
      lowestVelocity: 'Below it air is not carried along. Default 0.25. [m/s]',
      highestHead: 'Of the pipe, fluid warm. Default 1. [m]',
      fluidTemperature: 'Loop of a working system. Default 45. [°C]',
      coldFluid: 'Loop on a winter morning. Default 5. [°C]',
      air: 'Around the pipe. Default 10. [°C]',
      lossShare: 'Loss over full-sun heat. Default 0.05. [-]',
    }),
  ).optional(),
  coil: fields(
    'Coil.',
    optional({
      flow: 'Through the coil. Default 0.7 L/min for each m². [m³/s]',
      tankTemperature: 'Water around it. Default 40. [°C]',
      difference: 'Fluid over tank in full sun. Default 10. [K]',
      fluxPerArea: 'Gain of the collectors in full sun. Default 600. [W/m²]',
    }),
  ).optional(),
  pump: fields(
    'Pump and its module.',
    optional({
      air: 'Outdoor air, for the cells. Default 15. [°C]',
      warmFluid: 'Loop of a working system. Default 45. [°C]',
      coldFluid: 'Loop on a winter morning. Default 5. [°C]',
      startIrradiance: 'Light in which the pump is to start. Default 200. [W/m²]',
      dullIrradiance: 'Light of a dull morning. Default 150. [W/m²]',
    }),
  ).optional(),
  vessel: fields(
    'Vessel and pressures.',
    optional({
      topPressure: 'Gauge pressure at the top of the cold loop. Default 0.5 bar. [Pa]',
      ratedPressure: 'Gauge pressure that the weakest part bears. Default 6 bar. [Pa]',
      maximumTemperature: 'Highest mean of the liquid. Default 120. [°C]',
    }),
  ).optional(),
});

const value = z.union([z.number(), z.string(), z.boolean(), z.null()]);
const bound = (words: string) => quantity(words);

const WAYS =
  'a list of values, { from, to, count }, { from, to, whole }, { from, likely, to }, { p10, p90 } or { values }';

/** A study, for `study`. */
export const studySchema = fields('A study: one design, what varies, and what is looked for.', {
  study: oneOf('What kind.', STUDIES),
  design: text('The design file, by its path from here.'),
  vary: named(
    `Fields by place, such as array.tilt: ${WAYS}.`,
    z
      .union([
        z.array(value).min(1),
        z.strictObject({ from: bound('First.'), to: bound('Last.'), count: number('Values.', 2, 10_000) }),
        z.strictObject({
          from: bound('Lowest.'),
          to: bound('Highest.'),
          whole: z.boolean().optional(),
          likely: bound('Likeliest.').optional(),
        }),
        z.strictObject({ p10: bound('One of ten lies below.'), p90: bound('Nine of ten lie below.') }),
        z.strictObject({ values: z.array(value).min(1), weights: z.array(z.number()).optional() }),
        z.strictObject({ variants: z.record(z.string(), z.record(z.string(), z.any())) }),
      ])
      .meta({ description: `How it varies: ${WAYS}.` }),
  ),
  numbers: list('Key figures to keep besides the usual ones.', z.string(), 0).optional(),
  goal: z
    .union([z.strictObject({ highest: z.string() }), z.strictObject({ lowest: z.string() })])
    .meta({ description: 'best-of: { highest } or { lowest } and a key figure.' })
    .optional(),
  limits: named(
    'best-of: bounds of key figures, by name.',
    z.strictObject({ atLeast: z.number().optional(), atMost: z.number().optional() }),
  ).optional(),
  evaluations: number('best-of: most designs looked at. Default 200.', 2, 10_000).optional(),
  method: oneOf('sensitivity: how.', ['one-at-a-time', 'morris', 'sobol']).optional(),
  paths: number('sensitivity by morris: paths. Default 20.', 2, 10_000).optional(),
  samples: number('sobol and uncertainty: samples.', 8, 100_000).optional(),
  seed: number('Seed of what is drawn. Default 1.', 0, 4294967295).optional(),
  correlations: list(
    'uncertainty: inputs that go together.',
    z.strictObject({
      between: z.array(z.string()).length(2).meta({ description: 'The two fields, by place.' }),
      rank: number('Rank correlation, above −1 and below 1: positive where large comes with large.', -1, 1),
    }),
    0,
  ).optional(),
  price: named(
    'sweep: what a design costs: "fixed", and for a place money by the unit or { value: money }.',
    z.union([z.number(), z.record(z.string(), z.number())]),
  ).optional(),
});
