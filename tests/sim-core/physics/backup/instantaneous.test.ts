import { instantaneousOutlet } from '@noonloop/sim-core/formulas';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { compileHeater } from '../../../../packages/sim-core/src/physics/backup/heater.ts';
import { heatWater, hotShare, settleMixing } from '../../../../packages/sim-core/src/physics/backup/supply.ts';
import { WATER_HEAT_CAPACITY } from '../../../../packages/sim-core/src/physics/tank/tank.ts';
import { heaterDesign } from './parts.ts';

const limits = { setTemperature: 50, burnerPower: 20_000, minimumPower: 4000, minimumRise: 0, minimumFlow: 0 };
const FLOW = 6 / 60_000;
const RATE = WATER_HEAT_CAPACITY * FLOW;

describe('instantaneousOutlet', () => {
  it('holds its set temperature within its range [by hand: 35/40 of 6 L/min from 30 to 50 °C, 7.3 kW]', () => {
    expect((RATE * 35 * 20) / 40).toBeCloseTo(7257, 0);
    expect(instantaneousOutlet(limits, 30, 10, 45, FLOW)).toBe(50);
  });

  it('does not fire below its least power: warm water passes unheated [by hand: 35/40 of 6 L/min from 42 °C, 2.9 kW]', () => {
    expect(instantaneousOutlet(limits, 42, 10, 45, FLOW)).toBe(42);
  });

  it('does not fire below its least rise [requirement]', () => {
    expect(instantaneousOutlet({ ...limits, minimumPower: 0, minimumRise: 8 }, 42.5, 10, 45, FLOW)).toBe(42.5);
    expect(instantaneousOutlet({ ...limits, minimumPower: 0, minimumRise: 8 }, 41.5, 10, 45, FLOW)).toBe(50);
  });

  // Set to 50 °C with mains of 10 °C, 35/40 of the taps' 45 °C come hot: 1.93 of 2.2 L/min, 2.1 of 2.4 L/min.
  it('does not fire below its least flow, which is that through it and not that of the taps [by hand]', () => {
    const least = { ...limits, minimumPower: 0, minimumFlow: 2 / 60_000 };
    expect(instantaneousOutlet(least, 20, 10, 45, 2.2 / 60_000)).toBe(20);
    expect(instantaneousOutlet(least, 20, 10, 45, 2.4 / 60_000)).toBe(50);
    expect(instantaneousOutlet(least, 20, 10, 45, 1.9 / 60_000)).toBe(20);
    expect(instantaneousOutlet({ ...limits, minimumPower: 0 }, 20, 10, 45, 1e-6)).toBe(50);
  });

  it('at full power is judged by the flow that its outlet brings: colder, more of it [by hand: 35/36.1 of 6 L/min]', () => {
    const weak = { ...limits, burnerPower: 10_600 };
    const outlet = instantaneousOutlet(weak, 20, 10, 45, FLOW);
    const through = (FLOW * 35) / (outlet - 10);
    expect(instantaneousOutlet({ ...weak, minimumFlow: 0.999 * through }, 20, 10, 45, FLOW)).toBe(outlet);
    expect(instantaneousOutlet({ ...weak, minimumFlow: 1.001 * through }, 20, 10, 45, FLOW)).toBe(20);
  });

  it('set colder than the taps want, is passed by all that they take, no more [by hand: 6 L/min from 30 to 40 °C, 4.15 kW]', () => {
    const cool = { ...limits, setTemperature: 40 };
    expect(RATE * 10).toBeCloseTo(4147, 0);
    expect(instantaneousOutlet({ ...cool, minimumPower: 4100 }, 30, 10, 45, FLOW)).toBe(40);
    expect(instantaneousOutlet({ ...cool, minimumPower: 4200 }, 30, 10, 45, FLOW)).toBe(30);
  });

  it('passes hotter water on as it comes [requirement]', () => {
    expect(instantaneousOutlet(limits, 71, 10, 45, FLOW)).toBe(71);
  });

  it('falls short of its setting, not of the taps, where full power still carries the mixed flow [direction that physics demands]', () => {
    const outlet = instantaneousOutlet({ ...limits, burnerPower: 10_600 }, 20, 10, 45, FLOW);
    expect(outlet).toBeLessThan(50);
    expect(outlet).toBeGreaterThan(45);
    // The taps' heat is met by the power and what the sun brought: both sides of the mixing agree.
    const share = (45 - 10) / (outlet - 10);
    expect(RATE * share * (outlet - 20)).toBeCloseTo(10_600, 6);
  });

  it('falls short of the taps where it cannot carry the flow [closed form: T_in + P/(ρc V̇)]', () => {
    const outlet = instantaneousOutlet({ ...limits, burnerPower: 9000 }, 10, 10, 45, FLOW);
    expect(outlet).toBeCloseTo(10 + 9000 / RATE, 9);
    expect(outlet).toBeLessThan(45);
  });

  it('fires within its range or not at all, and never above its setting [direction that physics demands]', () => {
    const cases = fc.record({
      inlet: fc.double({ min: 5, max: 90, noNaN: true }),
      mains: fc.double({ min: 1, max: 40, noNaN: true }),
      target: fc.double({ min: 25, max: 60, noNaN: true }),
      flow: fc.double({ min: 1e-6, max: 1e-3, noNaN: true }),
    });
    fc.assert(
      fc.property(cases, ({ inlet, mains, target, flow }) => {
        const outlet = instantaneousOutlet(limits, inlet, mains, target, flow);
        const power = WATER_HEAT_CAPACITY * flow * hotShare(target, mains, outlet) * (outlet - inlet);
        if (outlet === inlet) return;
        expect(outlet).toBeLessThanOrEqual(50);
        if (inlet < mains) return; // colder than the mains: the taps' mixing is no longer ours to check
        expect(power).toBeLessThanOrEqual(20_000 * (1 + 1e-9));
      }),
    );
  });
});

describe('a step of an instantaneous heater', () => {
  const design = heaterDesign({
    ...limits,
    kind: 'instantaneous-gas',
    volume: 0,
    burnerEfficiency: 0.82,
    standbyPower: 3,
    lossCoefficient: 0,
    roomTemperature: 18,
  });

  it('fires by the flow while the tap runs, not by the mean of the step [10 L at 6 L/min in an hour: 1 min 40 s at 7.3 kW]', () => {
    const heater = compileHeater(design);
    const share = settleMixing(heater, 30, { wanted: 0.01, mains: 10, target: 45, flow: FLOW, duration: 3600 });
    heatWater(heater, 0.01 * share, 30, FLOW * share, 3600);
    expect(heater.outlet).toBeCloseTo(50, 9);
    expect(heater.burnerHeat).toBeCloseTo(RATE * share * 20 * (0.01 / FLOW), 6);
  });

  it('loses nothing and keeps nothing [direction that physics demands]', () => {
    const heater = compileHeater(design);
    settleMixing(heater, 30, { wanted: 0.01, mains: 10, target: 45, flow: FLOW, duration: 3600 });
    heatWater(heater, 0.002, 25, FLOW, 300);
    expect(heater.loss).toBe(0);
    expect(heater.burnerHeat).toBeCloseTo(0.002 * WATER_HEAT_CAPACITY * (heater.outlet - 25), 9);
    expect(heater.burnerHeat).toBeLessThanOrEqual((20_000 * 0.002) / FLOW);
  });
});
