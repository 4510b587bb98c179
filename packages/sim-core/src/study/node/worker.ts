/** What a thread of the pool does: it keeps the weather years that it has met, so that their sun is computed once. */
import type { WeatherYear } from '@noonloop/weather-io';
import { evaluateCase } from '../evaluate.ts';
import type { RowRequest, StudyCase, StudyRow } from '../types.ts';

/** A task as it travels: only the weather years of its designs, each under a number of the pool. */
export interface PoolTask {
  readonly cases: readonly StudyCase[];
  readonly weathers: Readonly<Record<number, { readonly key: number; readonly year: WeatherYear }>>;
  readonly request: RowRequest;
}

/** Weather years that a thread keeps; with each goes its sun of some 5 MB. */
const MOST = 40;
const known = new Map<number, WeatherYear>();

/** Runs in a thread. */
export default function runTask({ cases, weathers, request }: PoolTask): StudyRow[] {
  return cases.map((one) => {
    const { key, year } = weathers[one.weather]!;
    const kept = known.get(key) ?? year;
    known.delete(key);
    known.set(key, kept);
    if (known.size > MOST) known.delete(known.keys().next().value!);
    return evaluateCase(one, kept, request);
  });
}
