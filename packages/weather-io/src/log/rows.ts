// Rows of a notebook to readings.
import { type Faults, quote } from '../errors.ts';
import { headerIndex } from '../table/csv.ts';
import {
  FUEL_UNITS,
  fuelHeat,
  GAUGE_KEYS,
  LOG_QUANTITIES,
  type LogColumn,
  type LogLayout,
  NOTEBOOK_KEYS,
} from './layout.ts';
import type { GaugeKey, GaugeReading } from './log.ts';
import { type Moment, momentOf } from './moment.ts';

/** Rows of one notebook. */
export class LogRows {
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
    for (const key of NOTEBOOK_KEYS) reading[key] = null;
    for (const { key, column, at } of this.#columns) reading[key] = this.#value(key, column, cells[at]!, line);
    return { moment, reading: reading as unknown as GaugeReading };
  }

  #value(key: GaugeKey, column: LogColumn, cell: string, line: number): number | boolean | null {
    const text = cell.trim().toLowerCase();
    if (this.#missing.has(text)) return null;
    const { words, minimum, maximum, units } = LOG_QUANTITIES[key];
    const fault = (code: 'not-a-number' | 'out-of-range', expected: string): null => {
      const remedy = 'Correct the cell, or empty it; where many are refused look at the unit in the layout.';
      this.#faults.add({ code, line, column: column.column, value: quote(cell), expected, remedy });
      return null;
    };
    if (key === 'pumpRuns') {
      const runs = this.#words.get(text);
      return runs ?? fault('not-a-number', `${words}: one of ${[...this.#words.keys()].join(', ')}`);
    }
    const raw = this.#layout.decimal === ',' ? text.replace(',', '.') : text;
    const number = /^[+-]?(\d+\.?\d*|\.\d+)$/.test(raw) ? Number(raw) : Number.NaN;
    const heat = FUEL_UNITS.includes(column.unit) ? fuelHeat(column.unit, this.#layout) : null;
    const [scale, offset] = heat === null ? units[column.unit]! : [heat, 0];
    const value = number * scale + offset;
    if (value >= minimum && value <= maximum) return value;
    const bounds = [minimum, maximum].map((bound) => Number(((bound - offset) / scale).toPrecision(4)));
    const range = `${words} from ${bounds[0]} to ${bounds[1]} ${column.unit}`;
    return Number.isNaN(number) ? fault('not-a-number', `a number: ${range}`) : fault('out-of-range', range);
  }
}

/** `2024-07-03T14:30` or with a space, in two. */
function splitStamp(text: string): [string, string] {
  const at = text.search(/[T\s]/);
  return at < 0 ? [text, ''] : [text.slice(0, at), text.slice(at + 1)];
}
