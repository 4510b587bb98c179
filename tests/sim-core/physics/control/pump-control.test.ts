import { defineSystem } from '@noonloop/sim-core';
import { describe, expect, it } from 'vitest';
import { outageHours, readDay } from '../../../../packages/sim-core/src/physics/control/outages.ts';
import {
  compilePumpControl,
  decidePump,
  differenceWants,
} from '../../../../packages/sim-core/src/physics/control/pump-control.ts';
import { sensedDifference } from '../../../../packages/sim-core/src/physics/control/sensors.ts';
import { plainInput } from '../../../examples.ts';

const controlOf = (input: object) => {
  const { pump, control } = defineSystem({ ...plainInput, ...input });
  return compilePumpControl(pump, control);
};

describe('decidePump [its contract]', () => {
  it('starts at one power and stops at a lower one', () => {
    const control = controlOf({ pump: { startPower: 3, stopPower: 1 } });
    expect(decidePump(control, 2, 20, true, 300)).toBe(false);
    expect(decidePump(control, 3, 20, true, 300)).toBe(true);
    expect(decidePump(control, 2, 20, true, 300)).toBe(true);
    expect(decidePump(control, 0.9, 20, true, 300)).toBe(false);
    expect(decidePump(control, 2, 20, true, 300)).toBe(false);
  });

  it('takes the direct drive’s currents in place of powers', () => {
    const control = controlOf({ pump: { drive: 'direct', motor: { startCurrent: 0.5, frictionCurrent: 0.2 } } });
    expect([control.startSupply, control.stopSupply]).toEqual([0.5, 0.2]);
  });

  it('is held off by the high limit until the tank has fallen by the hysteresis, whoever asks', () => {
    const control = controlOf({ pump: { drive: 'mains' }, control: { highLimit: 80, highLimitHysteresis: 4 } });
    const full = Number.POSITIVE_INFINITY;
    expect(decidePump(control, full, 79, true, 300)).toBe(true);
    expect(decidePump(control, full, 80, true, 300)).toBe(false);
    expect(decidePump(control, full, 77, true, 300)).toBe(false);
    expect(decidePump(control, full, 76, true, 300)).toBe(true);
  });

  it('says that the high limit holds it off only where it had supply and was asked for flow: in light, not at night', () => {
    const control = controlOf({ pump: { startPower: 3, stopPower: 1 }, control: { highLimit: 80 } });
    const heldOff = (supply: number, top: number, wanted = true) => {
      decidePump(control, supply, top, wanted, 300);
      return control.heldOff;
    };
    expect(heldOff(10, 79)).toBe(false); // it runs
    expect(heldOff(10, 81)).toBe(true);
    expect(heldOff(2, 81)).toBe(false); // too little to start
    expect(heldOff(0, 81)).toBe(false);
    expect(heldOff(10, 81, false)).toBe(false); // the controller asks for none
    expect(control.limited).toBe(true);
  });
});

describe('differenceWants [its contract]', () => {
  it('starts at the start difference, stops at the stop difference, not before its minimum run', () => {
    const control = controlOf({
      control: { mode: 'difference', difference: { start: 8, stop: 3, minimumRunTime: 600 } },
    });
    const step = (difference: number) => decidePump(control, 10, 20, differenceWants(control, difference), 300);
    expect(step(7)).toBe(false);
    expect(step(8)).toBe(true);
    expect(step(1)).toBe(true); // has run 300 of 600 s
    expect(step(1)).toBe(false);
    expect(step(7)).toBe(false);
    expect(step(9)).toBe(true);
    expect(step(4)).toBe(true);
    expect(step(4)).toBe(true);
    expect(step(3)).toBe(false);
  });
});

describe('sensedDifference', () => {
  const circuit = { branches: null, absorber: Float64Array.of(30, 50, 70), pipe: Float64Array.of(40, 25, 20, 20) };
  const tank = { temperature: Float64Array.of(10, 20, 30, 40) };
  const read = (difference: object, running: boolean) =>
    sensedDifference(circuit as never, tank as never, { ...controlDesign, ...difference }, running);
  const controlDesign = defineSystem(plainInput).control.difference;

  it('reads the absorber’s outlet end and the tank at a share of its height, linear between the layers’ middles [definition]', () => {
    expect(read({ tankSensorHeight: 0.125 }, true)).toBeCloseTo(60, 12);
    expect(read({ tankSensorHeight: 0.5 }, false)).toBeCloseTo(45, 12);
    expect(read({ tankSensorHeight: 0 }, false)).toBeCloseTo(60, 12);
    expect(read({ tankSensorHeight: 1 }, false)).toBeCloseTo(30, 12);
  });

  it('reads the outlet pipe while the fluid moves, and on the way to the absorber while it stands [requirement]', () => {
    const onPipe = { collectorSensor: 'pipe', pipeSensorContact: 0.7, tankSensorHeight: 0 };
    expect(read(onPipe, true)).toBeCloseTo(30, 12);
    expect(read(onPipe, false)).toBeCloseTo(40 + 0.7 * 30 - 10, 12);
  });
});

describe('outages', () => {
  it.each([
    ['01-01', 0],
    ['02-28', 58],
    ['03-01', 59],
    ['12-31', 364],
  ])('%s is day %d [requirement]', (text, day) => {
    expect(readDay(text)).toBe(day);
  });

  it.each(['02-29', '04-31', '13-01', '00-10', '01-00', '1-1', '2024-01-01', '', 5, null])(
    '%j is no day [requirement]',
    (text) => {
      expect(readDay(text)).toBeNull();
    },
  );

  it('hold first and last day, by kind, and go over the end of the year [requirement]', () => {
    const outages = [
      { from: '07-01', to: '07-07', kind: 'pump' },
      { from: '12-30', to: '01-02', kind: 'pump' },
      { from: '02-01', to: '02-01', kind: 'power' },
    ] as const;
    const pump = outageHours(outages, 'pump');
    expect(pump.reduce((sum, hour) => sum + hour, 0)).toBe((7 + 4) * 24);
    expect([pump[181 * 24 - 1], pump[181 * 24], pump[188 * 24 - 1], pump[188 * 24]]).toEqual([0, 1, 1, 0]);
    expect([pump[0], pump[47], pump[48], pump[8759]]).toEqual([1, 1, 0, 1]);
    expect(outageHours(outages, 'power').reduce((sum, hour) => sum + hour, 0)).toBe(24);
    const round = outageHours([{ from: '05-10', to: '05-09', kind: 'pump' }], 'pump');
    expect(round.reduce((sum, hour) => sum + hour, 0)).toBe(8760);
  });
});
