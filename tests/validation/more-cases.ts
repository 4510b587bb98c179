import { readFileSync } from 'node:fs';
import { hasShared, sharedFile } from '../shared.ts';

const path = 'reference/more/cases.json';

/** A section of the shared cases of houses, tanks and heaters, by its keys. */
export function moreCase<T>(...keys: readonly string[]): T {
  const page: unknown = JSON.parse(readFileSync(sharedFile(path), 'utf8'));
  return keys.reduce<unknown>((part, key) => (part as Record<string, unknown>)[key], page) as T;
}

/** The same as a list; empty where the file is absent. */
export const moreCases = <T>(...keys: readonly string[]): readonly T[] =>
  hasShared(path) ? moreCase<readonly T[]>(...keys) : [];

/** Whether those cases are there. */
export const hasMoreCases = hasShared(path);
