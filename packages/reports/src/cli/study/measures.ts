// Key figures of a study in words and units.
import type { Measure, StudyRow, StudyValue } from '@noonloop/sim-core';
import { MEASURE_UNITS } from '@noonloop/sim-core';
import { DEFINITIONS, type NumberKey } from '../../definitions.ts';
import type { Cell, Column } from '../sheet/model.ts';
import type { WrittenAs } from './written.ts';

/** A key figure as people call it. */
export const wordsOf = (measure: Measure): string =>
  Object.hasOwn(DEFINITIONS, measure) ? DEFINITIONS[measure as NumberKey].label : measure;

/** Its unit; shares are shown in %. */
export const unitOf = (measure: Measure): string => (MEASURE_UNITS[measure] === '-' ? '%' : MEASURE_UNITS[measure]);

/** The rows of a study as a table: what was chosen, then the key figures. */
export function rowColumns(places: readonly string[], measures: readonly Measure[]): Column[] {
  return [
    { label: 'design' },
    ...places.map((label) => ({ label })),
    { label: 'weather' },
    ...measures.map((measure) => ({ label: wordsOf(measure), unit: unitOf(measure) })),
    { label: 'fault' },
  ];
}

/** One row. */
export function rowCells(
  { index, inputs, weather, measures: found, error }: StudyRow,
  places: readonly string[],
  measures: readonly Measure[],
  written: WrittenAs,
): Cell[] {
  return [
    String(index + 1),
    ...places.map((place) => shownValue(written(place, inputs[place]))),
    String(weather + 1),
    ...measures.map((measure) => found[measure] ?? null),
    error === undefined ? '' : error.message.split('\n')[0]!,
  ];
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
