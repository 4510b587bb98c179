import type { Said } from './said.ts';
/** Hours of the non-leap calendar that every weather year follows. */
export const HOURS_OF_YEAR = 8760;

/** Height at which stations measure the wind by the World Meteorological Organization's guide (No. 8). [m] */
export const STANDARD_WIND_HEIGHT = 10;

/** Where the weather was taken. */
export interface Site {
  /** Name as the file gives it, or a name of the caller's. */
  readonly name: string;
  /** North positive, −90 to 90. [°] */
  readonly latitude: number;
  /** East positive, −180 to 180. [°] */
  readonly longitude: number;
  /** Above sea level. [m] */
  readonly elevation: number;
  /** Local standard time minus UTC, fixed through the year (no daylight saving). [h] */
  readonly utcOffset: number;
  /** Height above ground at which the wind speed holds, 0.5 to 200; left out, {@link STANDARD_WIND_HEIGHT}. [m] */
  readonly windHeight?: number;
}

/** The file formats that the readers know. */
export type WeatherFormat = 'tmy3' | 'epw' | 'pvgis' | 'nsrdb' | 'plain';

/** Hourly columns, each of {@link HOURS_OF_YEAR} values; `null` where the source has none. */
export interface WeatherColumns {
  /** Global horizontal irradiance. [W/m²] */
  readonly ghi: Float64Array;
  /** Direct (beam) normal irradiance. [W/m²] */
  readonly dni: Float64Array;
  /** Diffuse horizontal irradiance. [W/m²] */
  readonly dhi: Float64Array;
  /** Outdoor air, dry bulb. [°C] */
  readonly dryBulb: Float64Array;
  /** Dew point. [°C] */
  readonly dewPoint: Float64Array | null;
  /** Relative humidity, 0 to 1. [-] */
  readonly relativeHumidity: Float64Array | null;
  /** Wind speed at the height `site.windHeight`. [m/s] */
  readonly windSpeed: Float64Array | null;
  /** Air pressure at the station. [Pa] */
  readonly pressure: Float64Array | null;
  /** Long-wave irradiance of the sky on the horizontal. [W/m²] */
  readonly skyLongwave: Float64Array | null;
  /** Opaque sky cover: share of the sky behind clouds that hide what is above, 0 clear to 1 overcast. [-] */
  readonly cloudCover: Float64Array | null;
  /** Ground reflectance, 0 to 1. [-] */
  readonly albedo: Float64Array | null;
  /** Depth of snow on the ground. [m] */
  readonly snowDepth: Float64Array | null;
}

/** Something that a reader took for granted or changed, in words for a report. */
export interface WeatherAssumption {
  /** Stable short code, such as `leap-day-dropped`. */
  readonly code: string;
  /** One sentence for a reader, in metric units. */
  readonly text: string;
  /** Its words and quantities, where it has quantities with units. Not written to files. */
  readonly parts?: Said['parts'];
  /** What was reckoned, where there is something; the unit stands after the underscore. Not written to files. */
  readonly numbers?: Readonly<Record<string, number>>;
}

/** Light of a year at a step of its own, finer than the hour. */
export interface FineLight {
  /** Steps in an hour, 2 to 12. */
  readonly stepsPerHour: number;
  /** From the start of a step to the middle of what its light stands for, in steps: 0.5 for means over the step. [-] */
  readonly midpoint: number;
  /** Global horizontal irradiance. Shape [8760 × stepsPerHour]. [W/m²] */
  readonly ghi: Float64Array;
  /** Direct (beam) normal irradiance. Shape [8760 × stepsPerHour]. [W/m²] */
  readonly dni: Float64Array;
  /** Diffuse horizontal irradiance. Shape [8760 × stepsPerHour]. [W/m²] */
  readonly dhi: Float64Array;
}

/**
 * One year of hourly weather in local standard time: the one shape that every reader returns and every simulation takes.
 *
 * Row `i` covers [i, i + 1) hours after the start of 1 January of a non-leap calendar, in local standard time.
 */
export interface WeatherYear {
  /** Where it was taken. */
  readonly site: Site;
  /** Format that it was read from. */
  readonly format: WeatherFormat;
  /** File name or label of the text that was read; shown in errors and reports. */
  readonly source: string;
  /** Hourly values. */
  readonly columns: WeatherColumns;
  /**
   * From the start of a row to the middle of the hour for which its irradiance stands: 0.5 for means over the row, another
   * number for values sampled at one instant of it. All other columns stand for the row's own hour of the clock; the simulation lays
   * the irradiance into the hours of the clock too. [h]
   */
  readonly irradianceMidpoint: number;
  /** Calendar year in which each row was measured (typical years mix them); the sun is computed in it. Shape [8760]. */
  readonly calendarYears: Int16Array;
  /** What was assumed or changed while reading, in the order found. */
  readonly assumptions: readonly WeatherAssumption[];
  /** Light at the file's own step, which the simulation then takes in place of the hourly one; left out, there is none. */
  readonly fineLight?: FineLight;
}
