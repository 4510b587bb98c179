// A weather format of one's own: read it, lay it out as a plain table, and hand that to the reader. It does the rest: units, limits, gaps, the
// closure of the light, and errors with line, column and remedy.
import { type PlainLayout, parseWeather, WeatherError, type WeatherYear } from '@noonloop/weather-io';

/** The invented format "station log": JSON with a place, and 8760 values a column from 1 January, 00:00 standard time. */
interface StationLog {
  readonly station: string;
  readonly place: { readonly lat: number; readonly lon: number; readonly height_m: number; readonly zone_h: number };
  /** Mean of each hour: global and diffuse light on the level, both in W/m², and air in °C. */
  readonly hourly: {
    readonly global: readonly number[];
    readonly diffuse: readonly number[];
    readonly air: readonly number[];
  };
}

const COLUMNS = ['global', 'diffuse', 'air'] as const;

/**
 * Reads a station log.
 *
 * @param source - Its name, for errors and reports.
 * @throws {@link WeatherError} when it is no station log, or no year that can be simulated.
 */
export function parseStation(text: string, source = 'station log'): WeatherYear {
  const log = readLog(text, source);
  const { lat, lon, height_m, zone_h } = log.place;
  const plain: PlainLayout = {
    site: { name: log.station, latitude: lat, longitude: lon, elevation: height_m, utcOffset: zone_h },
    columns: {
      ghi: { column: 'global', unit: 'W/m2' },
      dhi: { column: 'diffuse', unit: 'W/m2' },
      dryBulb: { column: 'air', unit: 'degC' },
    },
    time: 'row-order',
    stamps: 'start',
  };
  const rows = log.hourly.global.map((_, hour) => COLUMNS.map((name) => log.hourly[name][hour] ?? '').join(','));
  return parseWeather([COLUMNS.join(','), ...rows, ''].join('\n'), { plain, source });
}

function readLog(text: string, source: string): StationLog {
  let log: Partial<StationLog> | null = null;
  try {
    log = JSON.parse(text);
  } catch {
    // Said below, with what was expected.
  }
  const whole =
    typeof log?.station === 'string' &&
    typeof log.place === 'object' &&
    COLUMNS.every((name) => Array.isArray(log?.hourly?.[name]));
  if (whole) return log as StationLog;
  throw new WeatherError([
    {
      code: 'unknown-format',
      file: source,
      line: 1,
      column: null,
      value: text.slice(0, 40),
      expected: 'JSON with station, place and hourly { global, diffuse, air }',
      remedy: 'Export the log again.',
    },
  ]);
}
