// Whether a caller's layout of a notebook can be used.
import { type Faults, quote } from '../errors.ts';
import { requireFields } from '../fields.ts';
import { isDate } from '../time/calendar.ts';
import { GAS_VOLUMES, GAUGE_KEYS, LOG_QUANTITIES, type LogLayout } from './layout.ts';

/** Least and most heat of gas, landfill gas to propane; judgement. [kWh/m³] */
const GAS_HEAT = [3, 40] as const;

/** Fields of a layout. */
const FIELDS: readonly (keyof LogLayout)[] = [
  'time',
  'dateOrder',
  'summerTime',
  'columns',
  'gasHeat_kWh_per_m3',
  'runningWords',
  'standingWords',
  'missing',
  'delimiter',
  'decimal',
  'source',
];

/** Faults what is wrong with a layout, from code without types too. */
export function checkLogLayout(layout: LogLayout, faults: Faults): void {
  requireFields(layout, FIELDS, '', faults);
  const fault = (column: string, value: unknown, expected: string, remedy = 'Correct the layout.') =>
    faults.add({ code: 'bad-option', column, value: quote(value ?? 'nothing'), expected, remedy });
  const { time, columns, dateOrder, delimiter, decimal, summerTime, gasHeat_kWh_per_m3: heat } = layout;
  const isName = (value: unknown): boolean => typeof value === 'string' && value.trim() !== '';
  const named =
    typeof time === 'object' &&
    time !== null &&
    ('timestamp' in time ? isName(time.timestamp) : isName(time.date) && isName(time.clock));
  if (!named) fault('time', time, '{ timestamp } or { date, clock }, the headers of the columns with the time');
  else requireFields(time, 'timestamp' in time ? ['timestamp'] : ['date', 'clock'], 'time', faults);
  checkColumns(layout, fault, faults);
  const volume = GAS_VOLUMES.includes(columns?.heaterMeter?.unit ?? 'kWh');
  if ((volume || heat !== undefined) && !(typeof heat === 'number' && heat >= GAS_HEAT[0] && heat <= GAS_HEAT[1])) {
    const expected = `heat of a cubic metre of gas, ${GAS_HEAT[0]} to ${GAS_HEAT[1]} kWh/m³`;
    fault('gasHeat_kWh_per_m3', heat, expected, 'Take it from the gas bill (gross calorific value).');
  }
  if (![undefined, 'year-month-day', 'day-month-year', 'month-day-year'].includes(dateOrder)) {
    fault('dateOrder', dateOrder, 'year-month-day, day-month-year or month-day-year');
  }
  if (![undefined, ',', ';', '\t'].includes(delimiter)) fault('delimiter', delimiter, 'a comma, a semicolon or a tab');
  if (![undefined, '.', ','].includes(decimal)) fault('decimal', decimal, 'a point or a comma');
  if (decimal === ',' && delimiter === ',') fault('delimiter', delimiter, 'a semicolon or a tab beside decimal commas');
  if (summerTime !== undefined && summerSpan(summerTime) === null) {
    fault('summerTime', summerTime, 'two days as "MM-DD..MM-DD", such as "03-31..10-27"');
  }
  for (const key of ['runningWords', 'standingWords', 'missing'] as const) {
    const words: unknown = layout[key];
    const isList = Array.isArray(words) && words.every((word) => typeof word === 'string');
    if (words !== undefined && !isList) fault(key, words, 'a list of words');
  }
}

function checkColumns(
  { columns }: LogLayout,
  fault: (column: string, value: unknown, expected: string, remedy?: string) => void,
  faults: Faults,
): void {
  const given = typeof columns === 'object' && columns !== null ? Object.keys(columns) : [];
  const known: readonly string[] = GAUGE_KEYS;
  if (given.length === 0) fault('columns', columns, `at least one of ${known.join(', ')}`);
  for (const key of given.filter((name) => !known.includes(name))) {
    fault(`columns.${key.slice(0, 40)}`, 'a quantity of this name', `one of ${known.join(', ')}`);
  }
  for (const key of GAUGE_KEYS) {
    const column = columns?.[key];
    if (column === undefined || !requireFields(column, ['column', 'unit'], `columns.${key}`, faults)) continue;
    const units = Object.keys(LOG_QUANTITIES[key].units);
    if (typeof column.column !== 'string' || column.column.trim() === '') {
      fault(`columns.${key}.column`, column.column, 'the header of the column');
    }
    if (!units.includes(column.unit)) fault(`columns.${key}.unit`, column.unit, `one of ${units.join(', ')}`);
  }
}

/** First and last day of summer time as month × 100 + day; `null` for any other text. */
export function summerSpan(text: unknown): readonly [number, number] | null {
  const parts = typeof text === 'string' ? /^(\d\d)-(\d\d)\.\.(\d\d)-(\d\d)$/.exec(text) : null;
  if (parts === null) return null;
  const [from, fromDay, to, toDay] = parts.slice(1).map(Number) as [number, number, number, number];
  return isDate(2023, from, fromDay) && isDate(2023, to, toDay) ? [from * 100 + fromDay, to * 100 + toDay] : null;
}
