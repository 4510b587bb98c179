import type { SystemDesign } from '@noonloop/sim-core';

/** A field in which two designs differ. */
export interface DesignChange {
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

/** Fields in which two designs differ, in the order of the design; names and assumptions aside. */
export function designChanges(from: SystemDesign, to: SystemDesign): DesignChange[] {
  const changes: DesignChange[] = [];
  const walk = (path: string, a: unknown, b: unknown): void => {
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
