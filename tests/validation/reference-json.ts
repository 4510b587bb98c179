import { readFileSync } from 'node:fs';
import { hasShared, sharedFile } from '../shared.ts';

/** One case of the formulas page, by name; `null` where a formula has no such number. */
export type ReferenceCase = Readonly<Record<string, number>>;

/** Cases of one formula in `reference/collector-and-tank.json`; none where it is absent. */
export function referenceCases(formula: string): ReferenceCase[] {
  const path = 'reference/collector-and-tank.json';
  if (!hasShared(path)) return [];
  const page = JSON.parse(readFileSync(sharedFile(path), 'utf8')) as Record<string, ReferenceCase[]>;
  const cases = page[formula];
  if (cases === undefined) throw new Error(`no formula "${formula}" in ${path}`);
  return cases;
}
