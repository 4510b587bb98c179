// Key figures of a study in words and units.
import type { Measure, StudyRow, StudyValue } from '@noonloop/sim-core';
import { MEASURE_UNITS } from '@noonloop/sim-core';
import { DEFINITIONS, type NumberKey } from '../../definitions.ts';
import { type Block, type Cell, type Column, table } from '../sheet/model.ts';
import type { WrittenAs } from './written.ts';

/** A key figure as people call it. */
export const wordsOf = (measure: Measure): string =>
  Object.hasOwn(DEFINITIONS, measure) ? DEFINITIONS[measure as NumberKey].label : measure;

/** Its unit; shares are shown in %. */
export const unitOf = (measure: Measure): string => (MEASURE_UNITS[measure] === '-' ? '%' : MEASURE_UNITS[measure]);

/** The rows of a study as a table: what was chosen, of several years which, the key figures, and faults where there are any. */
export function rowsTable(
  rows: readonly StudyRow[],
  places: readonly string[],
  measures: readonly Measure[],
  written: WrittenAs,
): Block {
  const years = rows.some(({ weather }) => weather > 0);
  const faults = rows.some(({ error }) => error !== undefined);
  const columns: Column[] = [
    { label: 'design' },
    ...places.map((label) => ({ label })),
    ...(years ? [{ label: 'weather' }] : []),
    ...measures.map((measure) => ({ label: wordsOf(measure), unit: unitOf(measure) })),
    ...(faults ? [{ label: 'fault' }] : []),
  ];
  const cells = ({ index, inputs, weather, measures: found, error }: StudyRow): Cell[] => [
    String(index + 1),
    ...places.map((place) => shownValue(written(place, inputs[place]))),
    ...(years ? [String(weather + 1)] : []),
    ...measures.map((measure) => found[measure] ?? null),
    ...(faults ? [error?.message.split('\n')[0] ?? ''] : []),
  ];
  return table('rows', columns, rows.map(cells));
}

/** A value of an axis as it was written. */
export const shownValue = (value: StudyValue | undefined): Cell =>
  value === undefined
    ? null
    : typeof value === 'number'
      ? value
      : typeof value === 'string'
        ? value
        : JSON.stringify(value);
