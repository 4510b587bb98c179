// Intervals of a day, a week or a year to the year that a run takes.

import type { Faults } from '../errors.ts';
import { amount, said } from '../said.ts';
import { dayIndex, WEEKDAYS } from '../time/calendar.ts';
import type { WeatherAssumption } from '../year.ts';
import type { Intervals } from './intervals.ts';
import type { DrawLayout } from './layout.ts';
import { ZoneClock } from './zone.ts';

const DAY = 86_400;
const HOURS = 8760;

/** Days that a record may cover. */
const DAYS_OF = { day: 1, week: 7, year: 365 } as const;

/** What a record covers. */
type DrawSpan = keyof typeof DAYS_OF;

/** Year that the clock's changes are taken of where the file names none. */
const DEFAULT_YEAR = 2023;

/** A record before it is laid over the year. */
interface LaidOut {
  readonly span: DrawSpan;
  readonly partsPerHour: number;
  /** Shape [8760 × parts]. [m³] */
  readonly volumes: Float64Array;
  /** Water of 29 February, which the year has not. [m³] */
  readonly leapDayVolume: number;
}

/** Lays intervals over the year. */
export function layOut(
  intervals: Intervals,
  layout: DrawLayout,
  dated: boolean,
  faults: Faults,
  notes: WeatherAssumption[],
): LaidOut {
  const span = spanOf(intervals, layout, dated, faults, notes);
  // What repeats follows the house's clock; a year is in standard time already.
  const clock = span !== 'year' && layout.clock === 'daylight-saving' ? new ZoneClock(layout.zone!) : null;
  const year = dated ? new Date(intervals.start[0]! * 1000).getUTCFullYear() : DEFAULT_YEAR;
  const ahead = clock?.ahead(year) ?? null;
  const partsPerHour = layout.partsPerHour ?? partsFor(intervals, ahead);
  const { cycle, dropped } = gather(intervals, span, layout, dated, partsPerHour);
  if (dropped > 0) {
    const water = amount(dropped * 1000, 'L');
    notes.push({
      code: 'leap-day-dropped',
      ...said`Water of 29 February, ${water}, was left out: the year has no such day.`,
    });
  }
  if (ahead !== null) {
    const text = `The ${span} keeps to the clock of ${layout.zone} (changes as in ${year}); an hour that it skips is drawn in the next, one that it shows twice in the first.`;
    notes.push({ code: 'follows-clock', text });
  }
  const volumes = span === 'year' ? cycle : repeat(cycle, span, layout, partsPerHour, ahead);
  return { span, partsPerHour, volumes, leapDayVolume: dropped };
}

function spanOf(
  { start, end, step }: Intervals,
  layout: DrawLayout,
  dated: boolean,
  faults: Faults,
  notes: WeatherAssumption[],
): DrawSpan {
  const covered = end.at(-1)! - start[0]!;
  const leapDays = countLeapDays(start[0]!, end.at(-1)!, dated);
  const slack = step / 2;
  const lengthOf = (span: DrawSpan) => (DAYS_OF[span] + (span === 'year' ? leapDays : 0)) * DAY;
  for (const span of ['day', 'week', 'year'] as const) {
    if (layout.span !== undefined && layout.span !== span) continue;
    const length = lengthOf(span);
    if (Math.abs(covered - length) <= slack) return span;
    if (layout.quantity === 'meter' && Math.abs(covered + step - length) <= slack) {
      const text = `No reading ends the last ${step} s of the ${span}; nothing was taken to be drawn in them.`;
      notes.push({ code: 'last-reading-missing', text });
      return span;
    }
    if (layout.span === span && covered < length && (layout.gaps === 'zero' || layout.quantity === 'meter')) {
      const text = `Rows cover ${Number((covered / DAY).toPrecision(4))} days of the ${span}; in the rest nothing was drawn.`;
      notes.push({ code: 'rest-empty', text });
      return span;
    }
  }
  const wanted = layout.span === undefined ? 'a whole day, week or year' : `a whole ${layout.span}`;
  return faults.fail({
    code: 'row-count',
    value: `${Number((covered / DAY).toPrecision(6))} days`,
    expected: `rows that cover ${wanted}${leapDays > 0 ? ', 366 days with 29 February' : ''}`,
    remedy:
      "Cut or complete the file; where rows stand for draws alone, say span, step and gaps: 'zero'. A day or a week must not hold a change of the clock.",
  });
}

/** Days 29 February that lie whole in a dated span; a record without dates has one when it is 366 days long. */
function countLeapDays(start: number, end: number, dated: boolean): number {
  if (!dated) return Math.abs(end - start - 366 * DAY) < DAY / 2 ? 1 : 0;
  let count = 0;
  for (let day = Math.ceil(start / DAY); (day + 1) * DAY <= end && count < 2; day++) if (isLeapDay(day)) count++;
  return count;
}

const isLeapDay = (day: number): boolean => {
  const date = new Date(day * DAY * 1000);
  return date.getUTCMonth() === 1 && date.getUTCDate() === 29;
};

const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));

/** The coarsest parts of an hour that keep the bounds of every interval, none under a minute. */
function partsFor({ start, end }: Intervals, ahead: Float64Array | null): number {
  let common = 3600;
  const take = (time: number) => {
    common = Number.isInteger(time) ? gcd(common, Math.abs(time) % 3600) : 1;
  };
  for (let index = 0; index < start.length && common % 60 === 0; index++) {
    take(start[index]!);
    take(end[index]!);
  }
  for (const shift of ahead ?? []) if (common % 60 === 0) take(shift);
  return common % 60 === 0 ? 3600 / common : 60;
}

/** Adds the water of all intervals up in the parts of a day, a week or a year; every interval keeps its water to the last bit. */
function gather(
  { start, end, volume }: Intervals,
  span: DrawSpan,
  layout: DrawLayout,
  dated: boolean,
  partsPerHour: number,
): { cycle: Float64Array; dropped: number } {
  const length = 3600 / partsPerHour;
  const partsPerDay = 24 * partsPerHour;
  const cycle = new Float64Array(DAYS_OF[span] * partsPerDay);
  const dayOf = dayFinder(span, layout, dated, end.at(-1)!);
  let dropped = 0;
  let day = Number.NaN;
  let place = 0;
  for (let index = 0; index < volume.length; index++) {
    const [from, to] = [start[index]!, end[index]!];
    let left = volume[index]!;
    if (left === 0) continue;
    for (let part = Math.floor(from / length); left > 0; part++) {
      const until = Math.min((part + 1) * length, to);
      const isLast = (part + 1) * length >= to;
      const share = (volume[index]! * (until - Math.max(part * length, from))) / (to - from);
      const water = isLast ? left : Math.min(share, left);
      left = isLast ? 0 : left - water;
      const ofDay = Math.floor(part / partsPerDay);
      if (ofDay !== day) {
        day = ofDay;
        place = dayOf(day);
      }
      if (place < 0) dropped += water;
      else cycle[place * partsPerDay + part - ofDay * partsPerDay]! += water;
    }
  }
  return { cycle, dropped };
}

const modulo = (value: number, by: number): number => ((value % by) + by) % by;

/** Which day of the cycle a day is; −1 for 29 February. */
function dayFinder(span: DrawSpan, layout: DrawLayout, dated: boolean, end: number): (day: number) => number {
  if (span === 'day') return () => 0;
  if (span === 'week') {
    // 1 January 1970, day 0, was a Thursday.
    const first = dated ? 3 : WEEKDAYS.indexOf(layout.weekBegins ?? 'monday');
    return (day) => modulo(day + first, 7);
  }
  if (!dated) {
    const leap = end > 365.5 * DAY;
    return (day) => (leap && day >= 59 ? (day === 59 ? -1 : modulo(day - 1, 365)) : modulo(day, 365));
  }
  return (day) => {
    const date = new Date(day * DAY * 1000);
    return isLeapDay(day) ? -1 : dayIndex(date.getUTCMonth() + 1, date.getUTCDate(), false);
  };
}

/** A day or a week again and again, from 1 January; where the clock is ahead, earlier by standard time. */
function repeat(
  cycle: Float64Array,
  span: DrawSpan,
  layout: DrawLayout,
  partsPerHour: number,
  ahead: Float64Array | null,
): Float64Array {
  const partsPerDay = 24 * partsPerHour;
  const first = span === 'week' ? WEEKDAYS.indexOf(layout.firstWeekday ?? 'monday') : 0;
  const volumes = new Float64Array(HOURS * partsPerHour);
  const shift = ahead === null ? 0 : Math.round((Math.max(...ahead) * partsPerHour) / 3600);
  for (let day = 0; day < 365; day++) {
    const from = ((first + day) % DAYS_OF[span]) * partsPerDay;
    for (let part = 0; part < partsPerDay; part++) {
      const shown = day * partsPerDay + part;
      const earlier = modulo(shown - shift, volumes.length);
      // Shown twice, the earlier is meant; skipped, it is that of the hour after.
      const isAhead = ahead !== null && ahead[Math.floor(earlier / partsPerHour)]! > 0;
      volumes[isAhead ? earlier : shown]! += cycle[from + part]!;
    }
  }
  return volumes;
}
