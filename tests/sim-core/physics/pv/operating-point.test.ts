import { describe, expect, it } from 'vitest';
import {
  cellTemperature,
  cellTemperatureInWind,
  diodeParameters,
  type PvModuleParameters,
  pvOperatingPoint,
} from '../../../../packages/sim-core/src/physics/pv/index.ts';

// The invented "20W" module of pv.csv.
const module: PvModuleParameters = {
  photocurrent: 1.2421462,
  saturationCurrent: 8.5050804e-10,
  seriesResistance: 0.45,
  shuntConductance: 1 / 260,
  modifiedIdeality: 1.0174261,
  currentTemperatureCoefficient: 0.0007,
};
const sun = { irradiance: 700, cellTemperature: 40 };

describe('pvOperatingPoint', () => {
  it('on the resistor V_mp/I_mp finds the maximum, and no other resistor gives more [definition]', () => {
    const best = pvOperatingPoint(module, sun, { kind: 'maximum-power' });
    const on = (resistance: number) => pvOperatingPoint(module, sun, { kind: 'resistance', resistance });
    expect(on(best.voltage / best.current).power).toBeCloseTo(best.power, 10);
    for (const factor of [0, 0.1, 0.5, 0.9, 0.99, 1.01, 1.1, 2, 10, 1e6]) {
      expect(on((factor * best.voltage) / best.current).power).toBeLessThan(best.power);
    }
  });

  it('meets the motor’s line V = E + R I, also past open circuit where the motor drives [definition]', () => {
    for (const backEmf of [0, 5, 15, 19, 25]) {
      const point = pvOperatingPoint(module, sun, { kind: 'motor', backEmf, resistance: 3 });
      expect(point.voltage).toBeCloseTo(backEmf + 3 * point.current, 10);
      expect(pvOperatingPoint(module, sun, { kind: 'voltage', voltage: point.voltage }).current).toBeCloseTo(
        point.current,
        9,
      );
    }
    expect(pvOperatingPoint(module, sun, { kind: 'motor', backEmf: 25, resistance: 3 }).current).toBeLessThan(0);
  });

  it('holds a given voltage to the bit, and the current falls as it rises [definition]', () => {
    let last = Number.POSITIVE_INFINITY;
    for (let voltage = 0; voltage <= 25; voltage += 0.7) {
      const point = pvOperatingPoint(module, sun, { kind: 'voltage', voltage });
      expect(point.voltage).toBe(voltage);
      expect(point.power).toBe(voltage * point.current);
      expect(point.current).toBeLessThan(last);
      last = point.current;
    }
  });

  it('is finite in every corner of its range, and 0 in the dark on a passive load [requirement]', () => {
    for (const irradiance of [0, 1e-6, 1, 2000]) {
      for (const cell of [-60, 25, 150]) {
        for (const load of [
          { kind: 'maximum-power' },
          { kind: 'resistance', resistance: 0 },
          { kind: 'resistance', resistance: 1e9 },
          { kind: 'motor', backEmf: 1000, resistance: 0 },
          { kind: 'voltage', voltage: 1000 },
        ] as const) {
          const point = pvOperatingPoint(module, { irradiance, cellTemperature: cell }, load);
          expect(Number.isFinite(point.voltage) && Number.isFinite(point.current)).toBe(true);
        }
      }
    }
    const dark = { irradiance: 0, cellTemperature: 5 };
    expect(pvOperatingPoint(module, dark, { kind: 'maximum-power' }).power).toBe(0);
    expect(pvOperatingPoint(module, dark, { kind: 'resistance', resistance: 10 }).current).toBeCloseTo(0, 15);
  });

  it('refuses an unknown load, a negative resistance and a cell of 200 °C [requirement]', () => {
    expect(() => pvOperatingPoint(module, sun, { kind: 'fan' } as never)).toThrow(/load\.kind: found "fan"/);
    expect(() => pvOperatingPoint(module, sun, { kind: 'resistance', resistance: -1 })).toThrow(/resistance: found -1/);
    expect(() => pvOperatingPoint(module, { ...sun, cellTemperature: 200 }, { kind: 'maximum-power' })).toThrow(
      /150 °C/,
    );
  });
});

describe('diodeParameters', () => {
  it('photocurrent and leak in proportion to the light, 0.0007 A more for each kelvin [De Soto 2006, by hand]', () => {
    const warm = diodeParameters(module, { irradiance: 500, cellTemperature: 45 });
    expect(warm.photocurrent).toBeCloseTo(0.5 * (1.2421462 + 0.014), 12);
    expect(warm.shuntConductance).toBeCloseTo(0.5 / 260, 12);
    expect(warm.modifiedIdeality).toBeCloseTo((1.0174261 * 318.15) / 298.15, 12);
    expect(warm.seriesResistance).toBe(0.45);
  });
});

describe('cell temperature', () => {
  it('is the nominal one at 800 W/m² and 20 °C air [definition of NOCT]', () => {
    expect(cellTemperature(800, 20, 45)).toBeCloseTo(45, 12);
  });

  it('rises by a sixth less at 15 % efficiency: 45 → 40.83 °C [closed form, τα 0.9]', () => {
    expect(cellTemperature(800, 20, 45, 0.15)).toBeCloseTo(20 + 25 * (1 - 0.15 / 0.9), 12);
  });

  it('with wind is 20 + 800/(25 + 6.84) = 45.1256 °C at 1 m/s [Faiman 2008]', () => {
    expect(cellTemperatureInWind(800, 20, 1)).toBeCloseTo(45.1256, 4);
  });

  it('in calm air is 20 + 800/25 = 52 °C, at 4 m/s 20 + 800/52.36 = 35.2788 °C [Faiman 2008, by hand]', () => {
    expect(cellTemperatureInWind(800, 20, 0)).toBe(52);
    expect(cellTemperatureInWind(800, 20, 4)).toBeCloseTo(35.2788, 4);
  });
});
