import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { compileFluid } from '../../../../packages/sim-core/src/physics/fluid/compile.ts';
import { directPumpPoint } from '../../../../packages/sim-core/src/physics/loop/direct-pump.ts';
import {
  compileDirectTable,
  type DirectTable,
  readDirectTable,
} from '../../../../packages/sim-core/src/physics/loop/direct-table.ts';
import { compileHydraulics, pumpOperatingPoint } from '../../../../packages/sim-core/src/physics/loop/hydraulics.ts';
import { compileMotor, motorCurrent, ratedSpeedCurrent } from '../../../../packages/sim-core/src/physics/loop/motor.ts';
import { pumpPower, pumpState } from '../../../../packages/sim-core/src/physics/loop/pump.ts';
import {
  pumpInLight,
  pumpOnModule,
  pumpThresholds,
} from '../../../../packages/sim-core/src/physics/loop/pump-in-light.ts';
import { moduleParameters, pvOperatingPoint } from '../../../../packages/sim-core/src/physics/pv/index.ts';
import { lightForLoad } from '../../../../packages/sim-core/src/physics/pv/light-for-load.ts';
import { translateModule } from '../../../../packages/sim-core/src/physics/pv/module.ts';
import { plainInput } from '../../../examples.ts';
import { parts } from './parts.ts';

// An invented 36-cell module of 20 W.
const module = moduleParameters({
  name: 'invented',
  shortCircuitCurrent: 1.24,
  openCircuitVoltage: 21.6,
  maximumPowerCurrent: 1.14,
  maximumPowerVoltage: 17.5,
  currentTemperatureCoefficient: 0.0007,
  voltageTemperatureCoefficient: -0.075,
  cells: 36,
  nominalOperatingCellTemperature: 46,
  area: null,
});
const motor = compileMotor(parts.pump);
const { ratedVoltage, windingResistance, frictionCurrent } = parts.pump.motor;

/** All combinations of light, cells and fluid from a cold dawn to a hot noon. */
const conditions = [40, 120, 300, 600, 1000, 1400].flatMap((irradiance) =>
  [-20, 25, 75].flatMap((cellTemperature) =>
    [-15, 20, 70].map((fluidTemperature) => ({ irradiance, cellTemperature, fluidTemperature })),
  ),
);

describe('motor [textbook equations of a DC machine with permanent magnets]', () => {
  it('takes the power of the pump’s curve at rated speed, and the rated voltage at open flow', () => {
    for (const share of [0, 0.3, 0.7, 1]) {
      const current = ratedSpeedCurrent(motor, share);
      const voltage = motor.ratedBackEmf + windingResistance * current;
      expect(voltage * current).toBeCloseTo(pumpPower(parts.pump, 1, share * parts.pump.openFlow), 10);
    }
    expect(motor.ratedBackEmf + windingResistance * ratedSpeedCurrent(motor, 1)).toBeCloseTo(ratedVoltage, 12);
  });

  it('adds to its friction a torque that grows with the square of the speed at the same share of open flow', () => {
    const at = (speed: number) => motorCurrent(motor, speed, speed * 0.4 * parts.pump.openFlow) - frictionCurrent;
    expect(at(0.5) / at(1)).toBeCloseTo(0.25, 12);
    expect(motorCurrent(motor, 0, 0)).toBe(frictionCurrent);
  });
});

describe('lightForLoad', () => {
  it.each([-20, 25, 75])('is the inverse of the module on a load, cells at %d °C [round trip]', (cellTemperature) => {
    const p = new Float64Array(5);
    translateModule(module, 1000, cellTemperature, p);
    for (const irradiance of [30, 400, 1200]) {
      for (const backEmf of [0, 6, 12, 17]) {
        const load = { kind: 'motor', backEmf, resistance: 1.5 } as const;
        const { current, voltage } = pvOperatingPoint(module, { irradiance, cellTemperature }, load);
        expect(lightForLoad(p, current, voltage) / irradiance).toBeCloseTo(1, 9);
      }
    }
  });

  it('is infinite where no light does it [requirement]', () => {
    const p = new Float64Array(5);
    translateModule(module, 1000, 25, p);
    expect(lightForLoad(p, 1, 1e4)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('directPumpPoint', () => {
  it('lies on the module’s curve, on the motor’s line and on the pump’s curve [definition]', () => {
    for (const condition of conditions) {
      const { current, voltage, speed, flow, head } = directPumpPoint(parts, module, condition);
      const load = { kind: 'motor', backEmf: motor.ratedBackEmf * speed, resistance: windingResistance } as const;
      const onModule = pvOperatingPoint(module, condition, load);
      expect(current).toBeCloseTo(onModule.current, 9);
      expect(voltage).toBeCloseTo(onModule.voltage, 9);
      if (flow === 0) continue;
      expect(motorCurrent(motor, speed, flow)).toBeCloseTo(current, 7);
      expect(head).toBeCloseTo(parts.pump.shutOffHead * (speed ** 2 - (flow / parts.pump.openFlow) ** 2), 9);
    }
  });

  it('gives the water no more than the shaft has, and the shaft no more than the module gives [energy]', () => {
    let turning = 0;
    for (const condition of conditions) {
      const point = directPumpPoint(parts, module, condition);
      expect(point.hydraulicPower).toBeLessThanOrEqual(point.shaftPower);
      expect(point.shaftPower).toBeLessThanOrEqual(point.electricalPower);
      const { current, electricalPower, shaftPower, speed, flow } = point;
      if (flow === 0) continue;
      turning++;
      const lost = windingResistance * current ** 2 + motor.ratedBackEmf * speed * frictionCurrent;
      expect(electricalPower - lost).toBeCloseTo(shaftPower, 7);
    }
    expect(turning).toBeGreaterThan(40);
  });

  it('moves no more than the booster does in weak sun [the booster has the maximum power at any current]', () => {
    for (const condition of conditions) {
      if (condition.irradiance > 300) continue;
      const best = pvOperatingPoint(module, condition, { kind: 'maximum-power' }).power;
      const boosted = pumpOperatingPoint(parts, {
        electricalPower: parts.pump.boosterEfficiency * best,
        fluidTemperature: condition.fluidTemperature,
      });
      expect(boosted.flow).toBeGreaterThan(directPumpPoint(parts, module, condition).flow);
    }
  });

  it('stands where the light cannot carry its friction, and rises with light and modules [direction that physics demands]', () => {
    const at = (irradiance: number, modules = 1) =>
      directPumpPoint(parts, module, { irradiance, cellTemperature: 30, fluidTemperature: 30, modules }).flow;
    expect(at(75)).toBe(0); // 0.1 A of friction is 0.1/1.24 of the short-circuit current: 81 W/m²
    expect(at(90)).toBeGreaterThan(0);
    for (const light of [100, 300, 600, 900]) {
      expect(at(light + 50)).toBeGreaterThan(at(light));
      expect(at(light, 2)).toBeGreaterThan(at(light));
    }
    expect(at(0)).toBe(0);
  });

  it('at the rated point of the pump’s curve: head and electrical power of the affinity laws where the speed is 1 [requirement]', () => {
    // Two modules turn it faster than rated, one slower; between them there is a light that gives just rated speed.
    let low = 500;
    let high = 1400;
    const at = (irradiance: number) =>
      directPumpPoint(parts, module, { irradiance, cellTemperature: 30, fluidTemperature: 60, modules: 2 });
    for (let halving = 0; halving < 50; halving++) {
      const middle = (low + high) / 2;
      if (at(middle).speed < 1) low = middle;
      else high = middle;
    }
    const point = at(low);
    const rated = pumpState(parts.pump, { speed: 1, flow: point.flow, density: 1000 });
    expect(point.electricalPower).toBeCloseTo(rated.electricalPower, 6);
    expect(point.head).toBeCloseTo(rated.head, 6);
  });

  it('refuses what is no number by name [requirement]', () => {
    const fine = { irradiance: 500, cellTemperature: 25, fluidTemperature: 25 };
    expect(() => directPumpPoint(parts, module, { ...fine, irradiance: -1 })).toThrow('irradiance');
    expect(() => directPumpPoint(parts, module, { ...fine, fluidTemperature: Number.NaN })).toThrow('fluidTemperature');
    expect(() => directPumpPoint(parts, module, { ...fine, modules: 0 })).toThrow('modules');
  });
});

const read = (table: DirectTable, irradiance: number, cellTemperature: number, fluidTemperature: number) => {
  const answer = { flow: 0, power: 0 };
  readDirectTable(table, { supply: 0, irradiance, cellTemperature, fluidTemperature }, answer);
  return answer;
};

describe('table of the direct drive', () => {
  it.each([1, 2])(
    '%d modules: flow and power within 0.6 percent of those in full sun [its stated error]',
    (modules) => {
      const hydraulics = compileHydraulics(parts, compileFluid(parts.loop.fluid, parts.loop.glycolMassFraction));
      const table = compileDirectTable(hydraulics, motor, module, modules);
      const full = directPumpPoint(parts, module, {
        irradiance: 1000,
        cellTemperature: 50,
        fluidTemperature: 60,
        modules,
      });
      let worstFlow = 0;
      let worstPower = 0;
      for (let fluid = -35; fluid < 135; fluid += 9.3) {
        for (let cell = -35; cell < 100; cell += 11.7) {
          for (let irradiance = 20; irradiance < 1500; irradiance *= 1.15) {
            const exact = directPumpPoint(parts, module, {
              irradiance,
              cellTemperature: cell,
              fluidTemperature: fluid,
              modules,
            });
            const { flow, power } = read(table, irradiance, cell, fluid);
            worstFlow = Math.max(worstFlow, Math.abs(flow - exact.flow));
            if (exact.flow > 0) worstPower = Math.max(worstPower, Math.abs(power - exact.electricalPower));
          }
        }
      }
      expect(worstFlow / full.flow).toBeLessThan(0.006);
      expect(worstPower / full.electricalPower).toBeLessThan(0.006);
    },
  );

  it('starts in no light at all on the mains [definition]', () => {
    const onMains = defineSystem({ ...plainInput, pump: { drive: 'mains' } });
    expect(pumpThresholds(pumpOnModule(onMains, 20))).toEqual({ start: 0, stop: 0 });
  });

  it('driven directly, in light of its start and not below [definition]', () => {
    const direct = pumpOnModule(defineSystem({ ...plainInput, pump: { drive: 'direct' } }), 20);
    const start = pumpThresholds(direct).start!;
    expect([0.98, 1.02].map((share) => pumpInLight(direct, share * start, 40).starts)).toEqual([false, true]);
  });

  it('stands still in the dark and holds its ends [its contract]', () => {
    const hydraulics = compileHydraulics(parts, compileFluid(parts.loop.fluid, parts.loop.glycolMassFraction));
    const table = compileDirectTable(hydraulics, motor, module, 1);
    const { current, flow, voltage } = table.parts.curve;
    expect([current.length, voltage.length]).toEqual([flow.length, flow.length]);
    expect(read(table, 0, 20, 20)).toEqual({ flow: 0, power: 0 });
    expect(read(table, 2000, 20, 20)).toEqual(read(table, 1500, 20, 20));
    expect(read(table, 800, -70, 20)).toEqual(read(table, 800, -40, 20));
    expect(read(table, 800, 130, 20)).toEqual(read(table, 800, 100, 20));
    expect(read(table, 800, 20, -200)).toEqual(read(table, 800, 20, table.lowest));
    expect(read(table, 800, 20, 400)).toEqual(read(table, 800, 20, 140));
  });
});
