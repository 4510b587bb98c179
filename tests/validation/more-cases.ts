import { readFileSync } from 'node:fs';
import { hasShared, sharedFile } from '../shared.ts';

const path = 'reference/more/cases.json';

/** A section of the shared cases of houses, tanks and heaters, by its keys; empty where the file is absent. */
export function moreCases<T>(...keys: readonly string[]): readonly T[] {
  if (!hasShared(path)) return [];
  const page: unknown = JSON.parse(readFileSync(sharedFile(path), 'utf8'));
  return keys.reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], page) as readonly T[];
}

/** Whether those cases are there. */
export const hasMoreCases = hasShared(path);
