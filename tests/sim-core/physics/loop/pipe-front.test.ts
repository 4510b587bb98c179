import { defineSystem, simulate } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import {
  compileFluid,
  fluidDensity,
  fluidSpecificHeat,
} from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { compileCircuit } from '../../../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { compileTank } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../../property/span.ts';
import { conditions, goRound } from './one-step.ts';

const weather = await inventedValley();
const design = defineSystem(plainInput);
const fluid = compileFluid('propylene-glycol', 0.4);
/** 2 L/min. [W/K] */
const RATE = (2 / 60_000) * fluidDensity(fluid, 40) * fluidSpecificHeat(fluid, 40);

/** A cold start: array at 60 °C, pipes at 10 °C, tank at 20 °C. Coil's inlet over time [°C], and heat into the tank [J]. */
function coldStart(pipeNodes: number, duration: number, until: number) {
  const circuit = compileCircuit(design, fluid, 10, { stepCounts: [3600 / duration], collectorNodes: 4, pipeNodes });
  const tank = compileTank(design.tank, [3600 / duration]);
  tank.temperature.fill(20);
  circuit.pipe.fill(10);
  circuit.absorber.fill(60);
  const inlet: number[] = [];
  let heat = 0;
  for (let time = duration; time <= until; time += duration) {
    heat += goRound(circuit, tank, [RATE, 300], conditions(500, 10, 18, duration)).coilHeat;
    inlet.push(circuit.pipe[2 * pipeNodes - 1]!);
  }
  const half = circuit.pipeCapacity.slice(0, 2 * pipeNodes).reduce((total, capacity) => total + capacity);
  return { inlet, heat, delay: half / RATE };
}

describe('delay of the pipes', () => {
  it('brings the front to the coil after V/Q, pipe wall included, in a finely cut pipe [plug flow]', () => {
    const { inlet, delay } = coldStart(40, 1, 200);
    const arrives = inlet.findIndex((t) => t > (10 + Math.max(...inlet)) / 2) + 1;
    expect(arrives / delay).toBeGreaterThan(0.9);
    expect(arrives / delay).toBeLessThan(1.1);
  });

  it('is smeared by one node a section, yet the first quarter hour brings the tank the same within 0.3 % [requirement]', () => {
    const coarse = coldStart(1, 60, 900);
    const fine = coldStart(16, 60, 900);
    expect(coarse.inlet[0]! - fine.inlet[0]!).toBeGreaterThan(2); // comes too early
    expect(Math.abs(coarse.heat / fine.heat - 1)).toBeLessThan(0.003);
  });

  it.each([
    [2, '20 m'],
    [3, '20 m'],
  ])(
    'moves ten weeks of %d panels and %s by less than 0.1 % and 0.2 K with eight nodes a section for one [convergence]',
    (panels, pipeLength) => {
      const input = { ...plainInput, array: { ...plainInput.array, panels }, loop: { pipeLength } };
      const run = (pipeNodes: number) => liveSpan(defineSystem(input), weather, ...EARLY_SUMMER, { pipeNodes }).columns;
      const [one, eight] = [run(1), run(8)] as const;
      expect(Math.abs(sum(eight.solarHeat) / sum(one.solarHeat) - 1)).toBeLessThan(0.001);
      expect(
        Math.abs(Math.max(...eight.tankMaximumTemperature) - Math.max(...one.tankMaximumTemperature)),
      ).toBeLessThan(0.2);
    },
  );

  it('keeps the balance in a finely cut pipe [conservation]', () => {
    const { balance } = liveSpan(design, weather, ...EARLY_SUMMER, { pipeNodes: 5 });
    for (const part of Object.values(balance)) expect(part.worstRelative).toBeLessThan(1e-9);
    expect(() => simulate(design, weather, { pipeNodes: 0 })).toThrow('pipeNodes');
  });
});
