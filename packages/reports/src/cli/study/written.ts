// Values of an axis as somebody wrote them: rows hold numbers in SI.
import type { StudyRow, StudyValue } from '@noonloop/sim-core';

/** Words for a value at a place, as they stand in the file; the value itself where it is none of those. */
export type WrittenAs = (place: string, value: StudyValue | undefined) => StudyValue | undefined;

/** Lists of the file hold the values in the order in which the rows first show them. */
export function writtenAs(vary: Readonly<Record<string, unknown>>, rows: readonly StudyRow[]): WrittenAs {
  const words = new Map<string, Map<string, StudyValue>>();
  for (const [place, axis] of Object.entries(vary)) {
    if (!Array.isArray(axis)) continue;
    const seen = new Map<string, StudyValue>();
    for (const { inputs } of rows) {
      const key = JSON.stringify(inputs[place]);
      if (!seen.has(key) && seen.size < axis.length) seen.set(key, axis[seen.size] as StudyValue);
    }
    words.set(place, seen);
  }
  return (place, value) => words.get(place)?.get(JSON.stringify(value)) ?? value;
}
