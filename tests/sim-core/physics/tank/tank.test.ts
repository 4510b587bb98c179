import { DesignError, defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { relieveTank } from '../../../../packages/sim-core/src/physics/tank/relief.ts';
import { buriedShare, coilInWater } from '../../../../packages/sim-core/src/physics/tank/sediment.ts';
import {
  compileTank,
  outletOf,
  restTank,
  tankHeat,
  WATER_HEAT_CAPACITY,
} from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { inventedValley, plainInput, sum } from '../../../examples.ts';
import { EARLY_SUMMER, liveSpan } from '../../../property/span.ts';
import { plainTank } from './parts.ts';

const weather = await inventedValley();
/** Five weeks of early summer. */
const WEEKS = [2900, 2900 + 35 * 24] as const;

describe('what losses and conduction do to each node', () => {
  it.each([
    [1, 6, 20, 20],
    // Its thin top layer cools below the next one and turns over: the lower half does not.
    [4, 1, 200, 100],
  ])(
    'is told as a drift, in %d passes of a step of 1/%d h and %d nodes [definition: K/s]',
    (passes, perHour, nodes, calm) => {
      const tank = compileTank({ ...plainTank, nodes }, [perHour]);
      for (let node = 0; node < nodes; node++) tank.temperature[node] = 20 + (40 * node) / nodes;
      const before = tank.temperature.slice();
      expect(tank.steps.get(perHour)!.passes > 1).toBe(passes > 1);
      restTank(tank, perHour, new Float64Array(nodes));
      const change = tank.temperature
        .subarray(0, calm)
        .map((after, node) => (after - before[node]!) / (3600 / perHour));
      const worst = change.map((value, node) => Math.abs(tank.drift[node]! - value));
      expect(Math.max(...worst)).toBeLessThan(1e-12);
      expect(Math.min(...change)).toBeLessThan(0);
    },
  );
});

describe('relief valve', () => {
  it('lets water out until the top is 5 K down, and counts litres and heat [by hand: 16 of 20 nodes of 15 L hold 101 °C]', () => {
    const tank = compileTank(plainTank, [1]);
    tank.temperature.fill(60, 0, 4);
    tank.temperature.fill(101, 4);
    const before = tankHeat(tank);
    const relieved = { reliefVolume: 0, reliefHeat: 0, followingHeat: 0 };
    expect(relieveTank(tank, 12, relieved)).toBe(true);
    // Down to the water at 60 °C; what they held above the valve's 99 °C has left as water of that temperature before.
    expect(relieved.reliefVolume).toBeCloseTo(16 * 0.015 * (1 + 2 / (99 - 12)), 12);
    expect(relieved.reliefHeat / 3.6e6).toBeCloseTo((16 * 0.015 * WATER_HEAT_CAPACITY * (101 - 12)) / 3.6e6, 9);
    expect(relieved.reliefHeat / (before - tankHeat(tank))).toBeCloseTo(1, 12);
    expect(tank.temperature[19]).toBe(60);
  });

  it('opens at its temperature, not below [requirement]', () => {
    const tank = compileTank(plainTank, [1]);
    tank.temperature.fill(98.9);
    expect(relieveTank(tank, 12, { reliefVolume: 0, reliefHeat: 0, followingHeat: 0 })).toBe(false);
  });

  it('balances five weeks of large panels: what it lets out is in the tank’s books [conservation]', () => {
    const design = defineSystem({
      ...plainInput,
      array: { ...plainInput.array, panels: 6 },
      tank: { volume: 0.2 },
      draw: { dailyVolume: 0.05 },
      control: { highLimit: null },
    });
    const { balance, columns } = liveSpan(design, weather, ...WEEKS);
    expect(sum(columns.reliefVolume)).toBeGreaterThan(0.1);
    expect(sum(columns.reliefHeat) / (sum(columns.reliefVolume) * WATER_HEAT_CAPACITY)).toBeGreaterThan(60);
    expect(balance.tank.worstRelative).toBeLessThan(1e-9);
  });
});

describe('a standing tank destratifies by water and wall', () => {
  // Upper half 60, lower half 20 °C, no losses, height 1.5 m; node means of the cosine series.
  const HEIGHT = 1.5;
  const series = (z: number, time: number, diffusivity: number) => {
    let share = 0.5;
    for (let n = 1; n < 200; n++) {
      const k = (n * Math.PI) / HEIGHT;
      share -=
        (2 / (n * Math.PI)) * Math.sin((n * Math.PI) / 2) * Math.cos(k * z) * Math.exp(-(k ** 2) * diffusivity * time);
    }
    return 20 + 40 * share;
  };
  it.each([
    ['water alone', 0.64, 0.4],
    ['water and a steel wall', 1.55, 0.2],
  ])(
    '%s: 20 nodes in hourly steps, after 1, 3 and 7 days [Carslaw & Jaeger, cosine series]',
    (_, conductivity, worst) => {
      const tank = compileTank(
        { ...plainTank, height: HEIGHT, lossCoefficient: 0, verticalConductivity: conductivity },
        [1],
      );
      tank.temperature.fill(20, 0, 10);
      tank.temperature.fill(60, 10);
      for (let hour = 1; hour <= 168; hour++) {
        restTank(tank, 1);
        if (![24, 72, 168].includes(hour)) continue;
        tank.temperature.forEach((temperature, node) => {
          let mean = 0;
          for (let part = 0; part < 20; part++) {
            mean +=
              series(((node + (part + 0.5) / 20) * HEIGHT) / 20, hour * 3600, conductivity / WATER_HEAT_CAPACITY) / 20;
          }
          // The step in the middle is the worst that 20 nodes can be asked for; it is worst on the first day.
          expect(Math.abs(temperature - mean)).toBeLessThan(worst);
        });
      }
    },
  );
});

describe('outletOf', () => {
  it('is the mean of the uppermost water [by hand]', () => {
    const tank = compileTank({ ...plainTank, nodes: 4, volume: 0.04 }, [1]);
    tank.temperature.set([10, 20, 40, 60]);
    expect(outletOf(tank, 0.005)).toBe(60);
    expect(outletOf(tank, 0.02)).toBeCloseTo(50, 12);
    expect(outletOf(tank, 0.025)).toBeCloseTo((60 + 40 + 0.5 * 20) / 2.5, 12);
    expect(outletOf(tank, 1)).toBeCloseTo(32.5, 12);
  });
});

describe('sediment', () => {
  const withSediment = (sedimentDepth: number) =>
    defineSystem({ ...plainInput, tank: { volume: 0.3, height: 1.5, sedimentDepth } });

  it('leaves less water [by hand: 0.15 of 1.5 m]', () => {
    const tank = compileTank(withSediment(0.15).tank, [1]);
    expect(tank.nodeVolume * 20).toBeCloseTo(0.27, 12);
  });

  it('cuts what a buried tube passes [shape factor: arcosh(5)/(2π) at z = 2.5 d; U 400 W/(m²·K), k 1 W/(m·K), d 22 mm]', () => {
    expect(buriedShare(0.022, 0.055)).toBeCloseTo(
      1 / (1 + (400 * Math.PI * 0.022 * Math.acosh(5)) / (2 * Math.PI)),
      12,
    );
    expect(buriedShare(0.022, 0)).toBe(1);
  });

  it('buries the coil’s part below its surface and moves the rest down in the water column [requirement]', () => {
    const clean = coilInWater(withSediment(0));
    expect(clean.shares.reduce((total, share) => total + share, 0)).toBeCloseTo(1, 12);
    // Coil from 0.05 to 0.4 of 1.5 m, sediment to 0.1: a seventh is buried.
    const { bottom, shares } = coilInWater(withSediment(0.15));
    const through = buriedShare(0.022, 0.05 * 1.5 * 0.5) / 7;
    expect(bottom).toBe(0);
    expect(shares.reduce((total, share) => total + share, 0)).toBeCloseTo(6 / 7 + through, 12);
    const all = coilInWater(withSediment(0.7));
    expect(all.shares).toHaveLength(1);
    expect(all.shares[0]).toBeLessThan(0.1);
  });

  it('costs heat, and the books close [conservation]', () => {
    const clean = liveSpan(withSediment(0), weather, ...WEEKS);
    const silted = liveSpan(withSediment(0.3), weather, ...WEEKS);
    expect(sum(silted.columns.solarHeat)).toBeLessThan(sum(clean.columns.solarHeat));
    for (const { worstRelative } of Object.values(silted.balance)) expect(worstRelative).toBeLessThan(1e-9);
  });

  it('is refused where it fills more than half of the tank [requirement]', () => {
    expect(() => withSediment(0.8)).toThrow(DesignError);
    expect(() => withSediment(0.8)).toThrow(/tank\.sedimentDepth/);
  });
});

describe('half the step with jet and sediment on', () => {
  it('moves the delivered energy by less than 0.1 % and the peak by less than 0.2 K [convergence]', () => {
    const design = defineSystem({ ...plainInput, tank: { volume: 0.3, inletDiameter: 0.012, sedimentDepth: 0.1 } });
    const [here, finer] = [12, 24].map((steps) => liveSpan(design, weather, ...EARLY_SUMMER, steps).columns);
    expect(Math.abs(sum(finer!.solarHeat) / sum(here!.solarHeat) - 1)).toBeLessThan(0.001);
    expect(
      Math.abs(Math.max(...finer!.tankMaximumTemperature) - Math.max(...here!.tankMaximumTemperature)),
    ).toBeLessThan(0.2);
  });
});
