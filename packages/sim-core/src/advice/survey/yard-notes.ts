/** What a reader should know before trusting a yard test. */
import type { YardCoefficient } from './yard.ts';
import type { YardNumbers } from './yard-fit.ts';
import type { YardTest } from './yard-schema.ts';

/** @internal */
export function yardNotes(
  test: YardTest,
  points: readonly YardNumbers[],
  found: { eta0: YardCoefficient; a1: YardCoefficient; scatter: number | null; residuals: readonly number[] },
): string[] {
  const list: string[] = [];
  const rises = test.points.map(({ inlet, outlet }) => Math.abs(outlet - inlet));
  const small = rises.filter((rise) => rise < 1.5).length;
  if (small > 0)
    list.push(
      `${small} of ${rises.length} readings differ by less than 1.5 K between inlet and outlet: the thermometers’ error is then a large part of the heat. Throttle the flow.`,
    );
  found.residuals.forEach((residual, at) => {
    if (Math.abs(residual) > 3)
      list.push(
        `Reading ${at + 1} lies ${Math.abs(residual).toFixed(1)} deviations off the line: cloud, air in the flow, or a slip of the pen?`,
      );
  });
  if (found.scatter === null) list.push('No spare readings: nothing shows whether the tools are as good as said.');
  else if (found.scatter > 2)
    list.push(
      `The readings scatter ${Math.sqrt(found.scatter).toFixed(1)} times as much as the tools explain; the errors were widened by that.`,
    );
  if (points.every(({ irradiance }) => irradiance === 0))
    list.push('All readings are of a covered panel: the loss can be told, the light cannot.');
  if (test.points.some(({ irradiance, incidence }) => irradiance > 0 && incidence > 30))
    list.push('Light came from more than 30° aside: b0 has a say in eta0.');
  for (const [name, { from, remedy }] of [
    ['eta0', found.eta0],
    ['a1', found.a1],
  ] as const)
    if (from === 'cannot tell') list.push(`${name} cannot be told from these readings. ${remedy}`);
  list.push(
    'Hot water and steam scald: never feed a panel that stood dry in the sun; cover it first. Leave both ends of the panel open.',
  );
  return list;
}
