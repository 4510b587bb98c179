// A notebook of gauge readings: a file by its path, or text that is there already.
import { readBytes } from '../bytes.ts';
import { cleanText, decodeText } from '../decode.ts';
import { Faults, quote, WeatherError, type WeatherIssue } from '../errors.ts';
import { headerIndex, readCsv } from '../table/csv.ts';
import type { WeatherAssumption } from '../year.ts';
import { checkLogLayout } from './check-layout.ts';
import { GAS_VOLUMES, GAUGE_KEYS, LOG_QUANTITIES, type LogColumn, type LogLayout } from './layout.ts';
import type { GaugeKey, GaugeLog, GaugeReading } from './log.ts';
import { type Moment, momentOf } from './moment.ts';

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
  const readings = dated.map(({ reading }) => reading).filter((row) => GAUGE_KEYS.some((key) => row[key] !== null));
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

/** Rows of one notebook. */
class LogRows {
  readonly timeName: string;
  readonly #layout: LogLayout;
  readonly #faults: Faults;
  readonly #width: number;
  readonly #date: number;
  readonly #clock: number;
  readonly #columns: readonly { key: GaugeKey; column: LogColumn; at: number }[];
  readonly #words: ReadonlyMap<string, boolean>;
  readonly #missing: ReadonlySet<string>;

  constructor(header: readonly string[], line: number, layout: LogLayout, faults: Faults) {
    const present = headerIndex(header);
    const locate = (name: string): number => {
      const at = present.get(name.trim());
      if (at === undefined) {
        faults.add({
          code: 'missing-column',
          line,
          column: name,
          value: quote(header.join(', ')),
          expected: 'this header, which the layout names',
          remedy: 'Correct the layout, or the header.',
        });
      }
      return at ?? -1;
    };
    const { time } = layout;
    this.#layout = layout;
    this.#faults = faults;
    this.#width = header.length;
    this.#date = locate('timestamp' in time ? time.timestamp : time.date);
    this.#clock = 'timestamp' in time ? -1 : locate(time.clock);
    this.timeName = 'timestamp' in time ? time.timestamp : `${time.date}, ${time.clock}`;
    this.#columns = GAUGE_KEYS.flatMap((key) => {
      const column = layout.columns[key];
      return column === undefined ? [] : [{ key, column, at: locate(column.column) }];
    });
    const running = layout.runningWords ?? ['yes', 'y', 'on', 'running', 'true', '1', 'x'];
    const standing = layout.standingWords ?? ['no', 'n', 'off', 'standing', 'false', '0'];
    this.#words = new Map([
      ...running.map((word) => [word.trim().toLowerCase(), true] as const),
      ...standing.map((word) => [word.trim().toLowerCase(), false] as const),
    ]);
    this.#missing = new Set(['', ...(layout.missing ?? ['-', '?', 'n/a']).map((mark) => mark.trim().toLowerCase())]);
    faults.throwIfAny();
  }

  /** One row; `null` where it has a fault of its time or length, which is noted. */
  read(cells: readonly string[], line: number): { moment: Moment; reading: GaugeReading } | null {
    if (cells.length < this.#width || cells.slice(this.#width).some((cell) => cell.trim() !== '')) {
      this.#faults.add({
        code: 'row-length',
        line,
        value: quote(cells.join(', ')),
        expected: `${this.#width} cells as in the header, not ${cells.length}`,
        remedy: 'Look for a missing or an extra separator, or a decimal comma.',
      });
      return null;
    }
    const whole = cells[this.#date]!.trim();
    const [date, clock] = this.#clock >= 0 ? [whole, cells[this.#clock]!] : splitStamp(whole);
    const moment = momentOf(date, clock, this.#layout);
    if (moment === null) {
      this.#faults.add({
        code: 'bad-time',
        line,
        column: this.timeName,
        value: quote(this.#clock >= 0 ? `${date} ${clock}` : whole),
        expected: `a date as ${this.#layout.dateOrder ?? 'year-month-day'} and a time such as 14:30 or 2:30 pm`,
        remedy: 'Correct the time of this row, or the option dateOrder.',
      });
      return null;
    }
    const reading: Record<string, number | boolean | null> = { hour: moment.hour ?? 0, line };
    for (const key of GAUGE_KEYS) reading[key] = null;
    for (const { key, column, at } of this.#columns) reading[key] = this.#value(key, column, cells[at]!, line);
    return { moment, reading: reading as unknown as GaugeReading };
  }

  #value(key: GaugeKey, column: LogColumn, cell: string, line: number): number | boolean | null {
    const text = cell.trim().toLowerCase();
    if (this.#missing.has(text)) return null;
    const { words, minimum, maximum, units } = LOG_QUANTITIES[key];
    const fault = (code: 'not-a-number' | 'out-of-range', expected: string): null => {
      const remedy = 'Correct the cell, or empty it.';
      this.#faults.add({ code, line, column: column.column, value: quote(cell), expected, remedy });
      return null;
    };
    if (key === 'pumpRuns') {
      const runs = this.#words.get(text);
      return runs ?? fault('not-a-number', `${words}: one of ${[...this.#words.keys()].join(', ')}`);
    }
    const raw = this.#layout.decimal === ',' ? text.replace(',', '.') : text;
    const number = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(raw) ? Number(raw) : Number.NaN;
    const [scale, offset] = units[column.unit]!;
    const heat = GAS_VOLUMES.includes(column.unit) ? 3.6e6 * this.#layout.gasHeat_kWh_per_m3! : 1;
    const value = (number * scale + offset) * heat;
    const bounds = [minimum, maximum].map((bound) => Number(((bound / heat - offset) / scale).toPrecision(4)));
    const range = `${words} from ${bounds[0]} to ${bounds[1]} ${column.unit}`;
    if (Number.isNaN(number)) return fault('not-a-number', `a number: ${range}`);
    return value >= minimum && value <= maximum ? value : fault('out-of-range', range);
  }
}

/** `2024-07-03T14:30` or with a space, in two. */
function splitStamp(text: string): [string, string] {
  const at = text.search(/[T\s]/);
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + 1)];
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
