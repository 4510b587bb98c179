// The ways in: a file by its path, or text that is there already; one year or several.
import { buildYear } from './build.ts';
import { failSize, readBytes } from './bytes.ts';
import { cleanText, decodeText } from './decode.ts';
import { Faults, quote } from './errors.ts';
import type { Format, FormatInput, SourceTable } from './formats/format.ts';
import { asGappy, type BuiltYear, type GappyYear } from './gappy.ts';
import { type AnyOptions, DEFAULT_MAX_BYTES, type GappyOptions, type ReadOptions } from './options.ts';
import { recognize, withCommas } from './recognize.ts';
import { HOURS_OF_YEAR, type WeatherAssumption, type WeatherYear } from './year.ts';
import { yearsOfTable } from './years.ts';

/**
 * Reads a weather file: TMY3, EPW, PVGIS or NSRDB CSV, noonloop's plain CSV, or any table with a column map. The format is
 * recognized by content, never by the file's name.
 *
 * @param path - Path of the file.
 * @param options - All may be left out; see {@link ReadOptions}.
 * @returns The year in local standard time, with everything that was assumed; with `gaps: 'keep'` a {@link GappyYear}.
 * @throws WeatherError with every fault found (up to 20), each with line, column, value and remedy.
 * @example
 * const weather = await readWeather('docs/examples/weather/invented-valley.csv');
 * weather.columns.ghi.length; // 8760
 */
export async function readWeather(path: string, options?: ReadOptions): Promise<WeatherYear>;
export async function readWeather(path: string, options: GappyOptions): Promise<GappyYear>;
export async function readWeather(path: string, options: AnyOptions = {}): Promise<WeatherYear | GappyYear> {
  return finish(oneYear(await load(path, options)), options);
}

/**
 * Reads weather from text; otherwise as {@link readWeather}. Runs in a browser too.
 *
 * @param text - Content of a weather file.
 * @param options - All may be left out; see {@link ReadOptions}.
 * @returns The year in local standard time, with everything that was assumed; with `gaps: 'keep'` a {@link GappyYear}.
 * @throws WeatherError with every fault found (up to 20).
 */
export function parseWeather(text: string, options?: ReadOptions): WeatherYear;
export function parseWeather(text: string, options: GappyOptions): GappyYear;
export function parseWeather(text: string, options: AnyOptions = {}): WeatherYear | GappyYear {
  return finish(oneYear(take(text, options)), options);
}

/**
 * Reads real years from one or several files, each of which holds one whole year or several in a row; otherwise as
 * {@link readWeather}.
 *
 * @param paths - Path of a file, or several.
 * @param options - For all files alike; see {@link ReadOptions}.
 * @returns The years in the order of the files; with `gaps: 'keep'` {@link GappyYear}s, of which the first and the last may be
 * parts.
 * @throws WeatherError with every fault found in the first file that has any (up to 20).
 */
export async function readWeatherYears(
  paths: string | readonly string[],
  options?: ReadOptions,
): Promise<WeatherYear[]>;
export async function readWeatherYears(paths: string | readonly string[], options: GappyOptions): Promise<GappyYear[]>;
export async function readWeatherYears(
  paths: string | readonly string[],
  options: AnyOptions = {},
): Promise<(WeatherYear | GappyYear)[]> {
  const years: (WeatherYear | GappyYear)[] = [];
  // One file after the other, so that only one text is in memory.
  for (const path of [paths].flat()) addYears(years, manyYears(await load(path, options)), options);
  return years;
}

/**
 * Reads real years from one or several texts; otherwise as {@link readWeatherYears}.
 *
 * @param texts - Content of a weather file, or of several.
 * @param options - For all texts alike; see {@link ReadOptions}.
 * @returns The years in the order of the texts.
 * @throws WeatherError with every fault found in the first text that has any (up to 20).
 */
export function parseWeatherYears(texts: string | readonly string[], options?: ReadOptions): WeatherYear[];
export function parseWeatherYears(texts: string | readonly string[], options: GappyOptions): GappyYear[];
export function parseWeatherYears(
  texts: string | readonly string[],
  options: AnyOptions = {},
): (WeatherYear | GappyYear)[] {
  const years: (WeatherYear | GappyYear)[] = [];
  for (const text of [texts].flat()) addYears(years, manyYears(take(text, options)), options);
  return years;
}

/** Adds years to those before; one that is there already would count twice in every mean. */
function addYears(years: (WeatherYear | GappyYear)[], more: readonly BuiltYear[], options: AnyOptions): void {
  for (const year of more) {
    const twin = years.find((other) => isSame(other, year));
    if (twin !== undefined) {
      new Faults(year.source).fail({
        code: 'repeated-year',
        value: quote(twin.source),
        expected: 'each year once; this one is the same',
        remedy: 'Leave one of them out.',
      });
    }
    years.push(finish(year, options));
  }
}

/** Whether light, air and calendar years are the same. */
function isSame(other: WeatherYear | GappyYear, year: BuiltYear): boolean {
  const columns = 'columns' in other ? other.columns : other.columnsWithGaps;
  const alike = (a: Float64Array | Int16Array, b: Float64Array | Int16Array) =>
    a.every((value, hour) => Object.is(value, b[hour]));
  const { ghi, dryBulb } = year.columns;
  return alike(other.calendarYears, year.calendarYears) && alike(columns.ghi, ghi) && alike(columns.dryBulb, dryBulb);
}

const finish = (year: BuiltYear, { gaps }: AnyOptions): WeatherYear | GappyYear =>
  gaps === 'keep' ? asGappy(year) : (year as WeatherYear);

/** A text whose table has been read. */
interface Parsed {
  readonly format: Format;
  readonly source: string;
  readonly table: SourceTable;
  readonly input: FormatInput;
}

function oneYear({ format, source, table, input }: Parsed): BuiltYear {
  const whole = yearsOfTable(table).filter(({ table: part }) => part.rows.cells.length >= HOURS_OF_YEAR);
  if (whole.length > 1) {
    input.faults.fail({
      code: 'several-years',
      line: whole[1]!.table.rows.lines[0]!,
      value: whole.map(({ year }) => year).join(', '),
      expected: 'one year in this file',
      remedy: 'Read it with readWeatherYears, which gives each year by itself, or cut it.',
    });
  }
  return buildYear(format.name, source, table, input);
}

function manyYears({ format, source, table, input }: Parsed): BuiltYear[] {
  const tables = yearsOfTable(table);
  if (tables.length === 1) return [buildYear(format.name, source, table, input)];
  return tables.map(({ table: part, year }) => {
    // Each year has notes of its own beside those of the file.
    return buildYear(format.name, `${source}, ${year}`, part, { ...input, notes: [...input.notes] });
  });
}

async function load(path: string, options: AnyOptions): Promise<Parsed> {
  const faults = new Faults(path);
  const source = options.source ?? path.split(/[\\/]/).at(-1)!;
  const notes: WeatherAssumption[] = [];
  const text = decodeText(await readBytes(path, maxBytesOf(options, faults), faults), faults, notes);
  return parseText(text, source, options, new Faults(source), notes);
}

function take(text: string, options: AnyOptions): Parsed {
  const source = options.source ?? 'weather text';
  const faults = new Faults(source);
  const most = maxBytesOf(options, faults);
  if (text.length > most) failSize(`${text.length} characters`, most, faults);
  return parseText(text, source, options, faults, []);
}

function parseText(
  text: string,
  source: string,
  options: AnyOptions,
  faults: Faults,
  notes: WeatherAssumption[],
): Parsed {
  checkOptions(options, faults);
  const input = withCommas({ text: cleanText(text, faults), options, faults, notes });
  const format = recognize(input);
  return { format, source, table: format.parse(input), input };
}

function checkOptions({ utcOffset, gaps }: AnyOptions, faults: Faults): void {
  if (utcOffset !== undefined && !(utcOffset >= -12 && utcOffset <= 14)) {
    const remedy = 'Correct the option utcOffset.';
    const value = quote(utcOffset);
    faults.fail({ code: 'bad-option', column: 'utcOffset', value, expected: 'hours from −12 to 14', remedy });
  }
  if (gaps !== undefined && gaps !== 'refuse' && gaps !== 'keep') {
    const remedy = 'Correct the option gaps.';
    faults.fail({ code: 'bad-option', column: 'gaps', value: quote(gaps), expected: 'refuse or keep', remedy });
  }
}

function maxBytesOf({ maxBytes = DEFAULT_MAX_BYTES }: AnyOptions, faults: Faults): number {
  if (maxBytes > 0) return maxBytes;
  const remedy = 'Correct the option maxBytes.';
  const value = quote(maxBytes);
  return faults.fail({ code: 'bad-option', column: 'maxBytes', value, expected: 'a positive number', remedy });
}
