import * as z from 'zod';
import { checkInput } from '../../input/check.ts';
import { quote } from '../../input/errors.ts';
import { choice, count, defaulted, fault, flag } from '../../input/field.ts';
import type { RunResult } from '../../year/result.ts';
import { dayNumber, dayText, monthsLater, nextMonthDay } from './calendar-days.ts';
import type { Rule } from './maintenance-rule.ts';
import { rulesOf } from './maintenance-rules.ts';
import type { MaintenanceTask, WearNumbers } from './maintenance-types.ts';
import { monthOf, wearOf } from './wear.ts';

const day = z
  .custom<string>(() => true)
  .transform((value, context): number => {
    const number = dayNumber(value);
    if (number !== null) return number;
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

/** A calendar. */
export interface MaintenanceCalendar {
  /** First day, `YYYY-MM-DD`. */
  readonly from: string;
  /** Day after the last, `YYYY-MM-DD`. */
  readonly to: string;
  /** Tasks by their first date. */
  readonly tasks: readonly MaintenanceTask[];
  /** The same by day: what is to be done when. */
  readonly days: readonly {
    /** The day, `YYYY-MM-DD`. */
    readonly date: string;
    /** Tasks of that day. */
    readonly codes: readonly MaintenanceTask['code'][];
  }[];
  /** What the run says about wear. */
  readonly wear: WearNumbers;
  /** What holds for all of it. */
  readonly cautions: readonly string[];
}

/** What is due within so many days of another task of the kind is done with it. Judgement. [d] */
const SHORTEST_GAP = 7;

/**
 * Makes a maintenance calendar from a run: how often each task is due follows from what the run does to fluid, pressure, tank and
 * pump; each task says why, in numbers, and where its usual interval comes from.
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
  const { anode, dusty, fluidAge, from, waterHardness, years } = checkInput(optionsSchema, options);
  const wear = wearOf(result);
  const to = monthsLater(from, 12 * years);
  const north = result.site.latitude >= 0;
  // The frost of the place sets autumn where there is one.
  const autumn = wear.firstFrost === null ? (north ? 9 : 3) : monthOf(wear.firstFrost);
  const spring = north ? 3 : 9;
  const hardness = waterHardness ?? null;
  const rules = rulesOf({ design: result.design, wear, hardness, anode, fluidAge, dusty, spring, autumn });
  const tasks = rules
    .map((rule) => withDates(rule, from, to, fluidAge))
    .filter(({ dates }) => dates.length > 0)
    .sort((a, b) => a.dates[0]!.localeCompare(b.dates[0]!) || a.code.localeCompare(b.code));
  return {
    from: dayText(from),
    to: dayText(to),
    tasks,
    days: byDay(tasks),
    wear,
    cautions: [
      'Makers’ papers, the terms of a guarantee and local rules go before this calendar. It is computed from a model and a year of weather, not from a look at the system.',
      'Gas, mains electricity, pressure vessels and work on roofs are for licensed people. A loop in sun is hot and under pressure: work on it early in the morning or with covered panels.',
    ],
  };
}

function withDates({ season, ...task }: Rule, from: number, to: number, fluidAge: number): MaintenanceTask {
  const dates: string[] = [];
  let first = nextMonthDay(from, ...season);
  if (task.code === 'glycol-change') {
    // Due when its life is over, in the season before or at once where that is past.
    const due = monthsLater(from, Math.max(0, task.everyMonths - Math.round(12 * fluidAge)));
    while (monthsLater(first, 12) <= due) first = monthsLater(first, 12);
  } else if (task.everyMonths < 12) {
    // The round of the year may pass its season before it comes to it.
    while (monthsLater(first, -task.everyMonths) >= from + SHORTEST_GAP) first = monthsLater(first, -task.everyMonths);
  }
  for (let at = 0, due = first; due < to && at < 1000; at++, due = monthsLater(first, at * task.everyMonths)) {
    dates.push(dayText(due));
  }
  return { ...task, dates };
}

function byDay(tasks: readonly MaintenanceTask[]): MaintenanceCalendar['days'] {
  const days = new Map<string, MaintenanceTask['code'][]>();
  for (const { code, dates } of tasks) for (const date of dates) days.set(date, [...(days.get(date) ?? []), code]);
  return [...days].map(([date, codes]) => ({ date, codes })).sort((a, b) => a.date.localeCompare(b.date));
}
