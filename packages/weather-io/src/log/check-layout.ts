// Whether a caller's layout of a notebook can be used.
import { type Faults, quote } from '../errors.ts';
import { requireFields } from '../fields.ts';
import { isDate } from '../time/calendar.ts';
import { FUEL_UNITS, fuelHeat, GAUGE_KEYS, LOG_QUANTITIES, type LogLayout } from './layout.ts';

/** Least and most heat of gas, landfill gas to propane; judgement. [kWh/m³] */
const GAS_HEAT = [3, 40] as const;
/** Least and most heat of one unit of any fuel; judgement: a litre of landfill gas to 100 cubic feet of propane. [kWh] */
const FUEL_HEAT = [0.001, 5000] as const;

/** Fields of a layout. */
const FIELDS: readonly (keyof LogLayout)[] = [
  'time',
  'dateOrder',
  'summerTime',
  'columns',
  'gasHeat_kWh_per_m3',
  'fuelHeat_kWh_per_unit',
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
  const unit = columns?.heaterMeter?.unit ?? 'kWh';
  const counts = FUEL_UNITS.includes(unit);
  const perUnit: unknown = layout.fuelHeat_kWh_per_unit;
  const within = (value: unknown, [least, most]: readonly [number, number]): boolean =>
    typeof value === 'number' && value >= least && value <= most;
  if (perUnit !== undefined && !within(perUnit, FUEL_HEAT)) {
    const expected = `heat of one ${unit} of the fuel, ${FUEL_HEAT[0]} to ${FUEL_HEAT[1]} kWh`;
    fault('fuelHeat_kWh_per_unit', perUnit, expected, 'Take it from the bill (gross calorific value).');
  } else if (perUnit === undefined && (heat !== undefined ? !within(heat, GAS_HEAT) : counts)) {
    const expected = `heat of a cubic metre of gas, ${GAS_HEAT[0]} to ${GAS_HEAT[1]} kWh/m³`;
    const remedy = 'Take it from the gas bill (gross calorific value), or give fuelHeat_kWh_per_unit for another fuel.';
    fault('gasHeat_kWh_per_m3', heat, expected, remedy);
  } else if (counts && fuelHeat(unit, layout) === null) {
    fault('fuelHeat_kWh_per_unit', perUnit, `heat of one ${unit} of the fuel`, 'Take it from the bill.');
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
