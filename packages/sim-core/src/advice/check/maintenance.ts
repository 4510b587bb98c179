import { DateTime } from 'luxon';
import { checkInput } from '../../input/check.ts';
import { quote } from '../../input/errors.ts';
import { choice, count, defaulted, fault, flag } from '../../input/field.ts';
import * as z from '../../input/zod.ts';
import type { RunResult } from '../../year/result.ts';
import { type MaintenanceCode, type MaintenanceTask, TASK_DUTIES, type WearNumbers } from './maintenance-types.ts';
import type { Rule, Season } from './task-rule.ts';
import { houseTasks } from './tasks-house.ts';
import { loopTasks } from './tasks-loop.ts';
import { outsideTasks } from './tasks-outside.ts';
import { wearOf } from './wear.ts';

const day = z
  .custom<string>(() => true)
  .transform((value, context): string => {
    const read = DateTime.fromFormat(typeof value === 'string' ? value : '', 'yyyy-MM-dd', { zone: 'utc' });
    if (read.isValid && read.year >= 1900 && read.year <= 2200) return value;
    fault(context, quote(value), 'a day as "YYYY-MM-DD"', 'Write the day from which the calendar runs.');
    return z.NEVER;
  });

const plain = (minimum: number, maximum: number, unit: string, remedy: string) =>
  z
    .custom<number>(() => true)
    .transform((value, context): number => {
      if (typeof value === 'number' && value >= minimum && value <= maximum) return value;
      fault(context, quote(value), `a number from ${minimum} to ${maximum} ${unit}`, remedy);
      return z.NEVER;
    });

const optionsSchema = z.strictObject({
  from: day,
  years: defaulted(count(1, 20), 3, '', 'judgement'),
  waterHardness: plain(
    0,
    20,
    'mmol/L (5.6 °dH each)',
    'Ask the water works; 1 mmol/L is 5.6 °dH or 100 mg/L of CaCO3.',
  ).optional(),
  anode: defaulted(choice(['magnesium', 'powered', 'none']), 'magnesium', '', 'judgement: an enamelled tank'),
  fluidAge: plain(0, 50, 'years', 'Give the age at the start of the calendar.').default(0),
  dusty: defaulted(flag, false, '', 'judgement: rain cleans the glass'),
});

/**
 * From when (`from`, `YYYY-MM-DD`) and for how many `years` (3); hardness of the mains (`waterHardness`, sum of calcium and
 * magnesium [mmol/L]), kind of `anode` (magnesium), `fluidAge` at the start (0) [years] and whether it is `dusty` (no).
 */
export type MaintenanceOptions = z.input<typeof optionsSchema>;

/** All cautions that hold for a whole calendar. */
export const CALENDAR_CAUTIONS = ['papers-go-first', 'trades', 'hot-loop'] as const;
/** What holds for all of a calendar. */
export type CalendarCautionCode = (typeof CALENDAR_CAUTIONS)[number];

/** A calendar. */
export interface MaintenanceCalendar {
  /** First day, `YYYY-MM-DD`. */
  readonly from: string;
  /** Day after the last, `YYYY-MM-DD`. */
  readonly to: string;
  /** Tasks by their first date; those on an occasion that is not known come last. */
  readonly tasks: readonly MaintenanceTask[];
  /** The same by day: what is to be done when. */
  readonly days: readonly {
    /** The day, `YYYY-MM-DD`. */
    readonly date: string;
    /** Tasks of that day. */
    readonly codes: readonly MaintenanceCode[];
  }[];
  /** What the run says about wear. */
  readonly wear: WearNumbers;
  /** What holds for all of it. */
  readonly cautions: readonly CalendarCautionCode[];
}

/** What is due within so many days of another task of the kind is done with it. Judgement. [d] */
const SHORTEST_GAP = 7;
/** Before the first frost of the weather file: another year's may come this much sooner. Judgement. [d] */
const READY_AHEAD = 28;
/** And the fluid's test this much, so that there is time to mend it. Judgement. [d] */
const TEST_AHEAD = 49;
/** Days unused after which hydrogen may have gathered over a magnesium anode; tank makers' papers, from memory. [d] */
const UNUSED = 14;

/**
 * Makes a maintenance calendar from a run: how often each task is due follows from what the run does to fluid, pressure, tank and
 * pump; each task says why, in numbers, who does it, and where its usual interval comes from. The result is codes and numbers;
 * `calendarInWords` of `@noonloop/reports` has the sentences.
 *
 * Papers of the makers and local rules go before it.
 *
 * @param result - A simulated year of the system.
 * @param options - From when, and what the run cannot know.
 * @throws {@link DesignError} listing all faults of the options at once.
 * @example
 * const { days } = maintenanceCalendar(simulate(design, weather), { from: '2025-03-01', waterHardness: 2.8 });
 */
export function maintenanceCalendar(result: RunResult, options: MaintenanceOptions): MaintenanceCalendar {
  const { anode, dusty, fluidAge, from: firstDay, waterHardness, years } = checkInput(optionsSchema, options);
  const from = DateTime.fromISO(firstDay, { zone: 'utc' });
  const { design } = result;
  const wear = wearOf(result);
  const to = from.plus({ years });
  const north = result.site.latitude >= 0;
  const context = {
    ...{ design, wear, anode, fluidAge, dusty },
    hardness: waterHardness ?? null,
    spring: north ? 3 : 9,
    beforeFrost: aheadOf(wear.firstFrost, TEST_AHEAD, north),
    readyForFrost: aheadOf(wear.firstFrost, READY_AHEAD, north),
  };
  const rules = [...loopTasks(context), ...houseTasks(context), ...outsideTasks(context)];
  const tasks = rules
    .map((rule) => withDates(rule, { from, to, fluidAge, holidays: design.draw.holidays }))
    .filter(({ dates, everyMonths }) => dates.length > 0 || everyMonths === null)
    .sort((a, b) => firstOf(a).localeCompare(firstOf(b)) || a.code.localeCompare(b.code));
  return {
    from: from.toISODate()!,
    to: to.toISODate()!,
    tasks,
    days: byDay(tasks),
    wear,
    cautions: CALENDAR_CAUTIONS,
  };
}

const firstOf = ({ dates }: MaintenanceTask): string => dates[0] ?? '9999';

/** Month and day so many days before the first frost; without a frost, of the place's autumn. */
function aheadOf(firstFrost: number | null, days: number, north: boolean): Season {
  if (firstFrost === null) return [north ? 9 : 3, 1];
  const date = DateTime.utc(2023, 1, 1).plus({ days: Math.trunc(firstFrost / 24) - days });
  return [date.month - 1, date.day];
}

interface CalendarSpan {
  readonly from: DateTime;
  readonly to: DateTime;
  /** [years] */
  readonly fluidAge: number;
  /** Of the design, `MM-DD..MM-DD`. */
  readonly holidays: readonly string[];
}

/** First day on or after `from` that has this month (0 January) and day of month. @internal */
export function nextSeason(from: DateTime, [month, dayOfMonth]: Season): DateTime {
  const inYear = (year: number): DateTime => DateTime.utc(year, month + 1, dayOfMonth);
  return inYear(from.year) >= from ? inYear(from.year) : inYear(from.year + 1);
}

function withDates({ season, ...task }: Rule, span: CalendarSpan): MaintenanceTask {
  const { from, to } = span;
  const { everyMonths } = task;
  const duty = TASK_DUTIES[task.code];
  if (everyMonths === null) return { ...task, ...duty, dates: homecomings(span) };
  let first = nextSeason(from, season);
  if (task.code === 'glycol-change') {
    const due = from.plus({ months: everyMonths - Math.round(12 * span.fluidAge) });
    // What is overdue does not wait for its season; else the last season before the life is over.
    if (due <= from) first = from;
    else while (first.plus({ years: 1 }) <= due) first = first.plus({ years: 1 });
  } else if (everyMonths < 12) {
    // The round of the year may pass its season before it comes to it.
    while (first.minus({ months: everyMonths }) >= from.plus({ days: SHORTEST_GAP }))
      first = first.minus({ months: everyMonths });
  }
  const dates: string[] = [];
  for (let at = 0; at < 1000; at++) {
    const due = first.plus({ months: at * everyMonths });
    if (due >= to) break;
    dates.push(due.toISODate()!);
  }
  return { ...task, ...duty, dates };
}

/** Days after holidays of two weeks and more. */
function homecomings({ from, to, holidays }: CalendarSpan): string[] {
  const ends = holidays.flatMap((span) => {
    const [start, end] = span
      .split('..')
      .map((text) => DateTime.fromFormat(`2023-${text}`, 'yyyy-MM-dd', { zone: 'utc' }));
    if (start === undefined || end === undefined) return [];
    const until = end < start ? end.plus({ years: 1 }) : end;
    return until.diff(start, 'days').days + 1 >= UNUSED ? [until.plus({ days: 1 })] : [];
  });
  const dates: string[] = [];
  for (const home of ends)
    for (let due = nextSeason(from, [home.month - 1, home.day]); due < to; due = due.plus({ years: 1 }))
      dates.push(due.toISODate()!);
  return dates.sort();
}

function byDay(tasks: readonly MaintenanceTask[]): MaintenanceCalendar['days'] {
  const days = new Map<string, MaintenanceCode[]>();
  for (const { code, dates } of tasks) for (const date of dates) days.set(date, [...(days.get(date) ?? []), code]);
  return [...days].map(([date, codes]) => ({ date, codes })).sort((a, b) => a.date.localeCompare(b.date));
}
