// A maintenance calendar in sentences.
import type { MaintenanceCalendar, MaintenanceTask } from '@noonloop/sim-core';
import type { Units } from '../units.ts';
import { burnWords } from './burns.ts';
import { DOER_WORDS } from './cards.ts';
import { fill, sayingWords } from './fill.ts';
import { CALENDAR_CAUTION_WORDS, TASK_BASIS_WORDS, TASK_REASON_WORDS } from './task-reasons.ts';
import { TASK_WORDS } from './tasks.ts';

/** A task in words. */
export interface TaskInWords {
  /** Its code, as in the calendar. */
  readonly code: MaintenanceTask['code'];
  /** In a few words. */
  readonly name: string;
  /** Who does it. */
  readonly who: string;
  /** What to do. */
  readonly what: string;
  /** How often. */
  readonly every: string;
  /** Dates as `YYYY-MM-DD`; none where the occasion is not known. */
  readonly dates: readonly string[];
  /** Why, and why so often. */
  readonly why: string;
  /** Where the usual interval comes from. */
  readonly basis: string;
  /** What can hurt someone. */
  readonly caution: string;
}

/** A calendar in words, in one system of units. */
export interface CalendarInWords {
  /** In the calendar's order. */
  readonly tasks: readonly TaskInWords[];
  /** What holds for all of it. */
  readonly cautions: readonly string[];
}

/** Water above it is hot here: lime falls out fast. */
const HOT = { value: 60, unit: '°C' };

/**
 * A maintenance calendar in sentences.
 *
 * @param calendar - from `maintenanceCalendar`
 * @param units - of the numbers in them; default `metric`
 */
export function calendarInWords(calendar: MaintenanceCalendar, units: Units = 'metric'): CalendarInWords {
  return {
    tasks: calendar.tasks.map((task) => taskWords(task, units)),
    cautions: calendar.cautions.map((code) => CALENDAR_CAUTION_WORDS[code]),
  };
}

function taskWords(
  { code, who, everyMonths, dates, facts, reasons, basis }: MaintenanceTask,
  units: Units,
): TaskInWords {
  const { hottest } = facts;
  const all = {
    ...facts,
    ...(typeof hottest === 'object' ? { burn: burnWords(Math.min(hottest.value, 120)) } : {}),
  };
  const { name, what, caution } = TASK_WORDS[code];
  const why = reasons
    .map((reason) => sayingWords({ ...reason, facts: { ...reason.facts, hot60: HOT } }, TASK_REASON_WORDS, units))
    .join('; ');
  return {
    code,
    name,
    who: DOER_WORDS[who],
    what: fill(what, all, units),
    every: everyMonths === null ? 'when the occasion comes' : `every ${monthWords(everyMonths)}`,
    dates,
    why: `${why.charAt(0).toUpperCase()}${why.slice(1)}.`,
    basis: TASK_BASIS_WORDS[basis],
    caution: fill(caution, all, units),
  };
}

const monthWords = (months: number): string => {
  if (months === 1) return 'month';
  if (months === 12) return 'year';
  return months % 12 === 0 ? `${months / 12} years` : `${months} months`;
};
