// Studies that cost next to nothing: a coarse step, and designs that fail before they are simulated.
import type { StudyOptions, StudyRow } from '@noonloop/sim-core';

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
