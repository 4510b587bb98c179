import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileFluid } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { takeContent } from '../../../../packages/sim-core/src/physics/loop/circuit.ts';
import { compileCircuit, pipeHeat } from '../../../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { coilTemperature } from '../../../../packages/sim-core/src/physics/loop/circuit-state.ts';
import { coilShares } from '../../../../packages/sim-core/src/physics/loop/coil-shares.ts';
import { RING } from '../../../../packages/sim-core/src/physics/loop/ring.ts';
import { layContent } from '../../../../packages/sim-core/src/physics/loop/standing.ts';
import { compileTank, tankHeat } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../../property/span.ts';
import { conditions, goRound } from './one-step.ts';

const weather = await inventedValley();
const fluid = compileFluid('propylene-glycol', 0.4);

describe('a coil piece that hardly exchanges', () => {
  it.each([
    ['its end grazes a tank node', 0.25 + 1e-15, 150],
    ['next to nothing flows', 0.4, 1e-4],
  ])('keeps the heat of pipes and tank where %s [what leaves one enters the other]', (_, top, rate) => {
    const design = defineSystem({ ...plainInput, coil: { top } });
    const circuit = compileCircuit(design, fluid, 10, { stepCounts: [12], collectorNodes: 4 });
    const tank = compileTank(design.tank, [12]);
    tank.temperature.fill(35);
    tank.drift.fill(-1e-5); // losses and conduction of the step before, as `restTank` leaves them
    circuit.absorber.fill(15);
    for (let step = 0; step < 12; step++) {
      const pipes = pipeHeat(circuit);
      const stored = tankHeat(tank);
      const { collectorHeat, pipeLoss, coilHeat } = goRound(circuit, tank, [rate, 40], conditions(0, 5, 18, 300));
      const left = collectorHeat - pipeLoss - coilHeat;
      expect(Math.abs(left - (pipeHeat(circuit) - pipes))).toBeLessThan(1e-6); // [J]
      expect(Math.abs(coilHeat - (tankHeat(tank) - stored))).toBeLessThan(1e-6);
    }
  });
});

describe('a trickle through a coil in a large tank', () => {
  it('keeps the heat of the pipes to 1e-11 of what flows [what leaves the ring enters the tank]', () => {
    const design = defineSystem({ ...plainInput, tank: { volume: 1.5, nodes: 5 } });
    const circuit = compileCircuit(design, fluid, 10, { stepCounts: [48], collectorNodes: 4 });
    const tank = compileTank(design.tank, [48]);
    let worst = 0;
    for (const rate of [0.05, 0.4]) {
      tank.temperature.fill(35);
      tank.drift.fill(-1e-3);
      circuit.absorber.fill(15);
      for (let step = 0; step < 40; step++) {
        const pipes = pipeHeat(circuit);
        const { collectorHeat, pipeLoss, coilHeat } = goRound(circuit, tank, [rate, 40], conditions(0, 5, 18, 75));
        const residual = Math.abs(collectorHeat - pipeLoss - coilHeat - (pipeHeat(circuit) - pipes));
        worst = Math.max(worst, residual / (Math.abs(collectorHeat) + Math.abs(pipeLoss) + Math.abs(coilHeat)));
      }
    }
    expect(worst).toBeLessThan(1e-11);
  });
});

describe('share of the coil in each tank node', () => {
  it.each([
    [0.05, 0.28, 25], // 0.28 × 25 is 7.000000000000001
    [0.05, 0.56, 25],
    [0.29, 0.6, 100], // 0.29 × 100 is 28.999999999999996
    [0, 1, 20],
    [0.0701, 0.0702, 10],
  ])('from %d to %d of %d nodes is above 0 in each, and adds up to 1 [conservation]', (bottom, top, nodes) => {
    const { bottom: first, shares } = coilShares(bottom, top, nodes);
    expect(Math.min(...shares)).toBeGreaterThan(1e-7);
    expect(sum(shares)).toBeCloseTo(1, 12);
    expect(first / nodes).toBeLessThanOrEqual(bottom + 1e-6);
    expect((first + shares.length) / nodes).toBeGreaterThanOrEqual(top - 1e-6);
  });

  it('gives weeks of finite numbers where the coil ends at the edge of a node [definition]', () => {
    const design = defineSystem({ ...plainInput, tank: { volume: 0.3, nodes: 25 }, coil: { top: 0.28 } });
    const { balance, columns } = liveSpan(design, weather, ...EARLY_SUMMER);
    expect(columns.tankTopTemperature.every(Number.isFinite)).toBe(true);
    for (const part of Object.values(balance)) expect(part.worstRelative).toBeLessThan(1e-9);
  });
});

describe('the content of a coil that comes to rest [docs/theory/loop.md, by hand]', () => {
  // Water of 20, 30 and 50 °C beside a quarter, half and quarter of the content: 32.5 °C in the mean.
  it.each([
    ['has the slope of the water beside it', 32.5, [20, 30, 50]],
    ['two fifths of it, or its lowest would be colder than all water', 25, [20, 24, 32]],
    ['four sevenths of it, or its highest would be hotter', 40, [230 / 7, 270 / 7, 50]],
    ['none where it is hotter than all water', 51, [51, 51, 51]],
    ['none where it is colder', 19, [19, 19, 19]],
  ])('%s', (_, mean, content) => {
    const circuit = compileCircuit(defineSystem(plainInput), fluid, 10, { stepCounts: [12], collectorNodes: 4 });
    const contentShare = Float64Array.of(0.25, 0.5, 0.25);
    const coil = { ...circuit.coil, bottom: 1, contentShare, temperature: new Float64Array(3) };
    circuit.ring[circuit.contentAt + RING.start] = mean - 3;
    circuit.ring[circuit.contentAt + RING.rise] = 3;
    takeContent({ ...circuit, coil });
    expect(coilTemperature(coil)).toBe(mean);
    layContent(coil, Float64Array.of(10, 20, 30, 50, 60));
    expect(coilTemperature(coil)).toBeCloseTo(mean, 12);
    for (const [piece, value] of content.entries()) expect(coil.temperature[piece]).toBeCloseTo(value, 12);
  });
});
