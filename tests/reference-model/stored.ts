/** Runs of the model kept in a file, for mutants, each of which is judged in a process of its own: `NOONLOOP_REFERENCE` names the file. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type { SystemDesign } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { type ReferenceRun, referenceRun } from './model.ts';

const runs = new Map<string, ReferenceRun>();

/** A run of the model, once in a process; or, where it is asked for, of a file of the runs of all designs; it is made by the first call, which no mutant has touched. */
export function storedRun(
  name: string,
  designs: readonly (readonly [string, SystemDesign])[],
  weather: WeatherYear,
): ReferenceRun {
  const path = process.env.NOONLOOP_REFERENCE;
  const design = designs.find(([known]) => known === name)![1];
  if (path === undefined) {
    const known = runs.get(name) ?? referenceRun(design, weather);
    runs.set(name, known);
    return known;
  }
  if (!existsSync(path)) {
    const all = designs.map(([known, one]) => {
      const { columns, ...rest } = referenceRun(one, weather);
      const lists = Object.entries(columns).map(([column, values]) => [column, Array.from(values)]);
      return [known, { ...rest, columns: Object.fromEntries(lists) }];
    });
    writeFileSync(path, JSON.stringify(Object.fromEntries(all)));
  }
  if (runs.size === 0) {
    const all = JSON.parse(readFileSync(path, 'utf8')) as Record<string, { columns: Record<string, number[]> }>;
    for (const [known, { columns, ...rest }] of Object.entries(all)) {
      const lists = Object.entries(columns).map(([column, list]) => [column, Float64Array.from(list)]);
      runs.set(known, { ...rest, columns: Object.fromEntries(lists) } as unknown as ReferenceRun);
    }
  }
  return runs.get(name)!;
}
