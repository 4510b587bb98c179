// Settings that name a table and say how it is laid out: water used, and a notebook of gauges.
import * as z from 'zod';
import { fields, list, named, number, oneOf, text } from './shapes.ts';

const file = text('The table, by its path from here.');
const header = (words: string) => text(`Header of ${words}.`);
const order = oneOf('Order of the parts of a date. Default year-month-day.', [
  'year-month-day',
  'day-month-year',
  'month-day-year',
]).optional();
const delimiter = oneOf('What separates cells. Default a comma, or a semicolon with a decimal comma.', [
  ',',
  ';',
  '\t',
]).optional();
const decimal = oneOf('Decimal mark. Default a point.', ['.', ',']).optional();
const weekday = (words: string) =>
  oneOf(words, ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday']).optional();

const WATER_UNITS = ['m3', 'L', 'mL', 'gal', 'ft3', 'm3/s', 'm3/h', 'L/s', 'L/min', 'L/h', 'gal/min', 'gal/h'] as const;

/** A record of water used, for `meter` and `--draw`. */
export const meterSchema = fields('A record of hot water used, and how its table is laid out.', {
  file,
  column: header('the column with the water'),
  quantity: oneOf('What its numbers are.', ['volume', 'flow', 'meter']),
  unit: oneOf('Unit of its numbers; gal is the US gallon.', WATER_UNITS),
  perCount: number('Units that a count of 1 stands for. Default 1.', 1e-9, 1e9).optional(),
  time: z
    .union([
      z.strictObject({ timestamp: header('a column such as 2023-07-03 14:05'), order }),
      z.strictObject({ date: header('the date column'), time: header('the time column'), order }),
      z.strictObject({ elapsed: header('a column of time gone by'), unit: z.enum(['s', 'min', 'h']) }),
      z.literal('row-order'),
    ])
    .meta({
      description: 'Where the time is: { timestamp }, { date, time }, { elapsed, unit } or the word "row-order".',
    }),
  step: number('Length of an interval. [s]', 1, 86_400 * 366).optional(),
  stamps: oneOf('Whether a stamp is the start or the end of its interval. Default start.', ['start', 'end']).optional(),
  clock: oneOf('The clock of the stamps.', ['standard', 'daylight-saving', 'utc']),
  zone: text('Place whose clock it is, such as America/Denver; with daylight-saving.').optional(),
  utcOffset: number('Standard time of the house minus UTC; with utc. [h]', -12, 14).optional(),
  resets: oneOf('What a fall of a meter means. Default refuse.', ['refuse', 'from-zero']).optional(),
  turnover: number('Reading at which the meter starts again from 0.', 0, 1e15).optional(),
  gaps: oneOf('Empty cells and missing rows: a fault, or no water. Default refuse.', ['refuse', 'zero']).optional(),
  span: oneOf('What the file covers. Default by its length.', ['day', 'week', 'year']).optional(),
  weekBegins: weekday('Weekday of the first row of a week without dates. Default monday.'),
  firstWeekday: weekday('Weekday of 1 January. Default monday.'),
  partsPerHour: number('Values for each hour, a divisor of 60.', 1, 60).optional(),
  headerLine: number('Line of the header, from 1.', 1, 1e6).optional(),
  delimiter,
  decimal,
  source: text('Name for errors and reports.').optional(),
});

const GAUGES = [
  'tankTopTemperature',
  'flowTemperature',
  'returnTemperature',
  'loopPressure',
  'pumpRuns',
  'heaterMeter',
  'collectorTemperature',
  'tankBottomTemperature',
  'roomTemperature',
  'airTemperature',
  'pumpSpeed',
  'light',
] as const;
const GAUGE_UNITS = [
  'degC',
  'degF',
  'bar',
  'kPa',
  'Pa',
  'psi',
  'm',
  'ft',
  'yes/no',
  '%',
  'W/m2',
  'kWh',
  'MJ',
  'therm',
  'm3',
  'ft3',
  'CCF',
] as const;
const words = (meaning: string) => list(meaning, z.string(), 0, 100).optional();

/** A notebook of gauge readings, for `check-log` and `fit`. */
export const logSchema = fields('A notebook of gauge readings, how its table is laid out, and what is known.', {
  file,
  time: z
    .union([
      z.strictObject({ timestamp: header('a column such as 2024-07-03 14:30') }),
      z.strictObject({ date: header('the date column'), clock: header('the time column') }),
    ])
    .meta({ description: 'Where the time is: { timestamp } or { date, clock }.' }),
  dateOrder: order,
  summerTime: text('Days on which the clock is put forward and back, such as 03-31..10-27.').optional(),
  columns: fields(
    'Where each gauge is; one at least.',
    Object.fromEntries(
      GAUGES.map((gauge) => [
        gauge,
        fields('Where this gauge stands.', {
          column: header('its column'),
          // Gas in gallons and the like may come with the library: units are its to check.
          unit: text(`Unit of its numbers, such as ${GAUGE_UNITS.join(', ')}.`),
        }).optional(),
      ]),
    ),
  ),
  gasHeat_kWh_per_m3: number('Heat of a cubic metre of gas by the bill, 5 to 40. [kWh/m³]', 0, 1000).optional(),
  fuelHeat_kWh_per_unit: number(
    'Heat of one unit of the meter for any fuel, such as 26.7 for a US gallon of propane. [kWh]',
    0,
    5000,
  ).optional(),
  runningWords: words('Words for a pump that turns.'),
  standingWords: words('Words for a pump that stands.'),
  missing: words('Marks for "not read".'),
  delimiter,
  decimal,
  source: text('Name for errors and reports.').optional(),
  uncertainty: named(
    'How well the house is known, by field, such as draw: 20 %.',
    z.union([z.number(), z.string()]),
  ).optional(),
  noise: named('What the gauges may be off, by field.', z.union([z.number(), z.string()])).optional(),
});
