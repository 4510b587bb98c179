// The two ways in: a file by its path, or text that is there already.
import { buildYear } from './build.ts';
import { cleanText, decodeText } from './decode.ts';
import { Faults, quote } from './errors.ts';
import type { Format, FormatInput } from './formats/format.ts';
import { FORMATS } from './formats/index.ts';
import { DEFAULT_MAX_BYTES, type ReadOptions } from './options.ts';
import type { WeatherAssumption, WeatherYear } from './year.ts';

/** Lines in which a format shows itself. */
const HEAD_LINES = 3;

/**
 * Reads a weather file: TMY3, EPW, PVGIS or NSRDB CSV, noonloop's plain CSV, or any table with a column map. The format is
 * recognized by content, never by the file's name.
 *
 * @param path - Path of the file.
 * @param options - All may be left out; see {@link ReadOptions}.
 * @returns The year in local standard time, with everything that was assumed.
 * @throws WeatherError with every fault found (up to 20), each with line, column, value and remedy.
 * @example
 * const weather = await readWeather('docs/examples/weather/invented-valley.csv');
 * weather.columns.ghi.length; // 8760
 */
export async function readWeather(path: string, options: ReadOptions = {}): Promise<WeatherYear> {
  const faults = new Faults(path);
  const source = options.source ?? path.split(/[\\/]/).at(-1)!;
  const notes: WeatherAssumption[] = [];
  const text = decodeText(await readBytes(path, maxBytesOf(options, faults), faults), faults, notes);
  return readText(text, source, options, new Faults(source), notes);
}

/**
 * Reads weather from text; otherwise as {@link readWeather}. Runs in a browser too.
 *
 * @param text - Content of a weather file.
 * @param options - All may be left out; see {@link ReadOptions}.
 * @returns The year in local standard time, with everything that was assumed.
 * @throws WeatherError with every fault found (up to 20).
 */
export function parseWeather(text: string, options: ReadOptions = {}): WeatherYear {
  const source = options.source ?? 'weather text';
  const faults = new Faults(source);
  const most = maxBytesOf(options, faults);
  if (text.length > most) failSize(text.length, most, faults);
  return readText(text, source, options, faults, []);
}

function readText(
  text: string,
  source: string,
  options: ReadOptions,
  faults: Faults,
  notes: WeatherAssumption[],
): WeatherYear {
  const { utcOffset } = options;
  if (utcOffset !== undefined && !(utcOffset >= -12 && utcOffset <= 14)) {
    const remedy = 'Correct the option utcOffset.';
    faults.fail({
      code: 'bad-option',
      column: 'utcOffset',
      value: quote(utcOffset),
      expected: 'hours from −12 to 14',
      remedy,
    });
  }
  const input: FormatInput = { text: cleanText(text, faults), options, faults, notes };
  const format = recognize(input);
  return buildYear(format.name, source, format.parse(input), input);
}

function recognize({ text, options, faults }: FormatInput): Format {
  const wanted = options.format ?? (options.plain === undefined ? undefined : 'plain');
  if (wanted !== undefined) {
    const format = FORMATS.find(({ name }) => name === wanted);
    if (format !== undefined) return format;
    const expected = `one of ${FORMATS.map(({ name }) => name).join(', ')}`;
    const remedy = 'Correct the option format, or leave it out.';
    faults.fail({ code: 'bad-option', column: 'format', value: quote(wanted), expected, remedy });
  }
  const head = text.slice(0, 65_536).split('\n', HEAD_LINES);
  const found = FORMATS.filter((format) => format.sniff(head));
  if (found.length === 1) return found[0]!;
  const names = (formats: readonly Format[]) => formats.map(({ name }) => name).join(', ');
  if (found.length > 1) {
    const expected = `one format, not the headers of ${names(found)}`;
    faults.fail({
      code: 'mixed-formats',
      line: 1,
      value: quote(head[0]),
      expected,
      remedy: 'Give each file by itself.',
    });
  }
  return faults.fail({
    code: 'unknown-format',
    line: 1,
    value: quote(head[0]),
    expected: `a header of one of ${names(FORMATS)}`,
    remedy: 'Choose a file in one of these formats, or give a layout with the option plain.',
  });
}

function maxBytesOf({ maxBytes = DEFAULT_MAX_BYTES }: ReadOptions, faults: Faults): number {
  if (maxBytes > 0) return maxBytes;
  const remedy = 'Correct the option maxBytes.';
  return faults.fail({
    code: 'bad-option',
    column: 'maxBytes',
    value: quote(maxBytes),
    expected: 'a positive number',
    remedy,
  });
}

function failSize(size: number, most: number, faults: Faults): never {
  const remedy = 'Choose one year in hours or half hours, or raise the option maxBytes.';
  return faults.fail({ code: 'too-large', value: String(size), expected: `at most ${most} bytes`, remedy });
}

/** Bytes of a file. `node:fs` is loaded only here, so that the package runs in a browser. */
async function readBytes(path: string, most: number, faults: Faults): Promise<Uint8Array> {
  const { readFile, stat } = await import('node:fs/promises');
  try {
    const entry = await stat(path);
    if (!entry.isFile()) {
      const expected = `a file, not ${entry.isDirectory() ? 'a folder' : 'a device or pipe'}`;
      faults.fail({ code: 'not-a-file', expected, remedy: 'Give the path of one weather file.' });
    }
    if (entry.size > most) failSize(entry.size, most, faults);
    return new Uint8Array(await readFile(path));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    if (code === 'ENOENT' || code === 'ENOTDIR') {
      faults.fail({ code: 'not-found', expected: 'a file at this path', remedy: 'Correct the path.' });
    }
    return faults.fail({
      code: 'unreadable',
      value: quote(code),
      expected: 'a file that may be read',
      remedy: 'Check its permissions.',
    });
  }
}
