/** Temperatures that decide in a house. */
import type { SystemDesign } from '@noonloop/sim-core';
import { formatQuantity, type Units } from '../units.ts';
import type { KeyMark } from './colour-steps.ts';

/** What the taps want, what the heater keeps, where the pump is stopped; of several designs that of the first which has it. */
export function decisiveTemperatures(designs: readonly SystemDesign[], units: Units): KeyMark[] {
  const marks = new Map<string, KeyMark>();
  for (const design of designs)
    for (const [word, value] of [
      ['taps', design.draw.tapTemperature],
      ['heater', design.heater.setTemperature],
      ['limit', design.control.highLimit],
    ] as const)
      if (value !== null && Number.isFinite(value) && !marks.has(word))
        marks.set(word, { word: `${word} ${formatQuantity(value, 'temperature', units)}`, value });
  return [...marks.values()];
}
