/** Sobol indices of the Ishigami function, a 7, b 0.1 [closed form, Saltelli et al. 2008, §4.6]. */
import { type StudyRanges, sensitivity } from '@noonloop/sim-core';
import { inventedValley, plainInput } from '../../examples.ts';
import { modelled } from './small.ts';

// Three inputs whose names do not matter: rows come from a model of the test's own.
export const three: StudyRanges = {
  'array.tilt': { from: 0, to: 90 },
  'array.azimuth': { from: 0, to: 360 },
  'array.groundAlbedo': { from: 0, to: 1 },
};
export const onUnit = (model: (x: readonly number[]) => number) => (inputs: readonly number[]) =>
  model([inputs[0]! / 90, inputs[1]! / 360, inputs[2]!]);

const ishigami = onUnit((unit) => {
  const [x, y, z] = unit.map((share) => Math.PI * (2 * share - 1)) as [number, number, number];
  return Math.sin(x) + 7 * Math.sin(y) ** 2 + 0.1 * z ** 4 * Math.sin(x);
});
const exact = { first: [0.3139, 0.4424, 0], total: [0.5576, 0.4424, 0.2437] };

/** Each index of a study of so many samples: its own standard error, and how far it is off. */
export async function ishigamiErrors(samples: number): Promise<{ error: number; off: number }[]> {
  const study = sensitivity(plainInput, three, await inventedValley(), { method: 'sobol', samples, seed: 7 });
  const outcome = await study.analyse(modelled(study, ishigami));
  if (study.total !== samples * 5 || outcome.failed !== 0 || outcome.samples !== samples)
    throw new Error('other samples than were asked for');
  return Object.keys(three).flatMap((path, input) => {
    const { first, total } = outcome.indices[path]!.deliveredEnergy!;
    // Bounds of 5 % and 95 % lie 3.29 standard errors apart.
    const compared = (found: typeof first, truth: number) => ({
      error: (found.high - found.low) / 3.29,
      off: Math.abs(found.share - truth),
    });
    return [compared(first, exact.first[input]!), compared(total, exact.total[input]!)];
  });
}
