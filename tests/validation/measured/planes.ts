/**
 * Five tilted pyranometers at Golden, Colorado: NREL Solar Radiation Research Laboratory, Andreas & Stoffel, DA-5500-56488,
 * doi 10.5439/1052221. July 2014, means of a quarter of an hour, stamped at their end. Nothing is fitted.
 */
import { planeOfArray } from '@noonloop/sim-core/formulas';
import { erbsDiffuseFraction, type WeatherYear } from '@noonloop/weather-io';
import { sunPosition } from '@noonloop/weather-io/sun';
import { mean, measuredRows, type Pairs } from './sets.ts';

export const PLANES_FILE = 'planes/golden-2014-07-01-to-15.csv';
export const PLANES = [
  ['40° south', 'plane_40_south', 40, 180],
  ['wall, north', 'plane_90_north', 90, 0],
  ['wall, east', 'plane_90_east', 90, 90],
  ['wall, south', 'plane_90_south', 90, 180],
  ['wall, west', 'plane_90_west', 90, 270],
] as const;
export type SkyWord = 'perez' | 'hay-davies' | 'isotropic';

const HOURS = 8760;
/** First hour of July in a year without 29 February. */
const JULY = 181 * 24;
const COLUMNS = ['ghi', 'dhi', 'dni', 'ground_reflectance', ...PLANES.map(([, column]) => column)] as const;
type Column = (typeof COLUMNS)[number];

/** Hours with all four quarters, means of the quarters. */
interface GoldenHours {
  /** Of the year, the first row of each hour. */
  readonly hours: readonly number[];
  readonly columns: Readonly<Record<Column, readonly number[]>>;
}

export function goldenHours(): GoldenHours {
  const quarters = new Map<number, Record<string, string>[]>();
  for (const row of measuredRows(PLANES_FILE)) {
    const [day, clock] = row.time_mst_end!.split(' ') as [string, string];
    const [h, m] = clock.split(':').map(Number) as [number, number];
    const minute = (Number(day.slice(8)) - 1) * 1440 + h * 60 + m - 15;
    const hour = JULY + Math.floor(minute / 60);
    quarters.set(hour, [...(quarters.get(hour) ?? []), row]);
  }
  const whole = [...quarters].filter(([, rows]) => rows.length === 4);
  const column = (name: Column) => whole.map(([, rows]) => mean(rows.map((row) => Number(row[name]))));
  return {
    hours: whole.map(([hour]) => hour),
    columns: Object.fromEntries<number[]>(COLUMNS.map((name) => [name, column(name)])) as Record<Column, number[]>,
  };
}

/** The month as a weather year, night wherever nothing was measured. */
function goldenYear({ hours, columns }: GoldenHours, withAlbedo: boolean): WeatherYear {
  const lay = (name: Column) => {
    const column = new Float64Array(HOURS);
    hours.forEach((hour, at) => {
      column[hour] = columns[name][at]!;
    });
    return column;
  };
  return {
    site: { name: 'Golden', latitude: 39.74, longitude: -105.18, elevation: 1829, utcOffset: -7 },
    format: 'plain',
    source: 'measured',
    columns: {
      ghi: lay('ghi'),
      dni: lay('dni'),
      dhi: lay('dhi'),
      dryBulb: new Float64Array(HOURS).fill(20),
      dewPoint: null,
      relativeHumidity: null,
      windSpeed: null,
      pressure: null,
      skyLongwave: null,
      cloudCover: null,
      albedo: withAlbedo ? lay('ground_reflectance') : null,
      snowDepth: null,
    },
    irradianceMidpoint: 0.5,
    calendarYears: new Int16Array(HOURS).fill(2014),
    assumptions: [],
  };
}

/** Hours of one plane, measured and modelled; albedo measured, or left at 0.2. [W/m²] */
export function planePairs(at: number, model: SkyWord, withAlbedo: boolean): Pairs {
  const [, column, tilt, azimuth] = PLANES[at]!;
  const golden = goldenHours();
  const { total, stepsPerHour } = planeOfArray(goldenYear(golden, withAlbedo), { tilt, azimuth, model });
  const modelled = golden.hours.map((hour) =>
    mean([...total.subarray(hour * stepsPerHour, (hour + 1) * stepsPerHour)]),
  );
  return { measured: golden.columns[column], modelled };
}

const RAD = Math.PI / 180;
/** Sun's light outside the air in the first half of July: 1361 W/m² (Kopp & Lean 2011), 0.967 of it for the distance (Spencer 1971). [W/m²] */
const EXTRATERRESTRIAL = 1316;

interface Split {
  readonly ghi: number;
  readonly dhi: number;
  /** Middle of the interval. [ms] */
  readonly middle: number;
}

/** Diffuse light with the sun above 5°, split from the global by Erbs: by hours, for which it was made, or by quarters. [W/m²] */
export function erbsPairs(by: 'hours' | 'quarters' = 'hours'): Pairs {
  const { hours, columns } = goldenHours();
  const splits: Split[] =
    by === 'hours'
      ? hours.map((hour, at) => ({
          ghi: columns.ghi[at]!,
          dhi: columns.dhi[at]!,
          middle: Date.UTC(2014, 0, 1) + (hour + 0.5 + 7) * 3_600_000,
        }))
      : measuredRows(PLANES_FILE).map((row) => ({
          ghi: Number(row.ghi),
          dhi: Number(row.dhi),
          middle: Date.parse(`${row.time_mst_end!.replace(' ', 'T')}Z`) + 7 * 3_600_000 - 450_000,
        }));
  const pairs = splits.flatMap(({ ghi, dhi, middle }) => {
    const { zenith } = sunPosition({ latitude: 39.74, longitude: -105.18, time: middle });
    if (zenith > 85) return [];
    return [[dhi, ghi * erbsDiffuseFraction(ghi / (EXTRATERRESTRIAL * Math.cos(zenith * RAD)))] as const];
  });
  return { measured: pairs.map(([dhi]) => dhi), modelled: pairs.map(([, split]) => split) };
}
