// Short gaps in columns that a simulation can do without.
import { type ColumnKey, LIMITS } from '../limits.ts';
import type { WeatherAssumption } from '../year.ts';

/** Longest gap bridged by a straight line: weather seldom turns within it. Common practice, no source. [h] */
const LONGEST_GAP = 3;

/**
 * Bridges gaps of up to 3 h in place, by a straight line between the neighbours (at the ends of the file by the one
 * neighbour). A column with a longer gap is left out. Either is said in `notes`.
 *
 * @param values - `NaN` where missing; changed in place.
 * @param lines - Line of each value, for the note.
 * @returns The column, or `null` where it is left out.
 */
export function bridgeGaps(
  key: ColumnKey,
  values: Float64Array,
  stepsPerHour: number,
  lines: readonly number[],
  notes: WeatherAssumption[],
): Float64Array | null {
  const { words } = LIMITS[key];
  let bridged = 0;
  for (let row = 0; row < values.length; row++) {
    if (!Number.isNaN(values[row])) continue;
    const start = row;
    while (row < values.length && Number.isNaN(values[row])) row++;
    const length = row - start;
    if (length > LONGEST_GAP * stepsPerHour) {
      const text = `${words} is left out: it is missing for more than ${LONGEST_GAP} h from line ${lines[start]} on.`;
      notes.push({ code: 'column-left-out', text });
      return null;
    }
    const before = values[start - 1] ?? values[row]!;
    const after = values[row] ?? before;
    for (let step = 0; step < length; step++) {
      values[start + step] = before + ((after - before) * (step + 1)) / (length + 1);
    }
    bridged += length;
  }
  if (bridged > 0) {
    const text = `${words}: ${bridged} missing values, in gaps of at most ${LONGEST_GAP} h, lie on a line between their neighbours.`;
    notes.push({ code: 'gaps-bridged', text });
  }
  return values;
}
