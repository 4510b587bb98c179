import { describe, expect, it } from 'vitest';
import { compileFluid, fluidDensity, fluidViscosity } from '../../packages/sim-core/src/fluid/compile.ts';
import { compileHydraulics, loopHead, pumpOperatingPoint } from '../../packages/sim-core/src/loop/hydraulics.ts';
import { GRAVITY, pumpHead, pumpPower, pumpState } from '../../packages/sim-core/src/loop/pump.ts';
import { parts } from '../sim-core/loop/parts.ts';

// H0 4 m and a = 0.02 m/(L/min)²: open flow √(H0/a) = 14.142 L/min.
const pump = { ...parts.pump, shutOffHead: 4, openFlow: Math.sqrt(4 / 0.02) / 6e4 };

describe('pump against a loop of k = 0.05 m/(L/min)²', () => {
  it.each([
    [1, 7.55928946, 2.857142857, 3.600663434],
    [0.8, 6.047431568, 1.828571429, 1.843539678],
    [0.5, 3.77964473, 0.7142857143, 0.4500829292],
  ])(
    'speed %f: %f L/min, %f m, hydraulic %f W [affinity laws, closed form]',
    (speed, flow_L_per_min, head, hydraulic) => {
      const state = pumpState(pump, { speed, flow: flow_L_per_min / 6e4, density: 1020 });
      expect(state.head).toBeCloseTo(head, 8);
      expect(state.hydraulicPower).toBeCloseTo(hydraulic, 7);
    },
  );

  // A loop of fittings alone is a pure k Q²: K from k through 8 K/(π² g D⁴).
  const bore = parts.loop.pipeInnerDiameter;
  const fittingLoss = ((0.05 * 6e4 ** 2) / 8) * Math.PI ** 2 * GRAVITY * bore ** 4;
  const fluid = compileFluid('water', 0);
  const h = compileHydraulics(
    {
      pump,
      loop: { ...parts.loop, pipeLength: 0, fittingLoss },
      coil: { ...parts.coil, length: 0 },
      array: { ...parts.array, collector: { ...parts.array.collector, ratedPressureDrop: 0 } },
    },
    fluid,
  );

  it('with power to spare: 7.55929 L/min at rated speed, and no more power than that [closed form]', () => {
    const point = pumpOperatingPoint(h, 1000, 40);
    expect(point.flow * 6e4).toBeCloseTo(7.55928946, 6);
    expect(point.head).toBeCloseTo(2.857142857, 6);
    expect(point.speed).toBeCloseTo(1, 9);
    expect(point.electricalPower).toBeCloseTo(pumpPower(pump, 1, point.flow), 9);
  });

  it.each([0.8, 0.5])('with the power of speed %f: that speed and its flow [closed form]', (speed) => {
    const flow = (speed * 7.55928946) / 6e4;
    const point = pumpOperatingPoint(h, pumpPower(pump, speed, flow), 40);
    expect(point.speed).toBeCloseTo(speed, 7);
    expect(point.flow).toBeCloseTo(flow, 11);
  });
});

describe('pumpOperatingPoint', () => {
  it('meets pump and loop, takes the power offered, and gives less than it takes [energy]', () => {
    const fluid = compileFluid('propylene-glycol', 0.4);
    const h = compileHydraulics(parts, fluid);
    for (const temperature of [-15, 0, 20, 60, 100]) {
      for (const power of [0.5, 2, 5, 10, 15]) {
        const { speed, flow, head, electricalPower } = pumpOperatingPoint(h, power, temperature);
        const density = fluidDensity(fluid, temperature);
        expect(head).toBeCloseTo(pumpHead(parts.pump, speed, flow), 9);
        expect(head).toBeCloseTo(loopHead(h, flow, density, fluidViscosity(fluid, temperature)), 9);
        if (speed < 1 - 1e-9) expect(electricalPower).toBeCloseTo(power, 6);
        else expect(electricalPower).toBeLessThanOrEqual(power);
        expect(density * GRAVITY * flow * head).toBeLessThan(electricalPower);
      }
    }
  });
});
