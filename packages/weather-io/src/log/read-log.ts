// A notebook of gauge readings: a file by its path, or text that is there already.
import { readBytes } from '../bytes.ts';
import { cleanText, decodeText } from '../decode.ts';
import { Faults, quote, WeatherError, type WeatherIssue } from '../errors.ts';
import { readCsv } from '../table/csv.ts';
import type { WeatherAssumption } from '../year.ts';
import { checkLogLayout } from './check-layout.ts';
import { GAUGE_KEYS, type LogLayout } from './layout.ts';
import type { GaugeLog, GaugeReading } from './log.ts';
import type { Moment } from './moment.ts';
import { LogRows } from './rows.ts';

/** Largest notebook: a reading a minute for a year. Judgement. [B] */
const MOST_BYTES = 32 * 1024 * 1024;

/**
 * Reads a notebook of gauge readings from a CSV file. Lines that begin with `#` before the header are notes.
 *
 * @param path - Path of the file.
 * @param layout - Which columns hold what, in which unit; see {@link LogLayout}.
 * @throws WeatherError with every fault found (up to 20), each with line, column, value and remedy: the package's one error for
 * files.
 * @example
 * const log = await readLog('docs/examples/logs/invented-summer.csv', {
 *   time: { date: 'date', clock: 'time' },
 *   columns: { tankTopTemperature: { column: 'tank top', unit: 'degC' }, pumpRuns: { column: 'pump', unit: 'yes/no' } },
 * });
 */
export async function readLog(path: string, layout: LogLayout): Promise<GaugeLog> {
  const faults = new Faults(path);
  const notes: WeatherAssumption[] = [];
  const source = layout?.source ?? path.split(/[\\/]/).at(-1)!;
  const bytes = await aboutLogsAsync(() => readBytes(path, MOST_BYTES, faults));
  return aboutLogs(() => parse(decodeText(bytes, faults, notes), layout, source, notes));
}

/**
 * Reads a notebook from text; otherwise as {@link readLog}. Runs in a browser too.
 *
 * @param text - Content of a CSV file.
 * @param layout - Which columns hold what, in which unit.
 * @throws WeatherError with every fault found (up to 20).
 */
export function parseLog(text: string, layout: LogLayout): GaugeLog {
  return aboutLogs(() => parse(text, layout, layout?.source ?? 'log text', []));
}

function parse(text: string, layout: LogLayout, source: string, notes: WeatherAssumption[]): GaugeLog {
  const faults = new Faults(source);
  if (typeof layout !== 'object' || layout === null) {
    faults.fail({
      code: 'bad-option',
      column: 'layout',
      value: quote(layout),
      expected: 'a layout that says where the time and the columns are',
      remedy: 'Give { time, columns }.',
    });
  }
  checkLogLayout(layout, faults);
  faults.throwIfAny();
  const clean = cleanText(text, faults);
  const remarks = /^(?:#[^\n]*(?:\n|$))*/.exec(clean)![0];
  const remarkLines = remarks.split('\n').length - 1;
  for (const remark of remarks.split('\n').filter((line) => line.length > 1)) {
    notes.push({ code: 'note', text: remark.slice(1, 400).trim() });
  }
  const delimiter = layout.delimiter ?? (layout.decimal === ',' ? ';' : ',');
  const csv = readCsv(clean.slice(remarks.length), faults, delimiter, remarkLines + 1);
  const rows = new LogRows(csv.rows[0] ?? [], csv.firstLine, layout, faults);
  const taken: { moment: Moment; reading: GaugeReading }[] = [];
  csv.rows.slice(1).forEach((cells, index) => {
    if (cells.every((cell) => cell.trim() === '')) return;
    const row = rows.read(cells, csv.firstLine + 1 + index);
    if (row !== null) taken.push(row);
  });
  checkOrder(taken, rows.timeName, faults);
  checkMeter(taken, layout, faults);
  faults.throwIfAny();
  const dated = taken.filter(({ moment }) => moment.hour !== null);
  const readings = dated
    .map(({ reading }) => reading)
    .filter((row) => GAUGE_KEYS.some((key) => (row[key] ?? null) !== null));
  const leapDay = taken.length - dated.length;
  if (leapDay > 0) {
    const words = `${leapDay} readings of 29 February are left out: the simulated year has no such day.`;
    notes.push({ code: 'leap-day-dropped', text: words });
  }
  const empty = dated.length - readings.length;
  if (empty > 0) notes.push({ code: 'empty-rows', text: `${empty} lines hold a time and no reading.` });
  if (readings.length === 0) {
    const remedy = 'Look whether header and missing marks are right.';
    faults.fail({ code: 'truncated', line: csv.firstLine, expected: 'readings below the header', remedy });
  }
  return { source, calendarYear: taken[0]!.moment.year, readings, assumptions: notes };
}

type Taken = readonly { readonly moment: Moment; readonly reading: GaugeReading }[];

/** Times must rise, within one calendar year. */
function checkOrder(taken: Taken, column: string, faults: Faults): void {
  let last = -1;
  for (const { moment, reading } of taken) {
    const { line } = reading;
    const fault = (code: 'out-of-order' | 'bad-time', expected: string, remedy: string) =>
      faults.add({ code, line, column, expected, remedy });
    if (moment.year !== taken[0]!.moment.year) {
      const expected = `readings of one calendar year, ${taken[0]!.moment.year}, not of ${moment.year}`;
      fault('bad-time', expected, 'Split the notebook at the turn of the year.');
    } else if (moment.hour !== null && moment.hour <= last) {
      fault('out-of-order', 'a later time than in the reading before', 'Sort the readings, or correct the time.');
    }
    last = moment.hour ?? last;
  }
}

/** A meter does not run back. */
function checkMeter(taken: Taken, layout: LogLayout, faults: Faults): void {
  let last = 0;
  for (const { reading } of taken) {
    const { heaterMeter, line } = reading;
    if (heaterMeter === null) continue;
    if (heaterMeter < last) {
      faults.add({
        code: 'out-of-range',
        line,
        column: layout.columns.heaterMeter!.column,
        expected: 'no less than in the reading before: a meter counts up',
        remedy: 'Correct the cell, or empty it; after a change of meter begin a new log.',
      });
    }
    last = heaterMeter;
  }
}

/** What the readers of weather say about files, said about logs. */
const ABOUT_LOGS: Partial<Record<WeatherIssue['code'], Pick<WeatherIssue, 'expected' | 'remedy'>>> = {
  empty: { expected: 'a notebook of readings, not an empty text', remedy: 'Write the header and the readings.' },
  'not-a-file': { expected: 'a file, not a folder, device or pipe', remedy: 'Give the path of one CSV file.' },
  'too-large': { expected: 'a notebook of at most 32 MiB', remedy: 'Cut it down to the weeks in question.' },
};

function retold(error: unknown): unknown {
  if (!(error instanceof WeatherError)) return error;
  return new WeatherError(error.issues.map((issue) => ({ ...issue, ...ABOUT_LOGS[issue.code] })));
}

function aboutLogs<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw retold(error);
  }
}

async function aboutLogsAsync<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read();
  } catch (error) {
    throw retold(error);
  }
}
