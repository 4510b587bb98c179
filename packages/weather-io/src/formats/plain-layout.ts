// The plain layout of our own, which says all about itself: what writes it and what reads it take it from here.
import type { ColumnKey } from '../limits.ts';
import type { PlainUnit } from '../table/units.ts';

/**
 * First line of a file in the layout:
 *
 *     # noonloop plain weather 1
 *     # name: Somewhere
 *     # latitude_deg: 41.2
 *     # longitude_deg: -77.5
 *     # elevation_m: 300
 *     # utcOffset_h: -5
 *     # windHeight_m: 10, may be left out
 *     # irradianceMidpoint_h: 0.5
 *     # licence: CC0-1.0
 *     # note: free text, shown in reports; may stand more than once
 *     # assumption: code | text; what the reader of the original assumed; may stand more than once
 *     year,month,day,hour,ghi_W_per_m2,dni_W_per_m2,dhi_W_per_m2,dry_bulb_degC
 *     2023,1,1,0,0,0,0,-4.1
 *
 * 8760 rows in local standard time (`utcOffset_h` from UTC) follow; `hour` is 0 to 23 and starts the row, there is no
 * 29 February. An empty cell is a missing value. Other columns may stand between; they are not read.
 */
export const LAYOUT_MARK = '# noonloop plain weather 1';

/** Keys of the comment lines. */
export const LAYOUT_KEYS = {
  name: 'name',
  latitude: 'latitude_deg',
  longitude: 'longitude_deg',
  elevation: 'elevation_m',
  utcOffset: 'utcOffset_h',
  windHeight: 'windHeight_m',
  irradianceMidpoint: 'irradianceMidpoint_h',
  licence: 'licence',
  note: 'note',
  assumption: 'assumption',
} as const;

/** Columns that hold the start of a row. */
export const LAYOUT_TIME = { year: 'year', month: 'month', day: 'day', hour: 'hour' } as const;

/** Header and unit of each quantity. */
export const LAYOUT_COLUMNS: Readonly<Record<ColumnKey, { readonly column: string; readonly unit: PlainUnit }>> = {
  ghi: { column: 'ghi_W_per_m2', unit: 'W/m2' },
  dni: { column: 'dni_W_per_m2', unit: 'W/m2' },
  dhi: { column: 'dhi_W_per_m2', unit: 'W/m2' },
  dryBulb: { column: 'dry_bulb_degC', unit: 'degC' },
  dewPoint: { column: 'dew_point_degC', unit: 'degC' },
  relativeHumidity: { column: 'relative_humidity', unit: 'fraction' },
  windSpeed: { column: 'wind_speed_m_per_s', unit: 'm/s' },
  pressure: { column: 'pressure_Pa', unit: 'Pa' },
  skyLongwave: { column: 'sky_longwave_W_per_m2', unit: 'W/m2' },
  cloudCover: { column: 'cloud_cover', unit: 'fraction' },
  albedo: { column: 'albedo', unit: 'fraction' },
  snowDepth: { column: 'snow_depth_m', unit: 'm' },
};
