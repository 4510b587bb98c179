// Studies that cost next to nothing: a coarse step, and designs that fail before they are simulated.
import type { StudyOptions, StudyRow, StudyRunner, StudyTask } from '@noonloop/sim-core';
import type { WeatherYear } from '@noonloop/weather-io';
import { inThisThread } from '../../../packages/sim-core/src/study/in-process.ts';

/** One step an hour and one collector node: for tests of the study, not of the physics. */
export const coarse: StudyOptions = { steps: { stepsPerHour: 1, collectorNodes: 1 } };

/** Tank volumes of which two can be simulated. [m³] */
export const mostlyBadVolumes = [0.2, -1, -2, -3, 0.3, -4, -5, -6, -7, -8, -9] as const;

/** Rows as a model of one's own would give them: `deliveredEnergy` is a function of the inputs. */
export async function* modelled(
  study: { readonly count: number; readonly caseAt: (index: number) => { inputs: StudyRow['inputs'] } },
  model: (inputs: readonly number[]) => number | null,
): AsyncGenerator<StudyRow> {
  for (let index = 0; index < study.count; index++) {
    const { inputs } = study.caseAt(index);
    const value = model(Object.values(inputs) as number[]);
    const row = { index, inputs, weather: 0 };
    yield value === null
      ? { ...row, measures: {}, error: { name: 'Error', message: 'left out' } }
      : { ...row, measures: { deliveredEnergy: value } };
  }
}

/** Simulates in this thread each design once in a weather, and knows its rows when it comes again: for tests of what becomes of rows. */
export function onceEach(): StudyRunner {
  const known = new WeakMap<WeatherYear, Map<string, Promise<StudyRow[]>>>();
  const own = inThisThread();
  const run = (task: StudyTask): Promise<StudyRow[]> => {
    const [first] = task.weathers as [WeatherYear];
    const rows = known.get(first) ?? new Map<string, Promise<StudyRow[]>>();
    known.set(first, rows);
    const key = JSON.stringify([task.cases, task.request, task.weathers.length]);
    const found = rows.get(key) ?? own.run(task);
    rows.set(key, found);
    return found;
  };
  return { ...own, run };
}
