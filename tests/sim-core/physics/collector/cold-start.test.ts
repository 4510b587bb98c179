import { defineSystem, type SystemInput } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileFluid } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { compileCircuit } from '../../../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { circuitDesign } from '../../../../packages/sim-core/src/physics/loop/plate-design.ts';
import { compileTank } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { compileStepping, type StepOptions } from '../../../../packages/sim-core/src/year/stepping.ts';
import { inventedValley, plainInput } from '../../../examples.ts';
import { conditions, goRound, stand } from '../loop/one-step.ts';

const weather = await inventedValley();

/** The loop and the tank of a design, all at one temperature. */
function loopAt(start: number, input: SystemInput, options: StepOptions) {
  const design = defineSystem(input);
  const stepping = compileStepping(design, weather, options);
  const fluid = compileFluid(design.loop.fluid, design.loop.glycolMassFraction);
  const circuit = compileCircuit(circuitDesign(design), fluid, start, stepping);
  circuit.absorber.fill(start);
  circuit.pipe.fill(start);
  return { circuit, tank: compileTank(design.tank, stepping.stepCounts) };
}

/**
 * A cold morning: array and outdoor pipes at −5 °C, tank at 15 °C. Sun of 500 W/m² on the absorber, the fluid standing for 20 minutes;
 * then flow of 3 L/min, 190 W/K, for an hour. Steps of half a minute.
 */
function coldMorning(collectorNodes: number) {
  const { circuit, tank } = loopAt(-5, plainInput, { collectorNodes, stepsPerHour: 60 });
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

/**
 * Weak flow through collectors of small capacity whose loss is nearly all quadratic, from rest at 25 °C: 400 W/m² for half an hour.
 */
function halfHour(capacityRate: number, steps: number) {
  const collector = { ...plainInput.array.collector, a1: 0.8, a2: 0.03, heatCapacity: 2000 };
  const { circuit, tank } = loopAt(25, { ...plainInput, array: { ...plainInput.array, collector } }, {});
  tank.temperature.fill(25);
  let collected = 0;
  for (let step = 0; step < steps; step++)
    collected += goRound(circuit, tank, [capacityRate, 150], conditions(400, 25, 25, 1800 / steps)).collectorHeat;
  return { hottest: Math.max(...circuit.absorber), collected };
}

// By the slope of the loss at rest alone: 209 °C and 1.6 times the heat at 6 W/K, 6 % too much at 30 W/K.
describe('one step of half an hour against steps of a second [convergence]', () => {
  it.each([
    [30, 1, 0.02],
    [6, 10, 0.1],
  ])('at %i W/K the absorber comes out as hot to %i K, the heat to %f of itself', (capacityRate, kelvin, share) => {
    const [once, fine] = [halfHour(capacityRate, 1), halfHour(capacityRate, 1800)];
    expect(Math.abs(once.hottest - fine.hottest)).toBeLessThan(kelvin);
    expect(Math.abs(once.collected / fine.collected - 1)).toBeLessThan(share);
  });

  it('no absorber passes its stagnation temperature [root of S = a1 d + a2 d²]', () => {
    const stagnation = 25 + (2 * 400) / (0.8 + Math.sqrt(0.8 ** 2 + 4 * 0.03 * 400));
    for (const capacityRate of [1, 3, 6, 12, 30]) expect(halfHour(capacityRate, 1).hottest).toBeLessThan(stagnation);
  });
});
