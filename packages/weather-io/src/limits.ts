// What each quantity can be on Earth. A value outside is a fault of the file, never weather.
import { SOLAR_CONSTANT } from './sun/extraterrestrial.ts';
import type { WeatherColumns } from './year.ts';

/** Name of a column of a weather year. */
export type ColumnKey = keyof WeatherColumns;

/** Bounds of a quantity in the unit of the weather year. */
interface Limit {
  /** The quantity in words. */
  readonly words: string;
  readonly minimum: number;
  readonly maximum: number;
  readonly unit: string;
  /** Why the bounds are there. */
  readonly reason: string;
}

/** Nearest the sun, in early January: Spencer's series has 1.0351 at most. [W/m²] */
const TOP_OF_AIR = Math.ceil(SOLAR_CONSTANT * 1.0351);

/**
 * Small negative irradiance that a pyranometer shows under a clear night sky; taken as 0.
 * From memory of the physically possible limits of the Baseline Surface Radiation Network. [W/m²]
 */
const NIGHT_OFFSET = -4;

/** Relative humidity to which instruments drift in fog; from 1 to here it is taken as 1. Judgement. [-] */
const HUMIDITY_DRIFT = 1.1;

/**
 * Bounds by column. Beam and diffuse irradiance stay below what reaches the top of the air; global irradiance may reach 1.5
 * times the solar constant under broken clouds, as in BSRN's physically possible limits (from memory). The others lie outside
 * known records (from memory): −89.2 and 56.7 °C, 113 m/s, 11.8 m of snow; air pressure down to that of 6000 m.
 */
export const LIMITS: Readonly<Record<ColumnKey, Limit>> = {
  ghi: limit(
    'global horizontal irradiance',
    NIGHT_OFFSET,
    Math.round(SOLAR_CONSTANT * 1.5),
    'W/m²',
    'cloud edges add at most half of what reaches the top of the air',
  ),
  dni: limit('direct normal irradiance', NIGHT_OFFSET, TOP_OF_AIR, 'W/m²', 'no more than reaches the top of the air'),
  dhi: limit(
    'diffuse horizontal irradiance',
    NIGHT_OFFSET,
    TOP_OF_AIR,
    'W/m²',
    'no more than reaches the top of the air',
  ),
  dryBulb: limit('dry bulb', -90, 60, '°C', 'the range of air on Earth'),
  dewPoint: limit('dew point', -100, 50, '°C', 'the range of air on Earth'),
  relativeHumidity: limit('relative humidity', 0, HUMIDITY_DRIFT, '', 'a fraction, with room for drift in fog'),
  windSpeed: limit('wind speed', 0, 120, 'm/s', 'above the strongest gust recorded'),
  pressure: limit('air pressure', 45_000, 110_000, 'Pa', 'from 6000 m up to the highest recorded at the sea'),
  skyLongwave: limit('long-wave irradiance of the sky', 40, 700, 'W/m²', 'a sky between −110 and 60 °C'),
  cloudCover: limit('opaque sky cover', 0, 1, '', 'a share of the sky'),
  albedo: limit('ground reflectance', 0, 1, '', 'a fraction'),
  snowDepth: limit('snow depth', 0, 20, 'm', 'above the deepest recorded'),
};

/** Columns without which there is no simulation: every hour needs them. */
export const REQUIRED: ReadonlySet<ColumnKey> = new Set<ColumnKey>(['ghi', 'dni', 'dhi', 'dryBulb']);

/** Those of them that nothing else can stand for: beam and diffuse, missing as a whole, are made from global irradiance. */
export const INDISPENSABLE: ReadonlySet<ColumnKey> = new Set<ColumnKey>(['ghi', 'dryBulb']);

/** All columns, in the order of {@link WeatherColumns}. */
export const COLUMN_KEYS = Object.keys(LIMITS) as readonly ColumnKey[];

function limit(words: string, minimum: number, maximum: number, unit: string, reason: string): Limit {
  return { words, minimum, maximum, unit, reason };
}
