// Whether a caller's layout can be used.
import { type Faults, quote } from '../errors.ts';
import { requireFields } from '../fields.ts';
import { COLUMN_KEYS, INDISPENSABLE, LIMITS } from '../limits.ts';
import type { PlainLayout } from '../options.ts';
import { unitsFor } from '../table/units.ts';

/** Fields of a layout. */
const FIELDS: readonly (keyof PlainLayout)[] = [
  'site',
  'columns',
  'time',
  'stamps',
  'irradianceMidpoint',
  'air',
  'calendarYear',
  'missing',
  'delimiter',
  'decimal',
];

const SITE_FIELDS = ['name', 'latitude', 'longitude', 'elevation', 'utcOffset', 'windHeight'];

type Fault = (column: string, value: unknown, expected: string) => void;

const isName = (value: unknown): boolean => typeof value === 'string' && value.trim() !== '';

const isWithin = (value: unknown, from: number, to: number): boolean =>
  typeof value === 'number' && value >= from && value <= to;

/** Faults what is wrong with a layout, from code without types too. */
export function checkLayout(layout: PlainLayout, faults: Faults): void {
  if (!requireFields(layout, FIELDS, '', faults)) return;
  const fault: Fault = (column, value, expected) =>
    faults.add({
      code: 'bad-option',
      column,
      value: value === undefined ? 'nothing' : quote(value),
      expected,
      remedy: 'Correct the layout.',
    });
  const { stamps, air, delimiter, decimal, irradianceMidpoint, calendarYear, missing } = layout;
  checkSite(layout.site, fault, faults);
  checkColumns(layout.columns, fault, faults);
  checkTime(layout.time, fault, faults);
  if (!['start', 'end', 'instant'].includes(stamps)) fault('stamps', stamps, 'start, end or instant');
  if (![undefined, 'mean', 'instant'].includes(air)) fault('air', air, 'mean or instant');
  if (![undefined, ',', ';', '\t'].includes(delimiter)) fault('delimiter', delimiter, 'a comma, a semicolon or a tab');
  if (![undefined, '.', ','].includes(decimal)) fault('decimal', decimal, 'a point or a comma');
  if (decimal === ',' && delimiter === ',') fault('delimiter', delimiter, 'a semicolon or a tab beside decimal commas');
  if (irradianceMidpoint !== undefined && !isWithin(irradianceMidpoint, 0, 1)) {
    fault('irradianceMidpoint', irradianceMidpoint, 'a number from 0 to 1 h');
  }
  if (calendarYear !== undefined && !(Number.isInteger(calendarYear) && isWithin(calendarYear, 1900, 2100))) {
    fault('calendarYear', calendarYear, 'a year from 1900 to 2100');
  }
  const areNumbers = Array.isArray(missing) && missing.every((mark) => typeof mark === 'number');
  if (missing !== undefined && !areNumbers) fault('missing', missing, 'a list of numbers');
}

function checkSite(site: PlainLayout['site'], fault: Fault, faults: Faults): void {
  if (!requireFields(site, SITE_FIELDS, 'site', faults)) return;
  if (site.name !== undefined && typeof site.name !== 'string') fault('site.name', site.name, 'a name');
  for (const [key, from, to, unit] of [
    ['latitude', -90, 90, '° north'],
    ['longitude', -180, 180, '° east'],
    ['elevation', -450, 9000, 'm'],
    ['utcOffset', -12, 14, 'h'],
    ['windHeight', 0.5, 200, 'm'],
  ] as const) {
    const isLeftOut = key === 'windHeight' && site.windHeight === undefined;
    if (!isLeftOut && !isWithin(site[key], from, to)) fault(`site.${key}`, site[key], `${from} to ${to} ${unit}`);
  }
}

function checkColumns(columns: PlainLayout['columns'], fault: Fault, faults: Faults): void {
  if (!requireFields(columns, COLUMN_KEYS, 'columns', faults)) return;
  for (const key of COLUMN_KEYS) {
    const column = columns[key];
    if (column === undefined) {
      if (INDISPENSABLE.has(key)) fault(`columns.${key}`, column, `the column of ${LIMITS[key].words}`);
      continue;
    }
    if (!requireFields(column, ['column', 'unit'], `columns.${key}`, faults)) continue;
    if (!isName(column.column)) fault(`columns.${key}.column`, column.column, 'the header of the column');
    if (!unitsFor(key).includes(column.unit)) {
      fault(`columns.${key}.unit`, column.unit, `one of ${unitsFor(key).join(', ')}`);
    }
  }
}

function checkTime(time: PlainLayout['time'], fault: Fault, faults: Faults): void {
  if (time === 'row-order') return;
  if (typeof time !== 'object' || time === null) {
    fault('time', time, '{ timestamp }, { year, month, day, hour, minute } or row-order');
    return;
  }
  const stamped = 'timestamp' in time;
  const names = stamped ? ['timestamp'] : ['year', 'month', 'day', 'hour', 'minute'];
  if (!requireFields(time, names, 'time', faults)) return;
  for (const name of names) {
    const header = (time as Readonly<Record<string, unknown>>)[name];
    const isNeeded = name !== 'year' && name !== 'minute';
    if ((isNeeded || header !== undefined) && !isName(header)) fault(`time.${name}`, header, 'the header of a column');
  }
}
