import Papa from 'papaparse';
import { formatHour, MONTH_NAMES, MONTH_STARTS, monthOfDay } from '../calendar.ts';
import { COLUMN_KINDS, COLUMN_NAMES, columnHeader } from '../columns.ts';
import { DEFINITIONS, NUMBER_KEYS } from '../definitions.ts';
import { escapeCell } from '../escape.ts';
import { listRuns, type Runs } from '../options.ts';
import { type Summary, summarize } from '../summary.ts';
import { displayUnit, roundTo, roundToSum, toDisplay, type UnitKind, type Units } from '../units.ts';

/** Options of {@link renderCsv}. */
export interface CsvOptions {
  /** Units of every number; each header ends with its own. Default `metric`. */
  readonly units?: Units;
  /**
   * `months`: a row a month and design; `hours`: a row an hour and design; `numbers`: a row a number, a column a design,
   * with definitions. Default `months`.
   */
  readonly table?: 'months' | 'hours' | 'numbers';
}

type Cell = string | number;

function shown(value: number | null, kind: UnitKind, units: Units): Cell {
  return value === null ? '' : roundTo(toDisplay(value, kind, units), displayUnit(kind, units).columnDigits);
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

function hourRows(runs: Runs, units: Units): Cell[][] {
  const header = ['design', 'hour', 'start', 'month', 'day', 'hourOfDay'];
  const rows: Cell[][] = [[...header, ...COLUMN_NAMES.map((name) => columnHeader(name, COLUMN_KINDS[name], units))]];
  for (const { design, columns } of listRuns(runs)) {
    const name = escapeCell(design.name);
    for (let hour = 0; hour < 8760; hour++) {
      const day = Math.floor(hour / 24);
      const month = monthOfDay(day);
      const row: Cell[] = [name, hour, formatHour(hour), month + 1, day - MONTH_STARTS[month]! + 1, hour % 24];
      for (const column of COLUMN_NAMES) row.push(shown(columns[column][hour]!, COLUMN_KINDS[column], units));
      rows.push(row);
    }
  }
  return rows;
}

/**
 * Table for a spreadsheet: comma, point, CRLF, UTF-8 without mark; headers end with the unit (`deliveredEnergy_kWh`).
 * Monthly sums are rounded so that they add up to the year of the `numbers` table. Text cells that a spreadsheet would take
 * for a formula get an apostrophe in front.
 *
 * @param runs - one run or several, below each other
 * @param options - units and which table
 * @throws {@link ReportError} when there is no run or a column is not a whole year of finite numbers.
 */
export function renderCsv(runs: Runs, options: CsvOptions = {}): string {
  const { units = 'metric', table = 'months' } = options;
  const summaries = listRuns(runs).map(summarize);
  const rows =
    table === 'hours'
      ? hourRows(runs, units)
      : table === 'numbers'
        ? numberRows(summaries, units)
        : monthRows(summaries, units);
  return `${Papa.unparse(rows, { newline: '\r\n' })}\r\n`;
}
