import { isDeepStrictEqual } from 'node:util';
import { type BalancePart, DesignError, defineSystem, simulate, steps } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { assemble } from '../../../packages/sim-core/src/year/machine.ts';
import { inventedValley, plainInput, sum, withPanels } from '../../examples.ts';
import { liveSpan } from '../../property/span.ts';

const weather = await inventedValley();
const result = simulate(withPanels(3), weather, { keepTankNodes: true });
const { columns } = result;

describe('simulate', () => {
  it.each(['collector', 'pipes', 'tank', 'heater', 'baseline', 'whole'] as const)(
    'closes the balance of %s in every hour to 1e-9 of what flowed [conservation]',
    (part: BalancePart) => {
      const { worstRelative, in: income, out, stored, residual } = result.balance[part];
      expect(worstRelative).toBeLessThan(1e-9);
      expect(worstRelative).toBeGreaterThan(0); // computed, not set
      expect(Math.abs(income - out - stored - residual)).toBeLessThan(1e-6 * income);
    },
  );

  it('measures a part’s residual against no less than what warms it by 1 mK, from one temperature throughout [definition]', () => {
    const { books, loop, tank } = assemble(result.design, weather);
    const starts = { collector: loop.circuit.absorber[0]!, tank: tank.temperature[0]! };
    for (const part of ['collector', 'tank'] as const) {
      const { floor, initial } = books.balance[part];
      expect(initial / (1000 * floor)).toBeCloseTo(starts[part], 9);
    }
  });

  it('closes the year of the tank by its own columns [conservation]', () => {
    const nodes = result.design.tank.nodes;
    const last = result.tankNodes.slice(-nodes);
    const capacity = (result.design.tank.volume / nodes) * 4.1468e6;
    const stored = sum(last.map((t) => (t - result.design.tank.initialTemperature) * capacity));
    const rest =
      sum(columns.coilHeat) - sum(columns.tankLoss) - sum(columns.solarHeat) - sum(columns.reliefHeat) - stored;
    expect(Math.abs(rest)).toBeLessThan(1e-9 * sum(columns.coilHeat));
  });

  it('moves no fluid without the pump, and heats the standing absorber above what flow allows [requirement]', () => {
    // By hand, 12 m of coil: 3.8 L of glycol with 3.8 MJ/(m³·K) and 0.8 L of metal with 3.4; no more of it can pass at standstill.
    const content = 3.8e-3 * 3.8e6 + 0.8e-3 * 3.5e6;
    const standing = Array.from(columns.pumpRunning.keys()).filter((hour) => !(columns.pumpRunning[hour]! > 0));
    expect(standing.filter((hour) => columns.loopFlow[hour] !== 0)).toEqual([]);
    const passes = standing.filter((hour) => {
      const span = columns.tankMaximumTemperature[hour]! - columns.mainsTemperature[hour]!;
      return !(Math.abs(columns.coilHeat[hour]!) < content * Math.max(span, 10));
    });
    expect(passes).toEqual([]);
    const hottest = Math.max(...columns.absorberTemperature);
    expect(sum(columns.stagnation)).toBeGreaterThan(1);
    expect(hottest).toBeGreaterThan(result.stagnationLimit);
    // Nothing is hotter than the closed form allows for the strongest sun of the year (ISO 9806, η = 0), at normal incidence.
    const strongest = Math.max(...columns.irradiance) * 1.1;
    const { eta0, a1, a2 } = result.design.array.collector;
    const bound =
      Math.max(...columns.ambientTemperature) + (-a1 + Math.sqrt(a1 ** 2 + 4 * a2 * eta0 * strongest)) / (2 * a2);
    expect(hottest).toBeLessThan(bound);
  });

  it('cools the absorber below the air on clear nights, by a few kelvin [requirement]', () => {
    const below = columns.ambientTemperature.map((air, hour) => air - columns.absorberMinimumTemperature[hour]!);
    const nights = below.filter((_, hour) => columns.irradiance[hour] === 0 && hour % 24 < 4);
    expect(Math.max(...nights)).toBeGreaterThan(1);
    expect(sum(nights) / nights.length).toBeLessThan(6);
  });

  it('counts stagnation only within standstill in sun [requirement]', () => {
    const { noFlowInSun, pumpRunning, stagnation } = columns;
    expect([...stagnation.filter((share, hour) => !(share <= noFlowInSun[hour]!))]).toEqual([]);
    expect([...noFlowInSun.filter((share, hour) => !(share + pumpRunning[hour]! <= 1 + 1e-12))]).toEqual([]);
  });

  it('takes the boiling point at loop pressure, at most 120 °C, as the limit of stagnation [definition]', () => {
    // 40 % propylene glycol at 2.3 bar absolute boils above 120 °C; at 1.01 bar near 104 °C (ideal-solution estimate).
    expect(result.stagnationLimit).toBe(120);
    const columns = { ...weather.columns, pressure: null };
    const atSea = { ...weather, columns, site: { ...weather.site, elevation: 0 } };
    const design = defineSystem({ ...plainInput, loop: { pressure: 0 } });
    expect(assemble(design, atSea).loop.stagnationLimit).toBeCloseTo(104.1, 1);
    // The valley lies at 300 m: its column has 977.7 hPa in the mean, as ISO 2533 there, and 1 K less.
    expect(assemble(design, weather).loop.stagnationLimit).toBeCloseTo(103.1, 1);
  });

  it('gives the same bits again [requirement]', () => {
    const again = liveSpan(withPanels(3), weather, 0, 1500).columns;
    const differing = Object.entries(columns).filter(
      ([key, column]) => !isDeepStrictEqual(again[key as keyof typeof columns], column.slice(0, 1500)),
    );
    expect(differing.map(([key]) => key)).toEqual([]);
  });

  it('holds the draw to what was asked, and the baseline to its own burner [requirement]', () => {
    // The valve sets itself by the heater's temperature at the start of a step: a few parts in a thousand.
    expect(Math.abs(sum(columns.tapHeat) / sum(columns.tapHeatAsked) - 1)).toBeLessThan(0.005);
    const { burnerEfficiency } = result.design.heater;
    expect(sum(columns.baselineFuel)).toBeCloseTo(sum(columns.baselineHeat) / burnerEfficiency, -3);
    expect(sum(columns.baselineFuel)).toBeGreaterThan(sum(columns.heaterFuel));
  });

  it('lets the relief valve open, counted in litres and heat, only where nothing else limits the tank [definition]', () => {
    const design = defineSystem({
      ...plainInput,
      array: { ...plainInput.array, panels: 5 },
      draw: { dailyVolume: 0.05 },
      control: { highLimit: null },
    });
    const hot = simulate(design, weather, { stepsPerHour: 2 });
    expect(sum(hot.columns.reliefVolume)).toBeGreaterThan(0.01);
    expect(sum(hot.columns.reliefHeat)).toBeGreaterThan(sum(hot.columns.reliefVolume) * 4.1468e6 * 60);
    expect(hot.balance.tank.worstRelative).toBeLessThan(1e-9);
    expect(hot.notices.map((notice) => notice.code)).toContain('relief-valve');
    expect(sum(columns.reliefVolume)).toBe(0);
  });

  it('yields the same hours by steps() [requirement]', () => {
    let hour = 0;
    for (const state of steps(withPanels(3), weather)) {
      expect(state.tank[state.tank.length - 1]).toBe(columns.tankTopTemperature[hour]);
      expect(state.coilHeat).toBe(columns.coilHeat[hour]);
      if (++hour === 500) break;
    }
    expect(hour).toBe(500);
  });

  it.each([
    ['stepsPerHour', { stepsPerHour: 0 }],
    ['stepsPerHour', { stepsPerHour: 2.5 }],
    ['collectorNodes', { collectorNodes: 0 }],
  ])('refuses a bad %s by name [requirement]', (path, options) => {
    expect(() => simulate(withPanels(2), weather, options)).toThrow(DesignError);
    expect(() => simulate(withPanels(2), weather, options)).toThrow(path);
  });
});
