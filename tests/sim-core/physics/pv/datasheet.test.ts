import { describe, expect, it } from 'vitest';
import type { DesignError } from '../../../../packages/sim-core/src/input/errors.ts';
import type { PvPlate } from '../../../../packages/sim-core/src/physics/pv/datasheet.ts';
import {
  diodeParameters,
  moduleParameters,
  type PvModuleParameters,
  pvOperatingPoint,
} from '../../../../packages/sim-core/src/physics/pv/index.ts';
import { openCircuitVoltage, packDiode } from '../../../../packages/sim-core/src/physics/pv/single-diode.ts';

const stc = { irradiance: 1000, cellTemperature: 25 };

const openVoltage = (module: PvModuleParameters, cellTemperature: number): number =>
  openCircuitVoltage(packDiode(diodeParameters(module, { irradiance: 1000, cellTemperature })));

/** The data sheet that a module would have. */
function sheetOf(module: PvModuleParameters, cells: number): PvPlate {
  const best = pvOperatingPoint(module, stc, { kind: 'maximum-power' });
  return {
    name: 'invented',
    shortCircuitCurrent: pvOperatingPoint(module, stc, { kind: 'voltage', voltage: 0 }).current,
    openCircuitVoltage: openVoltage(module, 25),
    maximumPowerCurrent: best.current,
    maximumPowerVoltage: best.voltage,
    currentTemperatureCoefficient: module.currentTemperatureCoefficient,
    voltageTemperatureCoefficient: (openVoltage(module, 35) - openVoltage(module, 25)) / 10,
    cells,
    nominalOperatingCellTemperature: 45,
    area: null,
  };
}

const module = (il: number, io: number, rs: number, rsh: number, a: number, alpha: number): PvModuleParameters => ({
  photocurrent: il,
  saturationCurrent: io,
  seriesResistance: rs,
  shuntConductance: 1 / rsh,
  modifiedIdeality: a,
  currentTemperatureCoefficient: alpha,
});

// The invented modules of pv.csv.
const modules = [
  ['10 W', module(0.61130714, 1.5138248e-10, 0.9, 420, 0.98042882, 0.0003)],
  ['20 W', module(1.2421462, 8.5050804e-10, 0.45, 260, 1.0174261, 0.0007)],
  ['50 W', module(3.054575, 4.1678522e-10, 0.21, 140, 0.96193016, 0.0016)],
] as const;

const sheet: PvPlate = {
  name: 'invented 20 W',
  shortCircuitCurrent: 1.24,
  openCircuitVoltage: 21.6,
  maximumPowerCurrent: 1.14,
  maximumPowerVoltage: 17.5,
  currentTemperatureCoefficient: 0.0007,
  voltageTemperatureCoefficient: -0.075,
  cells: 36,
  nominalOperatingCellTemperature: 45,
  area: null,
};

describe('moduleParameters', () => {
  it.each(modules)(
    'finds the five parameters of the %s module again from its data sheet [round trip]',
    (_name, known) => {
      const found = moduleParameters(sheetOf(known, 36));
      for (const key of Object.keys(known) as (keyof PvModuleParameters)[]) {
        expect(Math.abs(found[key] / known[key] - 1)).toBeLessThan(1e-5);
      }
    },
  );

  it('meets the five values of a rounded data sheet [De Soto 2006, its five equations]', () => {
    const found = moduleParameters(sheet);
    const at = (voltage: number) => pvOperatingPoint(found, stc, { kind: 'voltage', voltage }).current;
    expect(at(0)).toBeCloseTo(1.24, 9);
    expect(at(21.6)).toBeCloseTo(0, 9);
    const best = pvOperatingPoint(found, stc, { kind: 'maximum-power' });
    expect(best.current).toBeCloseTo(1.14, 9);
    expect(best.voltage).toBeCloseTo(17.5, 9);
    expect((openVoltage(found, 35) - 21.6) / 10).toBeCloseTo(-0.075, 9);
  });

  it.each([-0.35, 0.1])(
    'given %f V/K, names the coefficients that would fit, and these do [requirement]',
    (impossible) => {
      const attempt = () => moduleParameters({ ...sheet, voltageTemperatureCoefficient: impossible });
      expect(attempt).toThrow(
        /pv\.module\.voltageTemperatureCoefficient: found -?0\.\d+, expected -\d.* to -\d.* V\/K/,
      );
      let range: readonly number[] = [];
      try {
        attempt();
      } catch (error) {
        range = (error as DesignError).issues[0]!.expected.match(/-0\.\d+/g)!.map(Number);
      }
      const [steepest, flattest] = range as [number, number];
      for (const share of [0.01, 0.5, 0.99]) {
        const possible = steepest + share * (flattest - steepest);
        expect(() => moduleParameters({ ...sheet, voltageTemperatureCoefficient: possible })).not.toThrow();
      }
    },
  );

  it('says so when no curve goes through the points: a maximum of 0.95 of I_sc V_oc from 36 cells [requirement]', () => {
    const square = { ...sheet, maximumPowerCurrent: 1.22, maximumPowerVoltage: 20.9 };
    expect(() => moduleParameters(square)).toThrow(/found maximum power that is 0\.952 of/);
  });

  it('refuses a maximum beyond short or open circuit [requirement]', () => {
    expect(() => moduleParameters({ ...sheet, maximumPowerCurrent: 1.3 })).toThrow(/maximumPowerCurrent: found 1\.3/);
    expect(() => moduleParameters({ ...sheet, maximumPowerVoltage: 22 })).toThrow(/maximumPowerVoltage: found 22/);
  });
});
