// Units in which files print their columns, and the way to those of a weather year: value = cell × scale + offset.
import type { ColumnKey } from '../limits.ts';

/** Units that a column of a plain table may have. */
export type PlainUnit =
  | 'W/m2'
  | 'kW/m2'
  | 'kJ/(m2 h)'
  | 'degC'
  | 'degF'
  | 'K'
  | 'fraction'
  | '%'
  | 'tenths'
  | 'm/s'
  | 'km/h'
  | 'mph'
  | 'kn'
  | 'Pa'
  | 'hPa'
  | 'mbar'
  | 'kPa'
  | 'm'
  | 'cm'
  | 'mm'
  | 'in';

type Dimension = 'irradiance' | 'temperature' | 'fraction' | 'speed' | 'pressure' | 'length';

interface Unit {
  readonly dimension: Dimension;
  readonly scale: number;
  readonly offset: number;
}

const unit = (dimension: Dimension, scale: number, offset = 0): Unit => ({ dimension, scale, offset });

const UNITS: Readonly<Record<PlainUnit, Unit>> = {
  'W/m2': unit('irradiance', 1),
  'kW/m2': unit('irradiance', 1000),
  'kJ/(m2 h)': unit('irradiance', 1 / 3.6),
  degC: unit('temperature', 1),
  degF: unit('temperature', 5 / 9, -160 / 9),
  K: unit('temperature', 1, -273.15),
  fraction: unit('fraction', 1),
  '%': unit('fraction', 0.01),
  tenths: unit('fraction', 0.1),
  'm/s': unit('speed', 1),
  'km/h': unit('speed', 1 / 3.6),
  mph: unit('speed', 0.44704),
  kn: unit('speed', 1852 / 3600),
  Pa: unit('pressure', 1),
  hPa: unit('pressure', 100),
  mbar: unit('pressure', 100),
  kPa: unit('pressure', 1000),
  m: unit('length', 1),
  cm: unit('length', 0.01),
  mm: unit('length', 0.001),
  in: unit('length', 0.0254),
};

const DIMENSION: Readonly<Record<ColumnKey, Dimension>> = {
  ghi: 'irradiance',
  dni: 'irradiance',
  dhi: 'irradiance',
  dryBulb: 'temperature',
  dewPoint: 'temperature',
  relativeHumidity: 'fraction',
  windSpeed: 'speed',
  pressure: 'pressure',
  skyLongwave: 'irradiance',
  cloudCover: 'fraction',
  albedo: 'fraction',
  snowDepth: 'length',
};

/** Scale and offset of a unit. */
export const conversion = (name: PlainUnit): { readonly scale: number; readonly offset: number } => UNITS[name];

/** Units that a column may have. */
export const unitsFor = (key: ColumnKey): PlainUnit[] =>
  (Object.keys(UNITS) as PlainUnit[]).filter((name) => UNITS[name].dimension === DIMENSION[key]);
