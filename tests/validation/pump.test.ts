import { describe, expect, it } from 'vitest';
import { compileFluid, fluidDensity, fluidViscosity } from '../../packages/sim-core/src/physics/fluid/compile.ts';
import { fluidProperties } from '../../packages/sim-core/src/physics/fluid/properties.ts';
import {
  compileHydraulics,
  type HydraulicParts,
  loopHead,
  pumpOperatingPoint,
} from '../../packages/sim-core/src/physics/loop/hydraulics.ts';
import { GRAVITY, pumpHead, pumpPower, pumpState } from '../../packages/sim-core/src/physics/loop/pump.ts';
import { parts } from '../sim-core/physics/loop/parts.ts';

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

  it.each([
    [0.8, 3.891382421],
    [0.5, 0],
  ])('speed %f against 1.5 m of standing head: %f L/min [closed form, ten digits]', (speed, flow_L_per_min) => {
    // Our loops are closed and have none: only the pump's side of the row can be checked.
    const { head } = pumpState(pump, { speed, flow: flow_L_per_min / 6e4, density: 1020 });
    if (flow_L_per_min > 0) expect(head).toBeCloseTo(1.5 + 0.05 * flow_L_per_min ** 2, 8);
    else expect(head).toBeLessThan(1.5);
  });

  // A loop of fittings alone is a pure k Q²: K from k through 8 K/(π² g D⁴).
  const bore = parts.loop.pipeInnerDiameter;
  const fittingLoss = ((0.05 * 6e4 ** 2) / 8) * Math.PI ** 2 * GRAVITY * bore ** 4;
  const fittingsOnly: HydraulicParts = {
    pump,
    loop: { ...parts.loop, fluid: 'water', glycolMassFraction: 0, pipeLength: 0, fittingLoss },
    coil: { ...parts.coil, length: 0 },
    array: { ...parts.array, collector: { ...parts.array.collector, ratedPressureDrop: 0 } },
  };

  it('with power to spare: 7.55929 L/min at rated speed, and no more power than that [closed form]', () => {
    const point = pumpOperatingPoint(fittingsOnly, { electricalPower: 1000, fluidTemperature: 40 });
    expect(point.flow * 6e4).toBeCloseTo(7.55928946, 6);
    expect(point.head).toBeCloseTo(2.857142857, 6);
    expect(point.speed).toBeCloseTo(1, 9);
    expect(point.electricalPower).toBeCloseTo(pumpPower(pump, 1, point.flow), 9);
  });

  it.each([0.8, 0.5])('with the power of speed %f: that speed and its flow [closed form]', (speed) => {
    const flow = (speed * 7.55928946) / 6e4;
    const electricalPower = pumpPower(pump, speed, flow);
    const point = pumpOperatingPoint(fittingsOnly, { electricalPower, fluidTemperature: 40 });
    expect(point.speed).toBeCloseTo(speed, 7);
    expect(point.flow).toBeCloseTo(flow, 11);
  });
});

describe('cold half glycol in a plain pipe', () => {
  const pipeOnly: HydraulicParts = {
    pump: parts.pump,
    loop: { ...parts.loop, glycolMassFraction: 0.5, pipeLength: 60, fittingLoss: 0 },
    coil: { ...parts.coil, length: 0 },
    array: { ...parts.array, collector: { ...parts.array.collector, ratedPressureDrop: 0 } },
  };
  const { shutOffHead, openFlow, shutOffPower, openFlowPower } = pipeOnly.pump;

  /** Flow at a power where the head is 128 μ L Q/(π ρ g D⁴), by bisection: no code of the loop. */
  function laminarFlow(power: number, temperature: number): number {
    const properties = fluidProperties({ fluid: 'propylene-glycol', glycolMassFraction: 0.5, temperature });
    const { density, dynamicViscosity } = properties;
    const perFlow =
      (128 * dynamicViscosity * pipeOnly.loop.pipeLength) /
      (Math.PI * density * GRAVITY * pipeOnly.loop.pipeInnerDiameter ** 4);
    let low = 0;
    let high = openFlow;
    for (let halving = 0; halving < 60; halving++) {
      const flow = (low + high) / 2;
      const speed = Math.sqrt((perFlow * flow) / shutOffHead + (flow / openFlow) ** 2);
      const taken = speed ** 3 * (shutOffPower + ((openFlowPower - shutOffPower) * flow) / (speed * openFlow));
      if (taken < power) low = flow;
      else high = flow;
    }
    expect((4 * density * low) / (Math.PI * pipeOnly.loop.pipeInnerDiameter * dynamicViscosity)).toBeLessThan(2300);
    return low;
  }

  it.each([2, 4, 6])(
    '%d W: less flow at −15 than at 20 °C, by what the viscosity demands [Hagen–Poiseuille]',
    (power) => {
      const at = (fluidTemperature: number) =>
        pumpOperatingPoint(pipeOnly, { electricalPower: power, fluidTemperature }).flow;
      for (const temperature of [-15, 0, 20])
        expect(at(temperature) / laminarFlow(power, temperature)).toBeCloseTo(1, 4);
      expect(at(-15) / at(20)).toBeLessThan(0.6);
    },
  );
});

describe('pumpOperatingPoint', () => {
  it('meets pump and loop, takes the power offered, and gives less than it takes [energy]', () => {
    const fluid = compileFluid(parts.loop.fluid, parts.loop.glycolMassFraction);
    const h = compileHydraulics(parts, fluid);
    for (const fluidTemperature of [-15, 0, 20, 60, 100]) {
      for (const offered of [0.5, 2, 5, 10, 15]) {
        const conditions = { electricalPower: offered, fluidTemperature };
        const { speed, flow, head, electricalPower } = pumpOperatingPoint(parts, conditions);
        const density = fluidDensity(fluid, fluidTemperature);
        expect(head).toBeCloseTo(pumpHead(parts.pump, speed, flow), 9);
        expect(head).toBeCloseTo(loopHead(h, flow, density, fluidViscosity(fluid, fluidTemperature)), 9);
        if (speed < 1 - 1e-9) expect(electricalPower).toBeCloseTo(offered, 6);
        else expect(electricalPower).toBeLessThanOrEqual(offered);
        expect(density * GRAVITY * flow * head).toBeLessThan(electricalPower);
      }
    }
  });
});
