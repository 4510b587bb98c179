// A file of water used, at any step, to the year of volumes that a design takes.
import { failSize, readBytes } from '../bytes.ts';
import { cleanText, decodeText } from '../decode.ts';
import { Faults, quote } from '../errors.ts';
import { DEFAULT_MAX_BYTES } from '../options.ts';
import { dataRows, headerIndex, readCsv } from '../table/csv.ts';
import type { WeatherAssumption } from '../year.ts';
import { checkLayout } from './check.ts';
import { DrawError } from './error.ts';
import { readIntervals } from './intervals.ts';
import { layOut } from './lay-out.ts';
import type { DrawLayout } from './layout.ts';
import { rowTimes } from './stamps.ts';

/** Records up to this long keep to the clock of the house, longer ones to standard time. [s] */
const LONGEST_REPEATED = 10 * 86_400;

/** A year of water used, from a file. */
export interface DrawRecord {
  /** Name of the file, or label of the text. */
  readonly source: string;
  /**
   * Water in each equal part of each hour from 1 January 00:00 standard time; what `draw.volumes` of a design takes. Shape
   * [8760 × {@link partsPerHour}]. [m³]
   */
  readonly volumes: Float64Array;
  /** Values for each hour, a divisor of 60. */
  readonly partsPerHour: number;
  /** What the file covered; a day or a week was repeated through the year. */
  readonly span: 'day' | 'week' | 'year';
  /** Water in the file. [m³] */
  readonly fileVolume: number;
  /** Water of the year: of a year's file all but that of a 29 February. [m³] */
  readonly yearVolume: number;
  /** All that was assumed, for reports. */
  readonly assumptions: readonly WeatherAssumption[];
}

/**
 * Reads a user's own record of hot water from a CSV file: at any step from seconds to days, over a day, a week or a year, as
 * volume of each interval, flow rate or standing of a meter.
 *
 * Each interval's water is spread evenly over it and kept to the last bit. A day or a week is repeated through the year, a week
 * by weekday. With `clock: 'daylight-saving'` a year's stamps are turned into standard time, and a repeated day keeps to the
 * clock of the house.
 *
 * @param path - Path of the file.
 * @param layout - How it is laid out; see {@link DrawLayout}.
 * @returns The volumes for `draw.volumes` of a design. What they mean there is mixed water at `draw.tapTemperature`: set that
 * to the temperature of the metered water.
 * @throws DrawError with every fault found (up to 20), each with line, column, value and remedy.
 * @example
 * const record = await readDraw('docs/examples/draw/invented-meter.csv', {
 *   column: 'reading',
 *   quantity: 'meter',
 *   unit: 'L',
 *   time: { timestamp: 'time' },
 *   clock: 'standard',
 * });
 * const draw = { volumes: record.volumes, tapTemperature: 55 };
 */
export async function readDraw(path: string, layout: DrawLayout): Promise<DrawRecord> {
  const source = layout?.source ?? path.split(/[\\/]/).at(-1)!;
  const faults = faultsOf(path);
  checkLayout(layout, faults);
  faults.throwIfAny();
  const notes: WeatherAssumption[] = [];
  const text = decodeText(await readBytes(path, layout.maxBytes ?? DEFAULT_MAX_BYTES, faults), faults, notes);
  return parse(text, source, layout, faultsOf(source), notes);
}

/**
 * Reads a record of hot water from text; otherwise as {@link readDraw}. Runs in a browser too.
 *
 * @param text - Content of a CSV file.
 * @param layout - How it is laid out.
 * @throws DrawError with every fault found (up to 20).
 */
export function parseDraw(text: string, layout: DrawLayout): DrawRecord {
  const source = layout?.source ?? 'text of water used';
  const faults = faultsOf(source);
  checkLayout(layout, faults);
  faults.throwIfAny();
  const most = layout.maxBytes ?? DEFAULT_MAX_BYTES;
  if (text.length > most) failSize(String(text.length), most, faults);
  return parse(text, source, layout, faults, []);
}

const faultsOf = (source: string): Faults => new Faults(source, (issues) => new DrawError(issues));

function parse(
  raw: string,
  source: string,
  layout: DrawLayout,
  faults: Faults,
  notes: WeatherAssumption[],
): DrawRecord {
  const text = cleanText(raw, faults);
  const headerLine = layout.headerLine ?? firstLine(text);
  const table = text
    .split('\n')
    .slice(headerLine - 1)
    .join('\n');
  const csv = readCsv(table, faults, layout.delimiter ?? (layout.decimal === ',' ? ';' : ','), headerLine);
  const header = csv.rows[0] ?? [];
  const present = headerIndex(header);
  const locate = (name: string): number => {
    const at = present.get(name.trim());
    if (at === undefined) {
      faults.add({
        code: 'missing-column',
        line: headerLine,
        column: name,
        value: quote(header.join(', ')),
        expected: 'this header, which the layout names',
        remedy: 'Correct the name, the separator (delimiter) or the line of the header (headerLine).',
      });
    }
    return at ?? -1;
  };
  const cell = locate(layout.column);
  const { time } = layout;
  const names =
    time === 'row-order'
      ? []
      : 'elapsed' in time
        ? [time.elapsed]
        : 'timestamp' in time
          ? [time.timestamp]
          : [time.date, time.time];
  const timeCells = names.map(locate);
  faults.throwIfAny();
  const rows = dataRows(csv, 'plain', { start: 1, width: header.length }, faults);
  const { dated, wall, standard } = rowTimes(layout, rows, timeCells, faults);
  faults.throwIfAny();
  const isShort = wall.at(-1)! - wall[0]! < LONGEST_REPEATED;
  const intervals = readIntervals({ layout, rows, cell, times: isShort ? wall : standard, faults, notes });
  const laid = layOut(intervals, layout, dated, faults, notes);
  return {
    source,
    volumes: laid.volumes,
    partsPerHour: laid.partsPerHour,
    span: laid.span,
    fileVolume: sum(intervals.volume),
    yearVolume: sum(laid.volumes),
    assumptions: notes,
  };
}

/** Line of the first row that is no comment, from 1. */
function firstLine(text: string): number {
  let line = 1;
  for (let at = 0; text[at] === '#'; line++) {
    const end = text.indexOf('\n', at);
    if (end < 0) break;
    at = end + 1;
  }
  return line;
}

/** Sum that keeps what rounding would drop (Neumaier 1974), so that a year of seconds adds up to its meter. */
function sum(values: Float64Array): number {
  let total = 0;
  let lost = 0;
  for (const value of values) {
    const next = total + value;
    lost += Math.abs(total) >= Math.abs(value) ? total - next + value : value - next + total;
    total = next;
  }
  return total + lost;
}
