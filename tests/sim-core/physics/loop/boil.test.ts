import { defineSystem, type SystemInput, simulate } from '@noonloop/sim-core';
import { stagnationTemperature } from '@noonloop/sim-core/formulas';
import { describe, expect, it } from 'vitest';
import { saturationPressure } from '../../../../packages/sim-core/src/physics/fluid/boiling.ts';
import {
  boilingPointOf,
  boilNode,
  nodeHeat,
  settleBoiling,
} from '../../../../packages/sim-core/src/physics/loop/boil.ts';
import { absorberHeat } from '../../../../packages/sim-core/src/physics/loop/circuit-design.ts';
import { type Circuit, emptyExchange } from '../../../../packages/sim-core/src/physics/loop/circuit-state.ts';
import { assemble } from '../../../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../../property/span.ts';
import { conditions, stand } from './one-step.ts';

const weather = await inventedValley();
const collector = { area: 2, eta0: 0.75, a1: 3.8, a2: 0.012, dryCapacityShare: 0.6 };

/** A loop's pressure at which water boils at a temperature [°C]. */
const boilingAt = (temperature: number) => ({ vapourPressure: saturationPressure(temperature) });

/** The default design's circuit, all its absorber at one temperature, boiling at 120 °C. */
function standing(start: number, nodes = 1): Circuit {
  const design = defineSystem({ ...plainInput, array: { ...plainInput.array, collector } });
  const { circuit } = assemble(design, weather, { collectorNodes: nodes, stepsPerHour: 12 }).loop;
  circuit.absorber.fill(start);
  circuit.boilingPoint = 120;
  return circuit;
}

describe('boilNode', () => {
  it.each([
    ['boils on the way up', 115, 180],
    ['cools and fills', 150, 20],
    ['stays steam', 140, 160],
    ['just reaches the boiling point', 110, 120],
  ])('%s: as a fine integration of C(T) dT/dt = s (limit − T) [100,000 explicit steps, 0.01 K]', (_, start, limit) => {
    const circuit = standing(start);
    const slope = 20;
    const duration = 1800;
    let temperature = start;
    for (let step = 0; step < 100_000; step++) {
      const dry = temperature > 120 || (temperature === 120 && limit > 120);
      const capacity = dry ? circuit.dryCapacity : circuit.nodeCapacity;
      temperature += (slope * (limit - temperature) * duration) / 100_000 / capacity;
    }
    const before = nodeHeat(circuit, start, circuit);
    const lost = boilNode(circuit, 0, limit, slope, duration);
    expect(Math.abs(circuit.absorber[0]! - temperature)).toBeLessThan(0.01);
    expect(nodeHeat(circuit, circuit.absorber[0]!, circuit) - before).toBeCloseTo(-lost, 4);
  });

  it('rises from the boiling point with the heat capacity of the empty absorber [share 0.6]', () => {
    const rate = (start: number) => {
      const circuit = standing(start);
      boilNode(circuit, 0, start + 50, 20, 0.001); // the same power for both
      return circuit.absorber[0]! - start;
    };
    expect(rate(110) / rate(130)).toBeCloseTo(0.6, 5);
  });
});

describe('a standing collector', () => {
  it('comes to the same dry stagnation temperature as without boiling [ISO 9806, closed form]', () => {
    const circuit = standing(20, 4);
    for (let step = 0; step < 200; step++) {
      const exchange = stand(circuit, 12, conditions(750, 30, 20, 3600 / 12));
      settleBoiling(circuit, false, boilingAt(120), conditions(750, 30, 20, 300), exchange);
    }
    expect(circuit.boiling).toBe(true);
    expect(circuit.absorber[0]).toBeCloseTo(stagnationTemperature(collector, 1000, 30), 6);
  });

  it('keeps its heat through boiling and filling: what came in less what went out is what it holds [direction that physics demands]', () => {
    const circuit = standing(20, 4);
    let kept = absorberHeat(circuit);
    for (let step = 0; step < 96; step++) {
      const exchange = stand(circuit, 12, conditions(step < 60 ? 750 : 0, 25, 20, 3600 / 12));
      settleBoiling(circuit, false, boilingAt(118), conditions(step < 60 ? 750 : 0, 25, 20, 300), exchange); // the loop's pressure says so, once it is free to
      kept += exchange.absorbed - exchange.collectorLoss;
      expect(Math.abs(absorberHeat(circuit) / kept - 1)).toBeLessThan(1e-12);
    }
    expect(circuit.boiling).toBe(false);
    expect(boilingPointOf(circuit)).toBeCloseTo(118, 9);
  });

  it('turns liquid that a flow has overheated into steam, heat for heat [requirement]', () => {
    const circuit = standing(100, 2);
    circuit.absorber[1] = 126;
    const heat = circuit.nodeCapacity * 226;
    settleBoiling(circuit, true, boilingAt(125), conditions(750, 30, 20, 300), emptyExchange(0));
    expect(circuit.absorber[1]).toBeCloseTo(120 + 6 / 0.6, 12);
    expect(absorberHeat(circuit)).toBeCloseTo(heat, 4);
    expect(circuit.boilingPoint).toBe(120); // held while it boils
  });

  it('leaves it no hotter than it would stand in that light; the rest goes with the steam [by hand]', () => {
    const circuit = standing(100, 2);
    circuit.absorber[1] = 150;
    const before = absorberHeat(circuit) + 0.4 * circuit.nodeCapacity * 30; // liquid at 150 °C
    const stagnation = 20 + (2 * 500) / (3.8 + Math.sqrt(3.8 ** 2 + 4 * 0.012 * 500)); // 120 °C
    expect(stagnation).toBeLessThan(150);
    const exchange = emptyExchange(0);
    settleBoiling(circuit, true, boilingAt(125), conditions(500, 20, 20, 300), exchange);
    expect(circuit.absorber[1]).toBe(150); // flowing liquid had it there already
    expect(before - absorberHeat(circuit)).toBeCloseTo(exchange.collectorLoss, 4);
    const bright = standing(100, 2);
    bright.absorber[1] = 150;
    settleBoiling(bright, true, boilingAt(125), conditions(700, 20, 20, 300), exchange);
    expect(bright.absorber[1]).toBeCloseTo(20 + (2 * 700) / (3.8 + Math.sqrt(3.8 ** 2 + 4 * 0.012 * 700)), 9);
  });

  it('flashes where the pressure falls away: no hotter for it, and the steam carries the heat off [direction that physics demands]', () => {
    const circuit = standing(110, 2);
    const before = absorberHeat(circuit);
    const exchange = emptyExchange(0);
    settleBoiling(circuit, false, boilingAt(90), conditions(750, 30, 20, 300), exchange);
    expect(circuit.boiling).toBe(true);
    expect([...circuit.absorber]).toEqual([110, 110]);
    // By hand: of two nodes the liquid, 0.4 of their heat capacity, gives up 20 K.
    const carriedOff = exchange.collectorLoss;
    expect(carriedOff).toBeCloseTo(2 * 0.4 * circuit.nodeCapacity * 20, 6);
    expect(absorberHeat(circuit)).toBeCloseTo(before - carriedOff, 4);
  });

  it('in a loop under vacuum does not boil at night: the boiling point is held at 80 °C [requirement]', () => {
    const circuit = standing(20, 2);
    settleBoiling(circuit, false, boilingAt(3), conditions(0, 10, 20, 300), emptyExchange(0));
    expect(circuit.boiling).toBe(false);
    expect(boilingPointOf(circuit)).toBe(80);
  });
});

describe('boiling in the run', () => {
  // Water at little pressure, four panels and a low limit: boils on most days of summer.
  const input = {
    ...plainInput,
    array: { ...plainInput.array, panels: 4 },
    loop: { fluid: 'water', pressure: 30_000 },
    control: { highLimit: 75, highLimitHysteresis: 1 },
  } as SystemInput;
  const { balance, columns, design } = liveSpan(defineSystem(input), weather, ...EARLY_SUMMER, 6);

  it('stops the loop until it has cooled, and is said [requirement]', () => {
    expect(sum(columns.boiling)).toBeGreaterThan(20);
    const both = columns.boiling.map((share, hour) => share + columns.pumpRunning[hour]!);
    expect(Math.max(...both)).toBeLessThanOrEqual(1 + 1e-9 + 1 / 6);
    const year = simulate(design, weather, { stepsPerHour: 1 });
    expect(year.notices.find(({ code }) => code === 'boiling')?.hours).toBe(
      year.columns.boiling.filter((share) => share > 0).length,
    );
    for (const { worstRelative } of Object.values(balance)) expect(worstRelative).toBeLessThan(1e-9);
  });

  it('costs heat against a loop under enough pressure [direction that physics demands]', () => {
    const loop = { fluid: 'water', pressure: 8e5, reliefPressure: 1.2e6 } as const;
    const pressed = liveSpan(defineSystem({ ...input, loop }), weather, ...EARLY_SUMMER, 6);
    expect(sum(pressed.columns.boiling)).toBe(0);
    expect(sum(columns.solarHeat)).toBeLessThan(sum(pressed.columns.solarHeat));
  });

  it('half the step moves the heat of ten weeks by less than 0.1 percent and the peak by less than 0.2 K [convergence]', () => {
    const finer = liveSpan(design, weather, ...EARLY_SUMMER, 12).columns;
    expect(Math.abs(sum(finer.solarHeat) / sum(columns.solarHeat) - 1)).toBeLessThan(0.001);
    const peak = (of: typeof finer) => Math.max(...of.tankMaximumTemperature);
    expect(Math.abs(peak(finer) - peak(columns))).toBeLessThan(0.2);
  });
});
