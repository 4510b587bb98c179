// Whether a caller's layout can be used.
import { IANAZone } from 'luxon';
import { type Faults, quote } from '../errors.ts';
import { requireFields } from '../fields.ts';
import { WEEKDAYS } from '../time/calendar.ts';
import { type DrawLayout, FLOW_UNITS, VOLUME_UNITS } from './layout.ts';

/** Fields of a layout. */
const FIELDS: readonly (keyof DrawLayout)[] = [
  'column',
  'quantity',
  'unit',
  'perCount',
  'time',
  'step',
  'stamps',
  'clock',
  'zone',
  'utcOffset',
  'resets',
  'turnover',
  'gaps',
  'span',
  'weekBegins',
  'firstWeekday',
  'partsPerHour',
  'headerLine',
  'delimiter',
  'decimal',
  'source',
  'maxBytes',
];

const isName = (value: unknown): boolean => typeof value === 'string' && value.trim() !== '';

/** Faults all that is wrong with a layout, from code without types too. */
export function checkLayout(layout: DrawLayout, faults: Faults): void {
  if (typeof layout !== 'object' || layout === null) {
    faults.fail({
      code: 'bad-option',
      value: quote(layout),
      expected: 'a layout: column, quantity, unit, time and clock',
      remedy: 'Say how the file is laid out.',
    });
  }
  requireFields(layout, FIELDS, '', faults);
  const fault = (column: string, value: unknown, expected: string) =>
    faults.add({
      code: 'bad-option',
      column,
      value: value === undefined ? 'nothing' : quote(value),
      expected,
      remedy: 'Correct the layout.',
    });
  const oneOf = (column: string, value: unknown, words: readonly unknown[]) => {
    if (value !== undefined && !words.includes(value)) fault(column, value, `one of ${words.join(', ')}`);
  };
  const within = (column: string, value: unknown, least: number, most: number, words: string) => {
    if (value !== undefined && !(typeof value === 'number' && value >= least && value <= most))
      fault(column, value, words);
  };
  const { quantity, clock, zone, step, span, gaps } = layout;
  if (!isName(layout.column)) fault('column', layout.column, 'the header of the column with the water');
  if (!['volume', 'flow', 'meter'].includes(quantity)) fault('quantity', quantity, 'volume, flow or meter');
  const units = Object.keys(quantity === 'flow' ? FLOW_UNITS : VOLUME_UNITS);
  if (!units.includes(layout.unit)) fault('unit', layout.unit, `one of ${units.join(', ')}`);
  within('perCount', layout.perCount, 1e-9, 1e9, 'a number above 0');
  checkTime(layout, fault, faults);
  within('step', step, 1, 86_400, 'seconds from 1 to 86400');
  oneOf('stamps', layout.stamps, ['start', 'end']);
  if (!['standard', 'daylight-saving', 'utc'].includes(clock))
    fault('clock', clock, 'standard, daylight-saving or utc');
  if (clock === 'daylight-saving' && !(isName(zone) && IANAZone.isValidZone(zone!))) {
    fault('zone', zone, 'the IANA name of a place whose clock it is, such as Europe/Vienna or America/Denver');
  }
  if (clock === 'utc' && layout.utcOffset === undefined) {
    fault('utcOffset', layout.utcOffset, 'hours from −12 to 14 beside clock utc: where the house is');
  }
  within('utcOffset', layout.utcOffset, -12, 14, 'hours from −12 to 14');
  oneOf('resets', layout.resets, ['refuse', 'from-zero']);
  within('turnover', layout.turnover, 1e-9, 1e15, 'a reading above 0');
  oneOf('gaps', gaps, ['refuse', 'zero']);
  oneOf('span', span, ['day', 'week', 'year']);
  if (span !== undefined && step === undefined && quantity !== 'meter') {
    fault('step', step, 'the length of an interval in seconds beside span');
  }
  oneOf('weekBegins', layout.weekBegins, WEEKDAYS);
  oneOf('firstWeekday', layout.firstWeekday, WEEKDAYS);
  const parts = layout.partsPerHour;
  if (parts !== undefined && !(Number.isInteger(parts) && parts > 0 && 60 % parts === 0)) {
    fault('partsPerHour', parts, 'a divisor of 60');
  }
  const line = layout.headerLine;
  if (line !== undefined && !(Number.isInteger(line) && line >= 1 && line <= 10_000)) {
    fault('headerLine', line, 'a line from 1 to 10000');
  }
  oneOf('delimiter', layout.delimiter, [',', ';', '\t']);
  oneOf('decimal', layout.decimal, ['.', ',']);
  if (layout.decimal === ',' && layout.delimiter === ',') {
    fault('delimiter', ',', 'a semicolon or a tab beside decimal commas');
  }
  within('maxBytes', layout.maxBytes, 1, 2 ** 40, 'a positive number');
}

function checkTime(
  layout: DrawLayout,
  fault: (column: string, value: unknown, expected: string) => void,
  faults: Faults,
): void {
  const { time, step } = layout;
  if (time === 'row-order') {
    if (step === undefined) fault('step', step, 'the length of an interval in seconds, for the file has no time');
    return;
  }
  if (typeof time !== 'object' || time === null) {
    fault('time', time, '{ timestamp }, { date, time }, { elapsed, unit } or row-order');
    return;
  }
  const fields =
    'elapsed' in time ? ['elapsed', 'unit'] : 'timestamp' in time ? ['timestamp', 'order'] : ['date', 'time', 'order'];
  requireFields(time, fields, 'time', faults);
  const names: unknown[] =
    'elapsed' in time ? [time.elapsed] : 'timestamp' in time ? [time.timestamp] : [time.date, time.time];
  if (!names.every(isName))
    fault(
      'time',
      names.find((name) => !isName(name)),
      'the header of a column',
    );
  if ('elapsed' in time && !['s', 'min', 'h'].includes(time.unit)) fault('time.unit', time.unit, 's, min or h');
  if (
    'order' in time &&
    time.order !== undefined &&
    !['year-month-day', 'day-month-year', 'month-day-year'].includes(time.order)
  ) {
    fault('time.order', time.order, 'year-month-day, day-month-year or month-day-year');
  }
}
