// Settings about weather: twelve monthly means, and the layout of a table.
import { COLUMN_KEYS } from '@noonloop/weather-io';
import * as z from 'zod';
import { fields, list, months, number, oneOf, text } from './shapes.ts';

const site = (needed: boolean) => ({
  name: text('Name for reports.').optional(),
  latitude: number('North positive, −90 to 90. [°]', -90, 90),
  longitude: number('East positive, −180 to 180. [°]', -180, 180),
  elevation: number('Above sea level. [m]', -450, 9000),
  utcOffset: number('Local standard time minus UTC, −12 to 14. [h]', -12, 14),
  ...(needed ? { name: text('Name for reports.') } : {}),
});

const place = site(false);

/** Twelve monthly means and their place, for `make-weather`. */
export const monthsSchema = fields('Twelve monthly means, from which a year of hours is made.', {
  site: fields('Place; only the latitude is needed.', {
    ...place,
    longitude: place.longitude.optional(),
    elevation: place.elevation.optional(),
    utcOffset: place.utcOffset.optional(),
  }),
  monthly: fields('Means, January first: light in one of four forms, air in one of two, more if known.', {
    dailyGhi_kWh_per_m2: months('Light on the level, a mean day. [kWh/m²]', 0, 13).optional(),
    dailyGhi_MJ_per_m2: months('Light on the level, a mean day. [MJ/m²]', 0, 46).optional(),
    clearness: months('Light over that at the top of the air, 0.05 to 0.85. [-]', 0.05, 0.85).optional(),
    sunshineFraction: months('Hours of sunshine over those from sunrise to sunset, 0 to 1. [-]', 0, 1).optional(),
    dryBulb: months('Mean of the air. [°C]', -70, 45).optional(),
    dryBulb_degF: months('Mean of the air. [°F]', -94, 113).optional(),
    dailyRange: months('Day’s highest less its lowest. [K]', 0, 35).optional(),
    dailyRange_degF: months('Day’s highest less its lowest. [°F]', 0, 63).optional(),
    relativeHumidity: months('Mean, 0.02 to 1. [-]', 0.02, 1).optional(),
    windSpeed: months('Mean. [m/s]', 0, 30).optional(),
  }),
  seed: number('Which of the many years with these means, a whole number. Default 1.', 0, 4294967295).optional(),
});

const column = fields('Where a quantity stands.', {
  column: text('Header of the column, as the file spells it.'),
  unit: text('Unit of its numbers, such as W/m2, kJ/m2, degC, degF, percent, m/s, hPa.'),
});

const header = (words: string) => text(`Header of ${words}.`);

/** How a plain table of weather is laid out, for `--layout`. */
export const layoutSchema = fields('How a table of weather is laid out.', {
  site: fields('Where the weather was taken.', site(true)),
  columns: fields(
    'Where each quantity is; ghi and dryBulb are needed.',
    Object.fromEntries(COLUMN_KEYS.map((name) => [name, column.optional()])),
  ),
  time: z
    .union([
      z.strictObject({ timestamp: header('a column such as 2021-07-03 14:00') }),
      z.strictObject({
        year: header('the year column').optional(),
        month: header('the month column'),
        day: header('the day column'),
        hour: header('the hour column'),
        minute: header('the minute column').optional(),
      }),
      z.literal('row-order'),
    ])
    .meta({
      description: 'Where the time is: { timestamp }, { year, month, day, hour, minute }, or the word "row-order".',
    }),
  stamps: oneOf('What a stamp means.', ['start', 'end', 'instant']),
  calendarYear: number('Year of all rows where no column says it. Default 2023.', 1, 9999).optional(),
  irradianceMidpoint: number('From the start of the hour to the middle of its light, 0 to 1. [h]', 0, 1).optional(),
  missing: list('Numbers that mean "missing".', z.number(), 0).optional(),
  delimiter: oneOf('What separates cells. Default a comma.', [',', ';', '\t']).optional(),
  decimal: oneOf('Decimal mark. Default a point.', ['.', ',']).optional(),
});
