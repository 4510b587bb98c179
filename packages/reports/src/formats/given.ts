/** What a design was given, field by field in words; what was chosen for it stands in its assumptions. */
import type { RunResult, SystemDesign } from '@noonloop/sim-core';
import { designUnit } from '../design-units.ts';
import { plainText } from '../escape.ts';
import { idleFields } from '../idle-fields.ts';
import { formatDesignValue } from '../quantities.ts';
import type { Units } from '../units.ts';

/** One field. */
interface GivenLine {
  /** `tank: volume`. */
  readonly words: string;
  readonly value: string;
  /** Letters of the designs for which it holds; empty for all. */
  readonly designs: string;
}

/** A path in words: `array.collector.area` becomes `panels, collector: area`. */
export function fieldWords(path: string): string {
  const parts = path
    .split('.')
    .map((part) =>
      part.replace(/([a-z])([A-Z])/g, '$1 $2').replace(/[A-Z](?=[a-z])/g, (letter) => letter.toLowerCase()),
    );
  const last = parts.pop()!;
  return parts.length === 0 ? last : `${parts.join(', ')}: ${last}`;
}

const PATH = /(?<![-/\w])(?:array|pv|pump|loop|coil|tank|draw|heater|baseline|control)\.[A-Za-z]\w*(?:\.[A-Za-z]\w*)*/g;

/** A sentence whose fields stand in words. */
export const wordsOfFields = (text: string): string => text.replace(PATH, fieldWords);

const isBranch = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Leaves of a design that nobody chose for it. */
function givenOf(design: SystemDesign): [path: string, value: unknown][] {
  const skipped = new Set([...design.assumptions.map(({ path }) => path), ...idleFields(design)]);
  const found: [string, unknown][] = [];
  const walk = (path: string, value: unknown): void => {
    if (skipped.has(path) || value === null) return;
    if (isBranch(value)) for (const [key, of] of Object.entries(value)) walk(path === '' ? key : `${path}.${key}`, of);
    else if (!Array.isArray(value) || value.length > 0) found.push([path, value]);
  };
  walk('', design);
  return found;
}

/** Fields of all designs that were given, each value once. */
export function givenLines(results: readonly RunResult[], letters: readonly string[], units: Units): GivenLine[] {
  const lines = new Map<string, { words: string; value: string; holders: string[] }>();
  results.forEach(({ design }, index) => {
    for (const [path, value] of givenOf(design)) {
      const shown = plainText(formatDesignValue(value, designUnit(path), path, units));
      const key = JSON.stringify([path, shown]);
      const line = lines.get(key) ?? { words: plainText(fieldWords(path)), value: shown, holders: [] };
      lines.set(key, line);
      line.holders.push(letters[index]!);
    }
  });
  return [...lines.values()].map(({ words, value, holders }) => ({
    words,
    value,
    designs: holders.length === results.length ? '' : holders.join(', '),
  }));
}
