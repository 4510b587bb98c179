// Gathers what the checks find, and keeps the worst rows.
import type { Said } from '../said.ts';
import { monthAndDay } from '../time/calendar.ts';
import type { QualityCode, QualityFinding, QualityRow } from './report.ts';

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];

/** Worst rows that a finding lists. */
const MOST_ROWS = 10;

/** Day of the year as people write it, such as `3 Jul`. */
export function dateName(day: number): string {
  const date = monthAndDay(day);
  return `${date.day} ${MONTHS[date.month - 1]}`;
}

/** Hour of the year as people write it, such as `3 Jul 14:00`. */
export const hourName = (hour: number): string =>
  `${dateName(Math.floor(hour / 24))} ${String(hour % 24).padStart(2, '0')}:00`;

interface Entry {
  readonly row: QualityRow;
  readonly badness: number;
}

/** Rows of one kind that wait to become a finding. */
interface Pending {
  readonly entries: Entry[];
  readonly counted: 'hours' | 'days';
}

/** What was found beside what it may be. */
type Seen = Pick<QualityRow, 'value' | 'limit' | 'unit'>;

/** Gathers rows by kind; `close` turns a kind into a finding where there are any. */
export class Collector {
  readonly findings: QualityFinding[] = [];
  /** 0 none, 1 rare, 2 cannot be weather, by hour. */
  readonly marks = new Uint8Array(8760);
  readonly #pending = new Map<string, Pending>();

  /** Notes an hour. @param badness - Sorts the worst rows; default the excess over the limit. */
  add(code: QualityCode, part: string, hour: number, seen: Seen, badness = seen.value - seen.limit): void {
    this.#of(code, part, 'hours').entries.push({ row: { hour, stamp: hourName(hour), ...seen }, badness });
  }

  /** Notes a whole day. */
  addDay(code: QualityCode, day: number, value: number, limit: number, unit: string): void {
    const row = { hour: day * 24, stamp: dateName(day), value, limit, unit };
    this.#of(code, '', 'days').entries.push({ row, badness: Math.abs(value - limit) });
  }

  /**
   * Makes a finding of what was noted of a kind.
   *
   * @param many - Count from which the year is changed by it; half of that is a doubt.
   * @param mayBe - Whether it may be weather, seldom: then it is never a fault.
   * @param text - What is the matter; the count is put after.
   */
  close(code: QualityCode, part: string, many: number, text: string, mayBe = false): void {
    const pending = this.#pending.get(`${code} ${part}`);
    if (pending === undefined) return;
    const { entries, counted } = pending;
    entries.sort((a, b) => b.badness - a.badness);
    const mark = mayBe ? 1 : 2;
    for (const { row } of entries) {
      const hours = counted === 'days' ? 24 : 1;
      for (let hour = row.hour; hour < row.hour + hours; hour++) this.marks[hour] = Math.max(this.marks[hour]!, mark);
    }
    const count = entries.length;
    const worst = entries.slice(0, MOST_ROWS).map(({ row }) => row);
    const where = count === 1 ? `on ${worst[0]!.stamp}` : `the worst on ${worst[0]!.stamp}`;
    this.findings.push({
      code,
      weight: count < many / 2 ? 'note' : count < many || mayBe ? 'doubt' : 'fault',
      count,
      counted,
      text: `${text}: ${count} ${count === 1 ? counted.slice(0, -1) : counted}, ${where}.`,
      worst,
    });
  }

  /** Adds a finding about the year as a whole. */
  addWhole(
    code: QualityCode,
    weight: 'fault' | 'doubt',
    words: string | Said,
    numbers: Readonly<Record<string, number>>,
  ): void {
    const sentence = typeof words === 'string' ? { text: words } : words;
    this.findings.push({ code, weight, count: 8760, counted: 'hours', ...sentence, worst: [], numbers });
  }

  #of(code: QualityCode, part: string, counted: 'hours' | 'days'): Pending {
    const key = `${code} ${part}`;
    let pending = this.#pending.get(key);
    if (pending === undefined) {
      pending = { entries: [], counted };
      this.#pending.set(key, pending);
    }
    return pending;
  }
}
