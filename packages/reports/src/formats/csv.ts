import type { RunResult } from '@noonloop/sim-core';
import Papa from 'papaparse';
import { formatHour, MONTH_NAMES, MONTH_STARTS, monthOfDay } from '../calendar.ts';
import { COLUMN_KINDS, COLUMN_NAMES, columnHeader, SECOND_TANK_COLUMNS } from '../columns.ts';
import { DEFINITIONS, NUMBER_KEYS } from '../definitions.ts';
import { ReportError } from '../errors.ts';
import { escapeCell } from '../escape.ts';
import { moneyOf, moneyRows, moneyUnit } from '../money/rows.ts';
import type { MoneyGiven } from '../money/types.ts';
import { checkOptions, listRuns, type Runs } from '../options.ts';
import { type Summary, summarize } from '../summary.ts';
import { displayUnit, roundTo, roundToSum, toDisplay, type UnitKind, type Units } from '../units.ts';

/** Options of {@link renderCsv}. */
export interface CsvOptions {
  /** Units of every number; each header ends with its own. Default `metric`. */
  readonly units?: Units;
  /**
   * `months`: a row a month and design; `hours`: a row an hour and design; `steps`: a row a step of the days that the runs kept
   * (`stepDays` of `simulate`); `numbers`: a row a number, a column a design,
   * with definitions; `money`: a row a year of payments and design. Default `months`.
   */
  readonly table?: 'months' | 'hours' | 'steps' | 'numbers' | 'money';
  /**
   * What a spreadsheet takes for decimals: `point` with commas between cells; `comma` with semicolons, as spreadsheets of
   * countries with a decimal comma open it. Default `point`.
   */
  readonly decimal?: 'point' | 'comma';
  /** Starts with a byte order mark, by which some spreadsheets know UTF-8. Default false. */
  readonly byteOrderMark?: boolean;
  /** Prices: one set for all designs, or one for each; needed for table `money`, more rows in `numbers`. */
  readonly money?: MoneyGiven;
}

type Cell = string | number;

function shown(value: number | null, kind: UnitKind, units: Units): Cell {
  return value === null ? '' : roundTo(toDisplay(value, kind, units), displayUnit(kind, units).columnDigits);
}

/** A column as {@link shown} has its numbers; the unit is looked up once for all of them. */
function shownColumn(values: Float64Array | undefined, kind: UnitKind, units: Units): Float64Array | undefined {
  const { scale, offset, columnDigits } = displayUnit(kind, units);
  return values?.map((value) => roundTo(value * scale + offset, columnDigits));
}

/** What wants no quotes, such as the start of an hour: to ask the library of 8760 of them takes a third of the table's time. */
const PLAIN = /^\w(?:[\w .:-]*\w)?$/;

/**
 * Rows as CSV after RFC 4180. The library quotes text, each once; numbers want no quotes, and half a million of them take it four times as long as
 * to write them.
 *
 * @param delimiter - `;` where decimals have commas
 */
export function csvText(rows: readonly (readonly (Cell | boolean | null)[])[], delimiter: ',' | ';' = ','): string {
  const known = new Map<string, string>();
  const quoted = (text: string): string => {
    if (PLAIN.test(text)) return text;
    const found = known.get(text) ?? Papa.unparse([[text]], { delimiter });
    known.set(text, found);
    return found;
  };
  const shownCell = (cell: Cell | boolean | null): string => {
    if (typeof cell !== 'number') return quoted(String(cell ?? ''));
    return delimiter === ';' ? String(cell).replace('.', ',') : String(cell);
  };
  return rows.map((row) => `${row.map(shownCell).join(delimiter)}\r\n`).join('');
}

function monthRows(summaries: readonly Summary[], units: Units): Cell[][] {
  const header = [
    'design',
    'month',
    'monthName',
    ...NUMBER_KEYS.map((key) => columnHeader(key, DEFINITIONS[key].kind, units)),
  ];
  const rows = summaries.flatMap((summary) => {
    const columns = NUMBER_KEYS.map((key): Cell[] => {
      const { kind, additive } = DEFINITIONS[key];
      const values = summary.months.map((month) => month[key]);
      if (!additive) return values.map((value) => shown(value, kind, units));
      return roundToSum(
        values.map((value) => toDisplay(value ?? 0, kind, units)),
        displayUnit(kind, units).columnDigits,
      );
    });
    return MONTH_NAMES.map((name, month): Cell[] => [
      escapeCell(summary.design.name),
      month + 1,
      name,
      ...columns.map((column) => column[month]!),
    ]);
  });
  return [header, ...rows];
}

function numberRows(summaries: readonly Summary[], units: Units): Cell[][] {
  const header = ['number', 'unit', ...summaries.map(({ design }) => escapeCell(design.name)), 'definition'];
  return [
    header,
    ...NUMBER_KEYS.map((key): Cell[] => {
      const { kind, definition } = DEFINITIONS[key];
      return [
        key,
        displayUnit(kind, units).key,
        ...summaries.map(({ year }) => shown(year[key], kind, units)),
        definition,
      ];
    }),
  ];
}

/** Rows below those of {@link numberRows}. */
function moneyNumberRows(
  results: readonly RunResult[],
  money: NonNullable<CsvOptions['money']>,
  units: Units,
): Cell[][] {
  const all = moneyOf(results, money);
  return moneyRows(all).map(({ key, kind, unit: billed, definition, values }): Cell[] => {
    const [symbol, scale] = moneyUnit(kind, all[0]!.currency, units, billed);
    const unit = kind === 'rate' ? 'percent' : symbol.replace('/', '_per_');
    return [key, unit, ...values.map((value) => (value === null ? '' : roundTo(value * scale, 4))), definition];
  });
}

function paymentRows(results: readonly RunResult[], money: CsvOptions['money']): Cell[][] {
  if (money === undefined)
    throw new ReportError('money', 'nothing', 'prices', 'Give the option money with the table of money.');
  const all = moneyOf(results, money);
  const names = ['energySaving', 'maintenance', 'presentValue'] as const;
  return [
    ['design', 'year', ...names.map((name) => `${name}_${all[0]!.currency}`)],
    ...all.flatMap(({ years }, index) =>
      years.map((year): Cell[] => [
        escapeCell(results[index]!.design.name),
        year.year,
        ...names.map((name) => roundTo(year[name], 2)),
      ]),
    ),
  ];
}

function hourRows(runs: Runs, units: Units): Cell[][] {
  const header = ['design', 'hour', 'start', 'month', 'day', 'hourOfDay'];
  const list = listRuns(runs);
  const second = list.some(({ secondTank }) => secondTank !== undefined) ? SECOND_TANK_COLUMNS : [];
  const rows: Cell[][] = [
    [
      ...header,
      ...COLUMN_NAMES.map((name) => columnHeader(name, COLUMN_KINDS[name], units)),
      ...second.map(({ name, kind }) => columnHeader(name, kind, units)),
    ],
  ];
  for (const run of list) {
    const name = escapeCell(run.design.name);
    const columns = [
      ...COLUMN_NAMES.map((column) => shownColumn(run.columns[column], COLUMN_KINDS[column], units)),
      ...second.map(({ kind, of }) => shownColumn(of(run), kind, units)),
    ];
    for (let hour = 0; hour < 8760; hour++) {
      const day = Math.floor(hour / 24);
      const month = monthOfDay(day);
      const row: Cell[] = [name, hour, formatHour(hour), month + 1, day - MONTH_STARTS[month]! + 1, hour % 24];
      for (const column of columns) row.push(column?.[hour] ?? '');
      rows.push(row);
    }
  }
  return rows;
}

/** Start of a step, `06-20 14:10`. */
function formatStep(hour: number, minute: number): string {
  const day = Math.floor(hour / 24);
  const month = monthOfDay(day);
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${two(month + 1)}-${two(day - MONTH_STARTS[month]! + 1)} ${two(hour % 24)}:${two(minute)}`;
}

function stepRows(runs: Runs, units: Units): Cell[][] {
  const list = listRuns(runs);
  const kept = list[0]!.steps;
  if (kept === undefined)
    throw new ReportError(
      'table',
      '"steps" of a run that kept none',
      'runs with days kept',
      'Give stepDays to simulate (--step-days).',
    );
  const names = Object.keys(kept.columns) as (keyof typeof kept.columns)[];
  const rows: Cell[][] = [['design', 'start', ...names.map((name) => columnHeader(name, COLUMN_KINDS[name], units))]];
  for (const { design, steps } of list) {
    if (steps === undefined) continue;
    const { columns, firstHour, hours, stepsPerHour } = steps;
    for (let row = 0; row < hours * stepsPerHour; row++) {
      const hour = firstHour + Math.floor(row / stepsPerHour);
      const start = formatStep(hour, Math.round(((row % stepsPerHour) * 60) / stepsPerHour));
      rows.push([
        escapeCell(design.name),
        start,
        ...names.map((name) => shown(columns[name][row]!, COLUMN_KINDS[name], units)),
      ]);
    }
  }
  return rows;
}

/**
 * Table for a spreadsheet: CRLF, UTF-8; headers end with the unit (`deliveredEnergy_kWh`). Monthly sums are rounded so that
 * they add up to the year of the `numbers` table. Text cells that a spreadsheet would take for a formula get an apostrophe in
 * front.
 *
 * @param runs - one run or several, below each other
 * @param options - units, which table, and what the spreadsheet takes for decimals
 * @throws {@link ReportError} when there is no run, a column is not a whole year of finite numbers, or an option is not known.
 */
export function renderCsv(runs: Runs, options: CsvOptions = {}): string {
  checkOptions(options, ['units', 'table', 'decimal', 'byteOrderMark', 'money']);
  const { units = 'metric', table = 'months', decimal = 'point', byteOrderMark = false, money } = options;
  const results = listRuns(runs);
  const summaries = results.map(summarize);
  const tables: Record<NonNullable<CsvOptions['table']>, () => Cell[][]> = {
    months: () => monthRows(summaries, units),
    hours: () => hourRows(runs, units),
    steps: () => stepRows(runs, units),
    numbers: () => [
      ...numberRows(summaries, units),
      ...(money === undefined ? [] : moneyNumberRows(results, money, units)),
    ],
    money: () => paymentRows(results, money),
  };
  if (!Object.hasOwn(tables, table))
    throw new ReportError('table', JSON.stringify(table), `one of ${Object.keys(tables).join(', ')}`, 'Choose one.');
  if (decimal !== 'point' && decimal !== 'comma')
    throw new ReportError('decimal', JSON.stringify(decimal), "'point' or 'comma'", 'Choose one of the two.');
  return `${byteOrderMark ? '\ufeff' : ''}${csvText(tables[table](), decimal === 'comma' ? ';' : ',')}`;
}
