// Makes a year with gaps whole, and lists all that it made up.
import { Faults } from '../errors.ts';
import type { GappyYear } from '../gappy.ts';
import { completeLight } from '../irradiance/complete.ts';
import { COLUMN_KEYS, type ColumnKey, LIMITS } from '../limits.ts';
import { dateName } from '../quality/collector.ts';
import { hourlySun } from '../sun/hourly.ts';
import { HOURS_OF_YEAR, type WeatherAssumption, type WeatherColumns, type WeatherYear } from '../year.ts';
import { fillColumn } from './air.ts';
import { clearnessOf, fillFromClosure, fillLight, type LightFilled } from './light.ts';
import { LikeDays } from './like-day.ts';
import { countHours, nameHours } from './runs.ts';

/** How far gaps are filled. */
export interface FillOptions {
  /** Largest share of the year's hours that may be missing, 0 to 1. Default 0.1 (judgement). [-] */
  readonly limit?: number;
}

/** Share of a further column that may be missing before it is left out. Judgement. [-] */
const MOST_OF_COLUMN = 0.5;

const LIGHT: readonly ColumnKey[] = ['ghi', 'dni', 'dhi'];

/**
 * Fills the gaps of a year. Irradiance: from the closure where one of the three is missing; up to three sunlit hours by clearness
 * between the neighbours; longer by the clearness of the most like day within 15 days. Dry bulb and the rest: up to 3 h on a line,
 * longer with the course of the like day. Everything that was filled is listed in the assumptions.
 *
 * @param year - From a reader with `gaps: 'keep'`; not changed.
 * @param options - See {@link FillOptions}.
 * @returns A whole year.
 * @throws WeatherError when more than the limit is missing, or a gap has no like day within 60 days.
 * @example
 * const log = await readWeather('my-log.csv', { plain: layout, gaps: 'keep' });
 * const weather = fillGaps(log, { limit: 0.2 });
 */
export function fillGaps(year: GappyYear, { limit = 0.1 }: FillOptions = {}): WeatherYear {
  const faults = new Faults(year.source);
  const { columnsWithGaps, missingHours, ...rest } = year;
  checkLimit(missingHours, limit, faults);
  const columns = {} as Record<ColumnKey, Float64Array | null>;
  for (const key of COLUMN_KEYS) columns[key] = columnsWithGaps[key]?.slice() ?? null;
  const { ghi, dryBulb } = columns as unknown as WeatherColumns;
  const sun = hourlySun(year);
  const filled: LightFilled = { closure: [], interpolated: [], likeDay: [], night: [] };
  fillFromClosure({ ghi, dni: columns.dni, dhi: columns.dhi }, sun, filled);
  const whole = Uint8Array.from({ length: 365 }, (_, day) => {
    const knows = (values: Float64Array | null) =>
      values === null || !values.subarray(day * 24, day * 24 + 24).some(Number.isNaN);
    return knows(ghi) && knows(columns.dni) && knows(columns.dhi) && knows(dryBulb) ? 1 : 0;
  });
  const like = new LikeDays({ clearness: clearnessOf(ghi, sun), dryBulb: dryBulb.slice(), whole });
  const notes: WeatherAssumption[] = [];
  let lacking = fillLight({ ghi, dni: columns.dni, dhi: columns.dhi }, sun, like, filled);
  noteLight(filled, like, notes);
  for (const key of COLUMN_KEYS) {
    const values = columns[key];
    if (values === null || LIGHT.includes(key)) continue;
    const missing = values.reduce((count, value) => count + (Number.isNaN(value) ? 1 : 0), 0);
    if (missing === 0) continue;
    if (key !== 'dryBulb' && missing > MOST_OF_COLUMN * HOURS_OF_YEAR) {
      columns[key] = null;
      notes.push({
        code: 'column-left-out',
        text: `${LIMITS[key].words} is left out: it is missing in ${missing} hours.`,
      });
      continue;
    }
    const hours = fillColumn(key, values, like);
    if (hours === null) lacking = true;
    else {
      const text = `${LIMITS[key].words}, ${countHours(hours)} filled, up to 3 h by a line, more with the course of like days: ${nameHours(hours)}.`;
      notes.push({ code: 'gaps-filled', text });
    }
  }
  if (lacking) {
    faults.fail({
      code: 'too-many-gaps',
      expected: 'a whole day within 60 days of each long gap',
      remedy: 'Use another source for this season, or make a year from monthly means (synthesizeYear).',
    });
  }
  const assumptions = [...year.assumptions, ...notes];
  const light = completeLight({ ...rest, columns: { ghi, dni: columns.dni, dhi: columns.dhi } }, assumptions);
  return { ...rest, columns: { ...columns, ...light } as unknown as WeatherColumns, assumptions };
}

function checkLimit(missingHours: number, limit: number, faults: Faults): void {
  if (!(limit >= 0 && limit <= 1)) {
    faults.fail({
      code: 'bad-option',
      column: 'limit',
      value: String(limit),
      expected: 'a share of the hours from 0 to 1',
      remedy: 'Correct the option limit.',
    });
  }
  if (missingHours <= limit * HOURS_OF_YEAR) return;
  faults.fail({
    code: 'too-many-gaps',
    value: `${missingHours} of ${HOURS_OF_YEAR} hours missing`,
    expected: `at most ${Math.floor(limit * HOURS_OF_YEAR)}, which is ${(100 * limit).toFixed(0)} % of the year`,
    remedy: 'Use another source, or raise the option limit and trust the result less.',
  });
}

/** Says what was done to the light, hour by hour. */
function noteLight(
  { closure, interpolated, likeDay, night }: LightFilled,
  like: LikeDays,
  notes: WeatherAssumption[],
): void {
  const say = (code: string, hours: readonly number[], how: string) => {
    if (hours.length > 0) notes.push({ code, text: `Irradiance, ${countHours(hours)} ${how}: ${nameHours(hours)}.` });
  };
  say('gaps-dark', night, 'with the sun down, set to 0');
  say('gaps-closure', closure, 'in which one was missing, from GHI = DHI + DNI cos Z');
  say(
    'gaps-interpolated',
    interpolated,
    'in gaps of at most 3 sunlit hours, with the clearness between their neighbours',
  );
  const days = [...new Set(likeDay.map((hour) => Math.floor(hour / 24)))];
  const pairs = days
    .map((day) => [day, like.of(day)] as const)
    .map(([day, donor]) =>
      donor === null ? `${dateName(day)} by correlation` : `${dateName(day)} from ${dateName(donor)}`,
    )
    .join(', ');
  say('gaps-like-days', likeDay, `with the clearness of a like day (${pairs})`);
}
