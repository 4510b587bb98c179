import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { assemble } from '../../../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput } from '../../../examples.ts';
import { conditions, goRound, stand } from '../loop/one-step.ts';

const weather = await inventedValley();

/**
 * A cold morning: array and outdoor pipes at −5 °C, tank at 15 °C. Sun of 500 W/m² on the absorber, the fluid standing for 20 minutes;
 * then flow of 3 L/min, 190 W/K, for an hour. Steps of half a minute.
 */
function coldMorning(collectorNodes: number) {
  const { loop, tank } = assemble(defineSystem(plainInput), weather, { collectorNodes, stepsPerHour: 60 });
  const { circuit } = loop;
  circuit.absorber.fill(-5);
  circuit.pipe.fill(-5);
  tank.temperature.fill(15);
  for (let minute = 0; minute < 20; minute++) stand(circuit, 60, conditions(500, -5, 18, 3600 / 60));
  let peak = -Infinity;
  let collected = 0;
  let delivered = 0;
  for (let step = 0; step < 120; step++) {
    const { outlet, collectorHeat, coilHeat } = goRound(circuit, tank, [190, 150], conditions(500, -5, 18, 30));
    peak = Math.max(peak, outlet);
    collected += collectorHeat;
    delivered += coilHeat;
  }
  return { peak, collected, delivered };
}

// The table of docs/theory/steps.md. The peak is of the first order in the node's length: a slug of warm fluid that real risers smear too.
describe('cold start by nodes along the flow, against 16 [convergence]', () => {
  const finest = coldMorning(16);
  const errors = [1, 2, 4, 8].map((nodes) => {
    const { peak, collected, delivered } = coldMorning(nodes);
    return {
      nodes,
      peak: finest.peak - peak,
      collected: 1 - collected / finest.collected,
      delivered: 1 - delivered / finest.delivered,
    };
  });

  it('falls with every doubling, in the peak and in the heat of the first hour', () => {
    for (const [finer, coarser] of errors.slice(1).map((error, at) => [error, errors[at]!] as const)) {
      for (const key of ['peak', 'collected', 'delivered'] as const) {
        expect(finer[key], `${finer.nodes} nodes`).toBeGreaterThan(0);
        expect(finer[key], `${finer.nodes} nodes`).toBeLessThan(coarser[key]);
      }
    }
  });

  it.each([
    [1, 6.5, 0.014],
    [2, 3.2, 0.007],
    [4, 2.3, 0.003],
    [8, 1.3, 0.001],
  ])('%i nodes: outlet’s peak at most %f K low, heat into the tank at most %f of itself', (nodes, kelvin, share) => {
    const error = errors.find((candidate) => candidate.nodes === nodes)!;
    expect(error.peak).toBeLessThan(kelvin);
    expect(error.delivered).toBeLessThan(share);
  });
});
