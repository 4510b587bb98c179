/** The working of a yard test, line by line. */
import { line as step, type WorkingStep } from '../../input/working.ts';
import { fluxOf, type Line, type YardNumbers } from './yard-fit.ts';
import type { YardTest } from './yard-schema.ts';

/** @internal */
export function yardSteps(
  test: YardTest,
  points: readonly YardNumbers[],
  deviations: readonly number[],
  line: Line,
): WorkingStep[] {
  const readings = points.map((point, at) => {
    const { inlet, outlet, warming = 0 } = test.points[at]!;
    return step(warming === 0 ? 'yard-heat' : 'yard-heat-warming', [point.flux, 'W/m²'], {
      reading: [at + 1, '1'],
      capacityRate: [point.capacityRate, 'W/(m²·K)'],
      outlet: [outlet, '°C'],
      inlet: [inlet, '°C'],
      capacity: [test.heatCapacity, 'J/(m²·K)'],
      warming: [warming, 'K/h'],
      ofLine: [fluxOf(line, point), 'W/m²'],
      error: [deviations[at]!, 'W/m²'],
      fluid: test.fluid,
    });
  });
  const columns = {
    light: [points.map(({ light }) => light), 'W/m²'],
    difference: [points.map(({ difference }) => difference), 'K'],
  } as const;
  return [
    ...readings,
    step('yard-eta0', [line[0], '-'], columns),
    step('yard-a1', [line[1], 'W/(m²·K)'], columns),
    step('yard-a2', [line[2], 'W/(m²·K²)'], columns),
  ];
}
