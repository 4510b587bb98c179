import { readFileSync } from 'node:fs';
import { type PlainLayout, parseWeather, type ReadOptions, readWeather, type WeatherYear } from '@noonloop/weather-io';
import { hasShared, sharedFile } from '../shared.ts';

/** Real weather files, which may not be committed. */
export const REAL_FILES = {
  greensboro: 'weather/tmy3-greensboro-nc.csv',
  sandPoint: 'weather/tmy3-sand-point-ak.csv',
  pvgis: 'weather/pvgis-45N-8E.csv',
  epw: 'weather/pvgis-45N-8E.epw',
  nsrdb: 'weather/nsrdb-40N-108W-2017-30min.csv',
  nsrdbTypical: 'weather/nsrdb-tmy-40N-108W.csv',
} as const;

/** Name of a real file. */
export type RealFile = keyof typeof REAL_FILES;

/** Their names. */
export const REAL_NAMES = Object.keys(REAL_FILES) as RealFile[];

/** Whether all are there. */
export const hasRealFiles = Object.values(REAL_FILES).every(hasShared);

/** Column map of the NSRDB typical year, a bare table; its place comes from its sister files. */
export const typicalLayout: PlainLayout = {
  site: { name: 'NSRDB typical year', latitude: 40.53, longitude: -108.54, elevation: 2168, utcOffset: -7 },
  columns: {
    ghi: { column: 'GHI', unit: 'W/m2' },
    dni: { column: 'DNI', unit: 'W/m2' },
    dhi: { column: 'DHI', unit: 'W/m2' },
    dryBulb: { column: 'Temperature', unit: 'degC' },
    dewPoint: { column: 'Dew Point', unit: 'degC' },
    relativeHumidity: { column: 'Relative Humidity', unit: '%' },
    windSpeed: { column: 'Wind Speed', unit: 'm/s' },
    pressure: { column: 'Pressure', unit: 'mbar' },
    albedo: { column: 'Surface Albedo', unit: 'fraction' },
  },
  time: { year: 'Year', month: 'Month', day: 'Day', hour: 'Hour', minute: 'Minute' },
  stamps: 'instant',
};

/** Options with which a real file is read. */
export const realOptions = (name: RealFile): ReadOptions => (name === 'nsrdbTypical' ? { plain: typicalLayout } : {});

/** Text of a real file. */
export const realText = (name: RealFile): string => readFileSync(sharedFile(REAL_FILES[name]), 'utf8');

const years = new Map<RealFile, Promise<WeatherYear>>();

/** A real file, read once for all tests; none changes it. */
export function readReal(name: RealFile): Promise<WeatherYear> {
  const year = years.get(name) ?? readWeather(sharedFile(REAL_FILES[name]), realOptions(name));
  years.set(name, year);
  return year;
}

/** The same by its path in the shared folder. */
export const readRealAt = (path: string): Promise<WeatherYear> =>
  readReal(REAL_NAMES.find((name) => REAL_FILES[name] === path)!);

/** Reads a changed text of a real file. */
export const parseReal = (name: RealFile, text: string): WeatherYear => parseWeather(text, realOptions(name));
