// Whether a caller's layout can be used.
import { type Faults, quote } from '../errors.ts';
import { COLUMN_KEYS, INDISPENSABLE, LIMITS } from '../limits.ts';
import type { PlainLayout } from '../options.ts';
import { unitsFor } from '../table/units.ts';
import { SiteReader } from './format.ts';

/** Faults what is wrong with a layout, from code without types too. */
export function checkLayout(layout: PlainLayout, faults: Faults): void {
  const fault = (column: string, value: unknown, expected: string) =>
    faults.add({ code: 'bad-option', column, value: quote(value), expected, remedy: 'Correct the option plain.' });
  const { site, columns, stamps, air, delimiter, decimal, irradianceMidpoint, calendarYear, missing } = layout;
  const read = new SiteReader(faults);
  read.latitude(String(site?.latitude), null);
  read.longitude(String(site?.longitude), null);
  read.elevation(String(site?.elevation), null);
  read.utcOffset(String(site?.utcOffset), null);
  if (site?.windHeight !== undefined) read.windHeight(String(site.windHeight), null);
  for (const key of COLUMN_KEYS) {
    const column = columns?.[key];
    if (column === undefined) {
      if (INDISPENSABLE.has(key)) fault(`columns.${key}`, 'nothing', `the column of ${LIMITS[key].words}`);
    } else if (!unitsFor(key).includes(column.unit)) {
      fault(`columns.${key}.unit`, column.unit, `one of ${unitsFor(key).join(', ')}`);
    }
  }
  const time: unknown = layout.time;
  if (time !== 'row-order' && (typeof time !== 'object' || time === null)) {
    fault('time', time, 'the columns of the time, or row-order');
  }
  if (!['start', 'end', 'instant'].includes(stamps)) fault('stamps', stamps, 'start, end or instant');
  if (![undefined, 'mean', 'instant'].includes(air)) fault('air', air, 'mean or instant');
  if (![undefined, ',', ';', '\t'].includes(delimiter)) fault('delimiter', delimiter, 'a comma, a semicolon or a tab');
  if (![undefined, '.', ','].includes(decimal)) fault('decimal', decimal, 'a point or a comma');
  if (decimal === ',' && delimiter === ',') fault('delimiter', delimiter, 'a semicolon or a tab beside decimal commas');
  if (irradianceMidpoint !== undefined && !(irradianceMidpoint >= 0 && irradianceMidpoint <= 1)) {
    fault('irradianceMidpoint', irradianceMidpoint, 'a number from 0 to 1 h');
  }
  if (calendarYear !== undefined && !(Number.isInteger(calendarYear) && calendarYear >= 1900 && calendarYear <= 2100)) {
    fault('calendarYear', calendarYear, 'a year from 1900 to 2100');
  }
  if (missing !== undefined && !Array.isArray(missing)) fault('missing', missing, 'a list of numbers');
}
