/** The working of a yard test, line by line. */
import { show as digits, type WorkingStep } from '../../input/working.ts';
import { fluxOf, type Line, type YardNumbers } from './yard-fit.ts';
import type { YardTest } from './yard-schema.ts';

/** @internal */
export function yardSteps(
  test: YardTest,
  points: readonly YardNumbers[],
  deviations: readonly number[],
  line: Line,
): WorkingStep[] {
  const steps = points.map((point, at): WorkingStep => {
    const { inlet, outlet, warming = 0 } = test.points[at]!;
    const warmed = warming === 0 ? '' : ` + ${digits(test.heatCapacity)} × ${digits(warming)}/3600`;
    return {
      quantity: `heat of reading ${at + 1}`,
      formula: 'q = ρ c_p V̇ (t_out − t_in)/A + C dt_m/dt',
      numbers: `${digits(point.capacityRate)} × (${digits(outlet)} − ${digits(inlet)})${warmed}; the line gives ${digits(fluxOf(line, point))}, ± ${digits(deviations[at]!, 2)} by the tools`,
      value: point.flux,
      unit: 'W/m²',
      source: `${test.fluid === 'water' ? 'IAPWS' : 'Melinder 2010'}; error: JCGM 100`,
    };
  });
  const formula = 'q = eta0 K G − a1 d − a2 d |d|, weighted least squares';
  const light = points.map((point) => `${digits(point.light, 3)}`).join(', ');
  const difference = points.map((point) => `${digits(point.difference, 3)}`).join(', ');
  const numbers = `K G: ${light} W/m²; d: ${difference} K`;
  const source = 'ISO 9806 form; K: b0';
  return [
    ...steps,
    { quantity: 'eta0', formula, numbers, value: line[0], unit: '-', source },
    { quantity: 'a1', formula, numbers, value: line[1], unit: 'W/(m²·K)', source },
    { quantity: 'a2', formula, numbers, value: line[2], unit: 'W/(m²·K²)', source },
  ];
}
