import { describe, expect, it } from 'vitest';
import { compileFluid } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { fountainHeight, mixByJet } from '../../../../packages/sim-core/src/physics/tank/inlet-jet.ts';
import {
  compileTank,
  drawFromTank,
  tankHeat,
  WATER_HEAT_CAPACITY,
} from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { plainTank } from './parts.ts';

const bore = (diameter: number) => (Math.PI / 4) * diameter ** 2;

describe('fountainHeight, Turner 1966', () => {
  it('6 L/min by 20 mm, 10 °C into 60 °C: 0.194 m [by hand: V 0.3183 m/s, g′ 0.1631 m/s²]', () => {
    expect(fountainHeight(1e-4, bore(0.02), 0.1631)).toBeCloseTo(0.194, 3);
  });

  it('is 1.74 diameters times the Froude number [the same law by U/√(g′ d)]', () => {
    const diameter = 0.025;
    const speed = 2e-4 / bore(diameter);
    const froude = speed / Math.sqrt(0.1 * diameter);
    expect(fountainHeight(2e-4, bore(diameter), 0.1) / (diameter * froude)).toBeCloseTo(
      1.85 * (Math.PI / 4) ** 0.25,
      9,
    );
  });
});

describe('mixByJet', () => {
  const water = compileFluid('water', 0);
  const jet = { area: bore(0.02), water, nodeHeight: 0.05 };

  it('makes one of the layers that the jet reaches and leaves those above [requirement]', () => {
    const tank = new Float64Array(20).fill(60);
    tank[0] = 10;
    mixByJet(tank, jet, 1e-4, 10);
    const mixed = tank.filter((temperature) => temperature < 60).length;
    expect(mixed).toBeGreaterThanOrEqual(3);
    expect(mixed).toBeLessThanOrEqual(5);
    expect(new Set(tank.slice(0, mixed)).size).toBe(1);
    expect(tank.reduce((sum, temperature) => sum + temperature, 0)).toBeCloseTo(19 * 60 + 10, 9);
  });

  it('passes through cold water as through nothing, up to the warm [definition]', () => {
    const tank = Float64Array.from({ length: 20 }, (_, node) => (node < 12 ? 10 : 60));
    mixByJet(tank, jet, 1e-4, 10);
    expect(tank[0]).toBeGreaterThan(10);
    expect(tank[19]).toBe(60);
  });

  it('reaches higher through a narrower mouth and by a faster draw [direction that physics demands]', () => {
    const reach = (diameter: number, flow: number) => {
      const tank = new Float64Array(40).fill(50);
      tank[0] = 10;
      mixByJet(tank, { ...jet, area: bore(diameter) }, flow, 10);
      return tank.filter((temperature) => temperature < 50).length;
    };
    expect(reach(0.012, 1e-4)).toBeGreaterThan(reach(0.02, 1e-4));
    expect(reach(0.02, 2e-4)).toBeGreaterThan(reach(0.02, 1e-4));
    expect(reach(0.1, 1e-4)).toBe(1);
  });

  it('keeps the energy of a draw [conservation]', () => {
    const tank = compileTank({ ...plainTank, inletDiameter: 0.015 }, [1]);
    const before = tankHeat(tank);
    let out = 0;
    for (let draw = 0; draw < 7; draw++) out += 0.02 * WATER_HEAT_CAPACITY * (drawFromTank(tank, 0.02, 10, 1e-4) - 10);
    expect((before - tankHeat(tank)) / out).toBeCloseTo(1, 12);
  });

  it('rounds nothing into a tank of one temperature, however many trickles an hour stir it [requirement: balance]', () => {
    const tank = compileTank({ ...plainTank, inletDiameter: 0.01 }, [1]);
    tank.temperature.fill(22.968434496225786);
    const before = tankHeat(tank);
    for (let draw = 0; draw < 10_000; draw++) drawFromTank(tank, 1e-20, 16.34, 1e-4);
    expect(tankHeat(tank)).toBe(before);
  });
});
