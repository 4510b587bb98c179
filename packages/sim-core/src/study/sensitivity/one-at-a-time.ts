import type { SystemInput } from '../../define/system-input.ts';
import type { Measure } from '../measures.ts';
import { setFields } from '../paths.ts';
import type { ReadRange } from '../ranges.ts';
import type { StudyCase, StudyRow } from '../types.ts';

/** What one key figure does while one input goes through its range, all others as the base has them. */
export interface MeasureChange {
  /** At the lower bound. [unit of the key figure] */
  readonly atFrom: number | null;
  /** In the base design. */
  readonly atBase: number | null;
  /** At the upper bound. */
  readonly atTo: number | null;
  /** Upper less lower bound; `null` where either gave no number. */
  readonly change: number | null;
}

/** Outcome of moving one input at a time. */
export interface OneAtATime {
  /** Base first, then each input at its lower and at its upper bound. */
  readonly rows: readonly StudyRow[];
  /** Key figures by input and name. */
  readonly changes: Readonly<Record<string, Readonly<Partial<Record<Measure, MeasureChange>>>>>;
}

/** Rows: the base, then two for each range. */
export const oneAtATimeTotal = (ranges: readonly ReadRange[]): number => 1 + 2 * ranges.length;

/** @internal */
export function oneAtATimeCase(base: SystemInput, ranges: readonly ReadRange[], index: number): StudyCase {
  if (index === 0) return { index, inputs: {}, design: base, weather: 0 };
  const { path, from, to } = ranges[Math.trunc((index - 1) / 2)]!;
  const inputs = { [path]: index % 2 === 1 ? from : to };
  return { index, inputs, design: setFields(base, inputs), weather: 0 };
}

/** @internal */
export function analyseOneAtATime(
  rows: readonly StudyRow[],
  ranges: readonly ReadRange[],
  measures: readonly Measure[],
): OneAtATime {
  const value = (row: number, measure: Measure): number | null => rows[row]?.measures[measure] ?? null;
  const changes = ranges.map(({ path }, at) => {
    const ofInput = measures.map((measure): [Measure, MeasureChange] => {
      const [atFrom, atTo] = [value(1 + 2 * at, measure), value(2 + 2 * at, measure)];
      const change = atFrom === null || atTo === null ? null : atTo - atFrom;
      return [measure, { atFrom, atBase: value(0, measure), atTo, change }];
    });
    return [path, Object.fromEntries(ofInput)];
  });
  return { rows, changes: Object.fromEntries(changes) };
}
