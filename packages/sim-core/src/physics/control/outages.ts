import type { OutageDesign } from '../../design/control.ts';
import { dayOfYear } from '../calendar.ts';

/**
 * Day of the year of a `MM-DD`, 0 on 1 January; `null` where there is no such day.
 *
 * @internal
 */
export function readDay(text: unknown): number | null {
  const parts = typeof text === 'string' ? /^(\d\d)-(\d\d)$/.exec(text) : null;
  return parts === null ? null : dayOfYear(Number(parts[1]), Number(parts[2]));
}

/**
 * Hours of the year that lie in outages of one kind, first and last day included; a span whose end is before its start goes over
 * the end of the year.
 *
 * @param outages - Of a design.
 * @param kind - Those counted.
 * @returns 1 in each hour that is touched. Shape [8760].
 */
export function outageHours(outages: readonly OutageDesign[], kind: OutageDesign['kind']): Uint8Array {
  const hours = new Uint8Array(8760);
  for (const outage of outages) {
    if (outage.kind !== kind) continue;
    const first = readDay(outage.from)! * 24;
    const end = (readDay(outage.to)! + 1) * 24;
    if (first < end) hours.fill(1, first, end);
    else hours.fill(1, first).fill(1, 0, end);
  }
  return hours;
}
