// What a run is given is looked at once, before anything is computed: a mistake in a script ends in words, not in a table of NaN.
import type { FineLight, WeatherYear } from '@noonloop/weather-io';
import { DesignError, type DesignIssue, quote } from '../input/errors.ts';

const HOURS = 8760;

/** Columns that every weather year has; the others may be `null`. */
const NEEDED = ['ghi', 'dni', 'dhi', 'dryBulb'];

/**
 * Refuses what is no design from `defineSystem`, no weather year, or an option that a run does not know.
 *
 * @param known - Names of the options that the function takes.
 * @throws {@link DesignError} listing all faults at once.
 */
export function checkArguments(design: unknown, weather: unknown, options: unknown, known: readonly string[]): void {
  const issues = [...designFaults(design), ...weatherFaults(weather), ...optionFaults(options, known)];
  if (issues.length > 0) throw new DesignError(issues);
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

function designFaults(design: unknown): DesignIssue[] {
  if (isObject(design) && Array.isArray(design.assumptions)) return [];
  const isWritten = isObject(design) && isObject(design.array);
  const found = isWritten ? 'a design as written, not yet checked' : kindOf(design);
  return [{ path: 'design', found, expected: 'a design from defineSystem', remedy: 'Give defineSystem(...) of it.' }];
}

/** Weather years that have been looked through: none is changed after its first use. */
const sound = new WeakSet<object>();

function weatherFaults(weather: unknown): DesignIssue[] {
  if (isObject(weather) && sound.has(weather)) return [];
  const found = faultsIn(weather);
  if (found.length === 0) sound.add(weather as object);
  return found;
}

function faultsIn(weather: unknown): DesignIssue[] {
  const expected = 'a weather year as readWeather gives it';
  if (!isObject(weather) || !isObject(weather.columns) || !isObject(weather.site)) {
    const awaited =
      weather instanceof Promise ? 'Put await before it.' : 'Give the outcome of await readWeather(file).';
    return [{ path: 'weather', found: kindOf(weather), expected, remedy: awaited }];
  }
  const { columns, fineLight, site } = weather as unknown as WeatherYear;
  const fine = fineLight === undefined ? [] : fineFaults(fineLight);
  return [
    ...siteFaults(site),
    ...fine,
    ...Object.entries(columns).flatMap(([name, column]) => columnFaults(name, column)),
  ];
}

function siteFaults(site: WeatherYear['site']): DesignIssue[] {
  const within = (key: 'latitude' | 'longitude' | 'elevation' | 'utcOffset', least: number, most: number) => {
    const value: unknown = site[key];
    const fits = typeof value === 'number' && value >= least && value <= most;
    const remedy = 'Read the file again, or give the site as its owner states it.';
    return fits
      ? []
      : [{ path: `weather.site.${key}`, found: quote(value), expected: `from ${least} to ${most}`, remedy }];
  };
  return [
    ...within('latitude', -90, 90),
    ...within('longitude', -180, 180),
    ...within('elevation', -500, 9000),
    ...within('utcOffset', -14, 14),
  ];
}

/** Steps in an hour that light at its own step may have. */
const FINE_STEPS = [2, 3, 4, 5, 6, 10, 12];

function fineFaults(fine: FineLight): DesignIssue[] {
  const { stepsPerHour } = fine;
  const path = 'weather.fineLight';
  const remedy = 'Read the file again with ownStep, or leave fineLight out.';
  if (!FINE_STEPS.includes(stepsPerHour)) {
    const expected = `one of ${FINE_STEPS.join(', ')}`;
    return [{ path: `${path}.stepsPerHour`, found: quote(stepsPerHour), expected, remedy }];
  }
  return (['ghi', 'dni', 'dhi'] as const).flatMap((name) =>
    listFaults(`${path}.${name}`, fine[name], HOURS * stepsPerHour, remedy),
  );
}

function columnFaults(name: string, column: unknown): DesignIssue[] {
  if (column === null && !NEEDED.includes(name)) return [];
  return listFaults(`weather.columns.${name}`, column, HOURS, 'Fill gaps (fillGaps) or read another file.');
}

function listFaults(path: string, column: unknown, length: number, remedy: string): DesignIssue[] {
  if (!(column instanceof Float64Array) || column.length !== length) {
    const found = column instanceof Float64Array ? `${column.length} values` : kindOf(column);
    return [{ path, found, expected: `${length} values in a Float64Array`, remedy }];
  }
  for (let row = 0; row < length; row++) {
    if (!Number.isFinite(column[row]!))
      return [{ path: `${path}[${row}]`, found: String(column[row]), expected: 'a finite number', remedy }];
  }
  return [];
}

function optionFaults(options: unknown, known: readonly string[]): DesignIssue[] {
  const expected = `an object with some of ${known.join(', ')}`;
  if (!isObject(options))
    return [
      { path: 'options', found: kindOf(options), expected, remedy: 'Give { stepsPerHour: 6 }, or leave it out.' },
    ];
  return Object.keys(options)
    .filter((key) => !known.includes(key))
    .map((key) => ({
      path: `options.${key}`,
      found: 'an option of this name',
      expected: `one of ${known.join(', ')}`,
      remedy: 'Check the spelling.',
    }));
}

/** What a value is, in words for an error. */
function kindOf(value: unknown): string {
  if (value instanceof Promise) return 'a promise';
  if (Array.isArray(value)) return 'a list';
  if (isObject(value)) return 'another object';
  return quote(value);
}
