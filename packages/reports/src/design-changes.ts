import type { SystemDesign } from '@noonloop/sim-core';
import { idleFields } from './idle-fields.ts';

/** A field in which two designs differ. */
interface DesignChange {
  /** Place in the design, such as `array.panels`. */
  readonly path: string;
  /** In the first design; `undefined` where it has no such field. */
  readonly from: unknown;
  /** In the second. */
  readonly to: unknown;
}

/** Not part of the physics. */
const IGNORED = new Set(['name', 'assumptions']);

const isBranch = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/**
 * Fields in which two designs differ, in the order of the design. Left aside: names, and what nobody chose: a default of both
 * designs that follows from another field, such as a loss coefficient from a volume; what does nothing in either.
 */
export function designChanges(from: SystemDesign, to: SystemDesign): DesignChange[] {
  const changes: DesignChange[] = [];
  const assumed = (design: SystemDesign): string[] => design.assumptions.map(({ path }) => path);
  const assumedTo = new Set(assumed(to));
  const idle = new Set(idleFields(to));
  const derived = new Set([
    ...assumed(from).filter((path) => assumedTo.has(path)),
    ...idleFields(from).filter((path) => idle.has(path) && path !== 'baseline'),
  ]);
  const walk = (path: string, a: unknown, b: unknown): void => {
    if (derived.has(path)) return;
    if (isBranch(a) && isBranch(b)) {
      for (const key of new Set([...Object.keys(a), ...Object.keys(b)]))
        if (path !== '' || !IGNORED.has(key)) walk(path === '' ? key : `${path}.${key}`, a[key], b[key]);
    } else if (JSON.stringify(a) !== JSON.stringify(b)) {
      changes.push({ path, from: a, to: b });
    }
  };
  walk('', from, to);
  return changes;
}
