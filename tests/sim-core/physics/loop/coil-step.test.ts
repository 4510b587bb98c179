import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileFluid } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { coilMean } from '../../../../packages/sim-core/src/physics/loop/circuit.ts';
import { compileCircuit } from '../../../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { coilUA, compileCoil } from '../../../../packages/sim-core/src/physics/loop/coil.ts';
import { circulate } from '../../../../packages/sim-core/src/physics/loop/coil-step.ts';
import { layContent, restCoil } from '../../../../packages/sim-core/src/physics/loop/standing.ts';
import { mixInversions } from '../../../../packages/sim-core/src/physics/tank/inversion.ts';
import { compileTank } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { plainInput, sum } from '../../../examples.ts';
import { conditions, goRound, loopStep } from './one-step.ts';

const fluid = compileFluid('propylene-glycol', 0.4);

describe('a cold slug behind a warm pipe, 35 nodes of water over a coil of four', () => {
  it.each([1, 2, 6, 60])(
    'cools no node below what surrounds it, by %d steps an hour [what cannot be colder]',
    (parts) => {
      const design = defineSystem({
        ...plainInput,
        tank: { volume: 0.1, nodes: 40 },
        coil: { bottom: 0, top: 0.1, length: 40 },
      });
      const circuit = compileCircuit(design, fluid, -20, { stepCounts: [parts], collectorNodes: 4 });
      const tank = compileTank(design.tank, [parts]);
      tank.temperature.fill(20);
      circuit.pipe.set([25, 25, -20, -20]);
      for (let part = 0; part < parts; part++)
        goRound(circuit, tank, [200, 400], conditions(-60, -20, 18, 3600 / parts));
      const coldest = -20 - 60 / 3.8; // the absorber's own limit in that night
      for (const temperature of [...tank.temperature, ...circuit.absorber])
        expect(temperature).toBeGreaterThan(coldest);
      // The coarse step takes out what the fine one does, within a tenth: −5.6 °C in the lowest nodes by 60.
      expect(Math.min(...tank.temperature)).toBeGreaterThan(-6.5);
      expect(Math.min(...tank.temperature)).toBeLessThan(-4.5);
    },
  );
});

describe('films of the coil', () => {
  const design = defineSystem(plainInput);
  const films = compileCoil(design.coil, fluid);

  it('are taken at the middle of the tube, not at its inlet [definition of a mean film]', () => {
    const circuit = compileCircuit(design, fluid, 10, { stepCounts: [6], collectorNodes: 4 });
    const tank = compileTank(design.tank, [6]);
    tank.temperature.fill(30);
    const step = loopStep(tank, conditions(700, 20, 18, 600), [3e-5, 3e-5 * 1020 * 3700, 0]);
    const { stream } = step;
    // The tank is held: a steady state.
    for (let time = 0; time < 60; time++) circulate(circuit, step);
    const inlet = circuit.pipe[1]!;
    const middle = coilMean(circuit);
    expect(inlet - middle).toBeGreaterThan(8);
    expect(stream.conductance / coilUA(films, stream.flow, middle, 30)).toBeCloseTo(1, 2);
    expect(coilUA(films, stream.flow, inlet, 30) / stream.conductance).toBeGreaterThan(1.02);
  });

  it('of the first step behind a standing coil are those of the fluid that comes [requirement]', () => {
    const circuit = compileCircuit(design, fluid, 10, { stepCounts: [6], collectorNodes: 4 });
    const tank = compileTank(design.tank, [6]);
    tank.temperature.fill(30);
    circuit.absorber.fill(70);
    circuit.pipe.fill(60);
    circuit.coil.temperature.fill(30);
    const step = loopStep(tank, conditions(700, 20, 18, 600), [3e-5, 3e-5 * 1020 * 3700, 0]);
    const { stream } = step;
    circulate(circuit, step);
    // Within what 3 K of film temperature move.
    expect(stream.conductance / coilUA(films, stream.flow, coilMean(circuit), 30)).toBeCloseTo(1, 1);
    expect(stream.conductance).toBeGreaterThan(1.3 * coilUA(films, stream.flow, 30.001, 30));
  });
});

describe('content of the coil', () => {
  const design = defineSystem(plainInput);

  it('is its fluid and its metal [by hand: 12 m of 20/22 mm; copper 3.44 MJ/(m³·K), handbook]', () => {
    const circuit = compileCircuit(design, fluid, 10, { stepCounts: [6], collectorNodes: 4 });
    const bore = (Math.PI / 4) * 0.02 ** 2 * 12;
    const metal = (Math.PI / 4) * (0.022 ** 2 - 0.02 ** 2) * 12;
    // 40 % propylene glycol at 40 °C, reference table of Melinder 2010: 1023 kg/m³, 3738 J/(kg·K).
    expect(circuit.coil.capacity / (bore * 1023 * 3738 + metal * 3.44e6)).toBeCloseTo(1, 2);
  });

  it('is never hotter than all water and fluid, whatever it was before [second law]', () => {
    const circuit = compileCircuit(design, fluid, 50, { stepCounts: [6], collectorNodes: 4 });
    const tank = compileTank(design.tank, [6]);
    const { contentShare, temperature: content } = circuit.coil;
    // From a layered tank that a draw and an element have made even since.
    content.forEach((_, piece) => {
      content[piece] = 20 + (50 * piece) / (content.length - 1);
    });
    tank.temperature.fill(50);
    circuit.pipe.fill(50);
    const step = loopStep(tank, conditions(0, 50, 50, 600), [3e-7, 1, 0]);
    const before = sum(content.map((here, piece) => here * contentShare[piece]!));
    circulate(circuit, step);
    layContent(circuit.coil, tank.temperature);
    expect(Math.max(...content)).toBeLessThanOrEqual(50);
    const after = sum(content.map((here, piece) => here * contentShare[piece]!));
    // What it gained is what the loop brought and the tank did not get.
    expect(after).toBeGreaterThan(before);
    expect(after).toBeLessThan(50);
  });

  it('goes to the water around the standing coil, heat for heat [two bodies, closed form]', () => {
    const { coil } = compileCircuit(design, fluid, 10, { stepCounts: [6], collectorNodes: 4 });
    const tank = compileTank(design.tank, [6]);
    tank.temperature.fill(30);
    coil.temperature.fill(50);
    let given = 0;
    for (let step = 0; step < 12; step++) {
      given += restCoil(coil, tank, 600);
      mixInversions(tank.temperature);
    }
    const stored = sum(tank.temperature.map((temperature) => temperature - 30)) * tank.nodeCapacity;
    const left = sum(coil.share.map((share, piece) => share * (coil.temperature[piece]! - 30))) * coil.capacity;
    expect(given / stored).toBeCloseTo(1, 9);
    expect((given + left) / (20 * coil.capacity)).toBeCloseTo(1, 9);
    // One node of the tank takes 62 kJ/K, its piece of the coil some 2.4: at rest they are 0.73 K over the start.
    expect(coil.temperature[3]! - tank.temperature[coil.bottom + 3]!).toBeLessThan(0.002);
  });
});
