// Where the sun stands at six instants of each hour of a year, computed once for all that asks: the look over the weather and the simulation.
import { hourStarts } from '../time/hours.ts';
import type { WeatherYear } from '../year.ts';
import { sunPositionInto } from './position.ts';

const HOUR_MS = 3_600_000;

/** Instants in an hour at which the sun is looked at; as many as the simulation takes by default. */
export const INSTANTS = 6;

/** What of a year the sun's place follows. */
export type SunOfYear = Pick<WeatherYear, 'site' | 'calendarYears' | 'irradianceMidpoint'>;

interface Kept {
  readonly of: readonly number[];
  readonly years: Int16Array;
  readonly positions: Float64Array;
}
const kept = new WeakMap<Int16Array, Kept>();
/** What was computed last: another file of the place, or another year made for it, has the same sun. */
let last: Kept | undefined;

const isOf = (known: Kept, place: readonly number[]): boolean => place.every((value, at) => value === known.of[at]);
const isAlike = (one: Int16Array, other: Int16Array): boolean =>
  one.length === other.length && one.every((value, at) => value === other[at]);

const placeOf = ({ site, irradianceMidpoint }: SunOfYear): number[] => [
  site.latitude,
  site.longitude,
  site.utcOffset,
  irradianceMidpoint,
];

/**
 * Sun at the middles of six parts of each hour that is centred at row start + `irradianceMidpoint`.
 *
 * @param starts - {@link hourStarts} of the year, where they are at hand.
 * @returns Zenith and azimuth by turns, `NaN` in hours whose middle has the sun more than 10° down. Shape [8760 × 6 × 2], not to be changed. [°]
 */
export function sunInstants(year: SunOfYear, starts = hourStarts(year)): Float64Array {
  const known = keptInstants(year);
  if (known !== undefined) return known;
  const { calendarYears } = year;
  const of = placeOf(year);
  if (last !== undefined && isOf(last, of) && isAlike(last.years, calendarYears)) {
    kept.set(calendarYears, last);
    return last.positions;
  }
  const { latitude, longitude } = year.site;
  const positions = new Float64Array(starts.length * INSTANTS * 2).fill(Number.NaN);
  const position = new Float64Array(2);
  for (let hour = 0; hour < starts.length; hour++) {
    const middle = starts[hour]! + year.irradianceMidpoint * HOUR_MS;
    sunPositionInto(position, 0, middle, latitude, longitude);
    if (position[0]! > 100) continue; // half an hour moves the sun by at most 7.5°
    for (let step = 0; step < INSTANTS; step++) {
      const time = middle + ((step + 0.5) / INSTANTS - 0.5) * HOUR_MS;
      sunPositionInto(positions, 2 * (INSTANTS * hour + step), time, latitude, longitude);
    }
  }
  last = { of, years: calendarYears, positions };
  kept.set(calendarYears, last);
  return positions;
}

/** {@link sunInstants} of a year where they were computed before. @returns Shape [8760 × 6 × 2], not to be changed; `undefined` where they were not. [°] */
export function keptInstants(year: SunOfYear): Float64Array | undefined {
  const known = kept.get(year.calendarYears);
  return known !== undefined && isOf(known, placeOf(year)) ? known.positions : undefined;
}
